package rink

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// Line is a painted line right across the ice: its middle from boards to
// boards, and its width, in metres in the rink's frame.
type Line struct {
	Kind     LineKind
	From, To geom.Vec2 // bench side, box side
	Width    float64
}

// LineKind says which line it is.
type LineKind string

// The lines across the ice.
const (
	LineGoal LineKind = "goal"
	LineBlue LineKind = "blue"
	LineRed  LineKind = "red"
)

// Lines returns the painted lines from end A to end B: goal, blue, red, blue,
// goal; none on a rink without markings. The goal line's figure is taken to its
// middle; the blue line's to the edge that its book means.
func (r Rink) Lines() []Line {
	if !r.Marked() {
		return nil
	}
	goal, blue := r.GoalX(), r.blueMiddle()
	lines := []Line{r.across(LineGoal, -goal)}
	if r.dim.Markings.BlueLine > 0 {
		lines = append(lines, r.across(LineBlue, -blue), r.across(LineRed, 0), r.across(LineBlue, blue))
	} else {
		lines = append(lines, r.across(LineRed, 0))
	}
	return append(lines, r.across(LineGoal, goal))
}

func (r Rink) across(kind LineKind, x float64) Line {
	w := r.dim.Markings.BlueWidth
	if kind == LineGoal {
		w = r.dim.Markings.LineWidth
	}
	y := r.HalfWidth(x)
	return Line{kind, geom.Vec2{X: x, Y: -y}, geom.Vec2{X: x, Y: y}, w.Metres()}
}

// GoalX returns the goal line's distance from centre ice in metres.
func (r Rink) GoalX() float64 { return (r.dim.Length/2 - r.dim.Markings.GoalLine).Metres() }

// blueMiddle returns the distance of the blue line's middle from centre ice in metres.
func (r Rink) blueMiddle() float64 {
	x := (r.dim.Length/2 - r.dim.Markings.BlueLine).Metres()
	switch w := r.dim.Markings.BlueWidth.Metres(); r.dim.Markings.BlueLineTo {
	case LineFarEdge:
		return x + w/2
	case LineNearEdge:
		return x - w/2
	}
	return x
}

// BlueX returns the distance from centre ice, in metres, of the blue line's
// two edges: toward the neutral zone and toward the end zone.
func (r Rink) BlueX() (neutral, end float64) {
	m, w := r.blueMiddle(), r.dim.Markings.BlueWidth.Metres()
	return m - w/2, m + w/2
}

// Spot is a face-off spot, in metres in the rink's frame.
type Spot struct {
	At     geom.Vec2
	Circle float64 // outer radius of the circle about it; 0: none
	Centre bool    // the spot at centre ice
}

// Spots returns the face-off spots: the centre one, four at the ends, four in
// the neutral zone, as far as they are painted.
func (r Rink) Spots() []Spot {
	m := r.dim.Markings
	if !r.Marked() {
		return nil
	}
	circle := m.CircleRadius.Metres()
	spots := []Spot{{Circle: circle, Centre: true}}
	y := m.SpotFromAxis.Metres()
	if m.SpotFromGoal > 0 {
		spots = append(spots, four(r.GoalX()-m.SpotFromGoal.Metres(), y, circle)...)
	}
	if m.NeutralSpot > 0 && m.BlueLine > 0 {
		neutral, _ := r.BlueX()
		spots = append(spots, four(neutral-m.NeutralSpot.Metres(), y, 0)...)
	}
	return spots
}

func four(x, y, circle float64) []Spot {
	return []Spot{
		{At: geom.Vec2{X: -x, Y: -y}, Circle: circle}, {At: geom.Vec2{X: -x, Y: y}, Circle: circle},
		{At: geom.Vec2{X: x, Y: -y}, Circle: circle}, {At: geom.Vec2{X: x, Y: y}, Circle: circle},
	}
}

// Goal is a goal frame standing on its line, in metres in the rink's frame.
type Goal struct {
	End    string       // "A" or "B"
	Posts  [2]geom.Vec2 // their inner edges, bench side, box side, on the goal line
	Back   [2]geom.Vec2 // the frame's rear corners, toward the end boards
	Height float64      // ice to the crossbar's upper edge
	Out    float64      // +1 or -1: the x direction from the goal line toward centre ice
}

// PostRadius is half the diameter of a goal's pipes: 2 3/8 in (North American
// professional rule book, rule 2; international book: 5 cm to 6 cm; from memory).
const PostRadius = 2.375 / 2 * unit.Inch

// PostMiddles returns the middles of the posts, bench side and box side, in metres: both
// rule books measure a goal's width between the posts' insides (6 ft; 1.83 m), so that a
// post's middle stands half its diameter farther out.
func (g Goal) PostMiddles() [2]geom.Vec2 {
	out := g.Posts[1].Sub(g.Posts[0]).Unit().Scale(PostRadius.Metres())
	return [2]geom.Vec2{g.Posts[0].Sub(out), g.Posts[1].Add(out)}
}

// Goals returns the goal frames, end A first; none when no goal is given. The
// frame's plan is taken as a rectangle of its depth.
func (r Rink) Goals() []Goal {
	m := r.dim.Markings
	if !r.Marked() || m.GoalWidth == 0 {
		return nil
	}
	var out []Goal
	for _, e := range []struct {
		end  string
		side float64
	}{{"A", -1}, {"B", 1}} {
		x, y, back := e.side*r.GoalX(), m.GoalWidth.Metres()/2, e.side*(r.GoalX()+m.GoalDepth.Metres())
		out = append(out, Goal{
			End:    e.end,
			Posts:  [2]geom.Vec2{{X: x, Y: -y}, {X: x, Y: y}},
			Back:   [2]geom.Vec2{{X: back, Y: -y}, {X: back, Y: y}},
			Height: m.GoalHeight.Metres(), Out: -e.side,
		})
	}
	return out
}

// Crease is a goal crease: the part of the disc about Centre that lies before
// the goal line (Out is the x direction) and within HalfWidth of the axis, in metres.
type Crease struct {
	End       string
	Centre    geom.Vec2
	Radius    float64
	HalfWidth float64
	Out       float64
}

// Creases returns the goal creases, end A first; none when not given.
func (r Rink) Creases() []Crease {
	m := r.dim.Markings
	if !r.Marked() || m.CreaseRadius == 0 {
		return nil
	}
	rad := m.CreaseRadius.Metres()
	half := rad
	if m.CreaseWidth > 0 {
		half = min(rad, m.CreaseWidth.Metres()/2)
	}
	x := r.GoalX()
	return []Crease{
		{"A", geom.Vec2{X: -x}, rad, half, 1},
		{"B", geom.Vec2{X: x}, rad, half, -1},
	}
}

// Outline returns the crease as a polygon with so many steps in its arc (at
// least 1), from the bench-side end on the goal line to the box-side end.
func (c Crease) Outline(steps int) []geom.Vec2 {
	steps = max(steps, 1)
	a := math.Asin(c.HalfWidth / c.Radius)
	pts := []geom.Vec2{}
	if c.HalfWidth < c.Radius {
		pts = append(pts, geom.Vec2{X: c.Centre.X, Y: -c.HalfWidth})
	}
	for i := 0; i <= steps; i++ {
		sin, cos := math.Sincos(a * (2*float64(i)/float64(steps) - 1))
		pts = append(pts, geom.Vec2{X: c.Centre.X + c.Out*c.Radius*cos, Y: c.Radius * sin})
	}
	if c.HalfWidth < c.Radius {
		pts = append(pts, geom.Vec2{X: c.Centre.X, Y: c.HalfWidth})
	}
	return pts
}

// Outline returns the boards' rink face as a polygon in station order from
// station 0, with so many steps in each corner's arc (at least 1). The error of
// its chords is r(1-cos(45 deg/steps)): 2.6 mm at r = 8.53 m and 32 steps.
func (r Rink) Outline(steps int) []geom.Vec2 {
	steps = max(steps, 1)
	f := r.frame()
	pts := []geom.Vec2{{X: 0, Y: -f.b - f.r}}
	for _, c := range []struct{ x, y, from float64 }{
		{f.a, -f.b, -math.Pi / 2}, {f.a, f.b, 0}, {-f.a, f.b, math.Pi / 2}, {-f.a, -f.b, math.Pi},
	} {
		for i := 0; i <= steps; i++ {
			sin, cos := math.Sincos(c.from + math.Pi/2*float64(i)/float64(steps))
			pts = append(pts, geom.Vec2{X: c.x + f.r*cos, Y: c.y + f.r*sin})
		}
	}
	return pts
}
