package rink

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// Dimensions is the plan of a rink as written down, not yet checked.
// Markings that are zero are not painted. All lengths in metres.
type Dimensions struct {
	Length, Width, CornerRadius unit.Length
	Markings                    Markings
}

// Markings is where the paint lies, all in metres. A rink without a goal line
// has no markings at all; without a blue line it has no corners to count holes in.
type Markings struct {
	GoalLine     unit.Length // from the end boards to the goal line (the book's figure)
	BlueLine     unit.Length // from the end boards to the blue line (the book's figure)
	CircleRadius unit.Length // end-zone and centre face-off circles, outer radius
	SpotFromGoal unit.Length // end-zone spot, from the goal line toward centre ice
	SpotFromAxis unit.Length // all spots but the centre one, from the rink's long axis
	NeutralSpot  unit.Length // neutral spot, from the blue line's neutral-zone edge toward centre
	GoalWidth    unit.Length // between the posts
	GoalHeight   unit.Length // ice to crossbar
	GoalDepth    unit.Length // goal line to the back of the frame
	CreaseRadius unit.Length // about the middle of the goal line
	CreaseWidth  unit.Length // the crease's arc is cut off at this width; 0: a whole half circle
	LineWidth    unit.Length // goal line
	BlueWidth    unit.Length // blue and red lines
	// BlueLineTo says to what part of the blue line the book's figure runs.
	BlueLineTo LineEdge
}

// LineEdge is a part of a painted line.
type LineEdge int

// The parts of the blue line that books measure to. The books differ, so the
// edge is data: the North American 75 ft end at the neutral zone (the 12 in
// line lies inside the end zone); the international 22.86 m end at the line's middle.
const (
	LineMiddle   LineEdge = iota // international book: to the line's middle
	LineFarEdge                  // North American book: to the neutral-zone edge
	LineNearEdge                 // some plans: to the end-zone edge
)

// Sizes outside these are slips of the pen: the smallest studio sheet is
// longer than 5 m, a bandy field shorter than 150 m.
const (
	MinSide unit.Length = 5
	MaxSide unit.Length = 150
)

// New checks the dimensions and returns the rink. Sides must lie between
// [MinSide] and [MaxSide], the corner radius between 0 and half the smaller
// side, the goal line, blue line and circles on their half of the ice.
func New(d Dimensions) (Rink, error) {
	if err := checkSides(d); err != nil {
		return Rink{}, err
	}
	if err := checkMarkings(d); err != nil {
		return Rink{}, err
	}
	return Rink{d}, nil
}

func checkSides(d Dimensions) error {
	for _, side := range []struct {
		name string
		l    unit.Length
	}{{"length", d.Length}, {"width", d.Width}} {
		if !(side.l >= MinSide && side.l <= MaxSide) { // also refuses NaN
			return faultf(side.name, "rink %s %s: must lie between %s and %s", side.name,
				show(side.l), show(MinSide), show(MaxSide))
		}
	}
	most := min(d.Length, d.Width) / 2
	if !(d.CornerRadius >= 0 && d.CornerRadius <= most) {
		return faultf("corner-radius", "corner radius %s: must lie between 0 and half the smaller side, %s", show(d.CornerRadius), show(most))
	}
	return nil
}

// Marking is one length of [Markings] under the names that a message and a document use.
type Marking struct {
	Name, Field string
	At          *unit.Length // where it is kept
}

// All returns the markings one by one, from the end boards on.
func (m *Markings) All() []Marking {
	return []Marking{
		{"goal line", "goal-line", &m.GoalLine}, {"blue line", "blue-line", &m.BlueLine},
		{"circle radius", "circle-radius", &m.CircleRadius}, {"spot from the goal line", "spot-from-goal", &m.SpotFromGoal},
		{"spot from the axis", "spot-from-axis", &m.SpotFromAxis}, {"neutral spot", "neutral-spot", &m.NeutralSpot},
		{"goal width", "goal-width", &m.GoalWidth}, {"goal height", "goal-height", &m.GoalHeight},
		{"goal depth", "goal-depth", &m.GoalDepth}, {"crease radius", "crease-radius", &m.CreaseRadius},
		{"crease width", "crease-width", &m.CreaseWidth}, {"line width", "line-width", &m.LineWidth},
		{"blue line width", "blue-width", &m.BlueWidth},
	}
}

func checkMarkings(d Dimensions) error {
	m, half := d.Markings, d.Length/2
	for _, f := range m.All() {
		l := *f.At
		if !(l >= 0) || math.IsInf(float64(l), 0) {
			return faultf(f.Field, "%s %s: must be 0 or more", f.Name, show(l))
		}
		if m.GoalLine == 0 && l > 0 {
			return faultf(f.Field, "%s %s: given without a goal line; give the goal line's distance from the end boards too", f.Name, show(l))
		}
		if l > half {
			return faultf(f.Field, "%s %s: does not fit the half rink of %s", f.Name, show(l), show(half))
		}
	}
	if m.GoalLine == 0 {
		return nil
	}
	if m.GoalLine >= half {
		return faultf("goal-line", "goal line %s from the end boards: lies outside its half of the ice, %s long", show(m.GoalLine), show(half))
	}
	if m.BlueLine > 0 && m.BlueLine <= m.GoalLine {
		return faultf("blue-line", "blue line %s from the end boards: must lie beyond the goal line at %s", show(m.BlueLine), show(m.GoalLine))
	}
	return checkCircles(d)
}

func checkCircles(d Dimensions) error {
	m := d.Markings
	if m.CircleRadius == 0 {
		return nil
	}
	if m.SpotFromGoal == 0 {
		return faultf("circle-radius", "circle radius %s: given without the spot's distance from the goal line", show(m.CircleRadius))
	}
	spot := m.GoalLine + m.SpotFromGoal
	if spot < m.CircleRadius || spot+m.CircleRadius > d.Length/2 {
		return faultf("circle-radius", "face-off circle of radius %s about a spot %s from the end boards: does not fit its half of the ice",
			show(m.CircleRadius), show(spot))
	}
	if m.SpotFromAxis+m.CircleRadius > d.Width/2 {
		return faultf("spot-from-axis", "face-off circle of radius %s about a spot %s from the axis: does not fit between the side boards",
			show(m.CircleRadius), show(m.SpotFromAxis))
	}
	r := Rink{d}
	if !r.Contains(geom.Vec2{X: (d.Length/2 - spot).Metres(), Y: m.SpotFromAxis.Metres()}) {
		return faultf("spot-from-axis", "face-off spot %s from the end boards and %s from the axis: lies off the ice", show(spot), show(m.SpotFromAxis))
	}
	return nil
}

// show prints a length in both systems; a message does not know the reader's.
func show(l unit.Length) string {
	if math.IsNaN(float64(l)) || math.IsInf(float64(l), 0) {
		return "that is not finite"
	}
	return l.Format(unit.Metric) + " (" + l.Format(unit.Imperial) + ")"
}
