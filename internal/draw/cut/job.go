package cut

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Job is everything that the drawings of one hole state.
type Job struct {
	Hole     glass.Hole
	Pane     glass.Pane
	Material glass.Properties
	Thick    unit.Length
	Face     glass.Face
	Route    Route
	Corner   unit.Length // corner radius of the outline
	Rounding unit.Length // edge rounding on both faces
	Limits   []glass.Limit
	// Neighbours are the other working holes of the pane.
	Neighbours []glass.Neighbour
	Cover      Cover
	Whole      float64  // mass of the pane without its holes, kg
	Mass       float64  // mass of the pane with all its holes, kg
	Assumed    []string // what the plan does not say and the drawing had to take, in plain words
}

// What a drawing takes where the plan says nothing: common practice.
const (
	usualCorner   = unit.Inch / 2
	usualRounding = unit.Inch / 8
)

// Options are the choices of who draws.
type Options struct {
	Route Route // "" takes the material's own
	Cover CoverOptions
}

// DefaultOptions returns the material's own route and the usual cover.
func DefaultOptions() Options { return Options{Cover: DefaultCoverOptions()} }

// Refusal says why a hole has no drawing.
type Refusal struct {
	Hole    string
	Reasons []string
}

// Error joins the reasons.
func (r *Refusal) Error() string {
	return fmt.Sprintf("hole %s: no drawing: %s", r.Hole, strings.Join(r.Reasons, "; "))
}

// Job gathers a hole's job. What may not be made gives a [*Refusal] with every
// reason that was found; it makes no drawing.
func (p Plan) Job(h glass.Hole, o Options) (Job, error) {
	pane, ok := p.Arena.Pane(h.Pane)
	if !ok {
		return Job{}, &Refusal{h.ID, []string{fmt.Sprintf("its pane %q is not in the plan", h.Pane)}}
	}
	j := Job{Hole: h, Pane: pane, Face: p.Arena.Face(pane, h), Neighbours: p.Arena.Neighbours(pane, h)}
	var why []string
	no := func(err error) {
		if err != nil {
			why = append(why, err.Error())
		}
	}
	no(j.material(o.Route))
	j.assume()
	if j.Thick > 0 {
		j.Limits = j.Material.Trade.Limits(j.Face, j.Thick, h, j.Corner, j.Neighbours)
		for _, l := range j.Limits {
			if !l.Kept() {
				why = append(why, l.Say().In(p.Arena.Units))
			}
		}
		no(j.shape())
	}
	no(j.cover(o.Cover, len(why) == 0))
	if len(why) > 0 {
		return Job{}, &Refusal{h.ID, why}
	}
	j.weigh()
	return j, nil
}

// weigh takes the masses of the pane as it is on the glass, not along the boards.
func (j *Job) weigh() {
	area := j.Face.Width.Metres() * j.Face.Height.Metres()
	h := j.Hole
	h.Corner = unit.Known(j.Corner)
	left := area - h.Area()
	for _, k := range j.Neighbours {
		k.Hole.Corner = unit.Known(cornerOf(k.Hole))
		left -= k.Hole.Area()
	}
	j.Whole, j.Mass = j.Material.Mass(area, j.Thick), j.Material.Mass(left, j.Thick)
}

// material settles material, thickness and route.
func (j *Job) material(asked Route) error {
	m, known := j.Pane.Material.Get()
	if !known {
		return fmt.Errorf("the material of pane %s is not recorded; the way to make the hole hangs on it", j.Pane.ID)
	}
	props, err := m.Properties()
	if err != nil {
		return fmt.Errorf("pane %s: %w", j.Pane.ID, err)
	}
	t, known := j.Pane.Thickness.Get()
	if !known || !(t > 0) {
		return fmt.Errorf("the thickness of pane %s is not recorded; measure it and record it", j.Pane.ID)
	}
	j.Material, j.Thick = props, t
	j.Route, err = routeFor(props, asked)
	return err
}

// assume takes what the plan does not say.
func (j *Job) assume() {
	note := func(what string, v unit.Length) {
		j.Assumed = append(j.Assumed, fmt.Sprintf("%s %s: not in the plan, common practice taken", what, both(v)))
	}
	var known bool
	j.Corner = cornerOf(j.Hole)
	if _, known = j.Hole.Corner.Get(); !known {
		note("corner radius", j.Corner)
	}
	if j.Rounding, known = j.Hole.Rounding.Get(); !known {
		j.Rounding = min(usualRounding, j.Thick/4)
		note("edge rounding", j.Rounding)
	}
	if _, known = j.Hole.Cover.Get(); !known {
		j.Assumed = append(j.Assumed, "cover: not in the plan; drawn all the same, because no hole goes without one")
	}
}

// cornerOf returns a hole's corner radius, common practice where the plan says none.
func cornerOf(h glass.Hole) unit.Length {
	return h.Corner.Or(min(usualCorner, h.Size.W/2, h.Size.H/2))
}

// shape refuses an outline that cannot be drawn.
func (j *Job) shape() error {
	switch {
	case 2*j.Corner > min(j.Hole.Size.W, j.Hole.Size.H)+slack:
		return fmt.Errorf("the corner radius %s is more than half of the smaller side of the hole", both(j.Corner))
	case !(j.Rounding > 0):
		return errors.New("the edges are not rounded; record an edge rounding above zero")
	case 2*j.Rounding > j.Thick+slack:
		return fmt.Errorf("the edge rounding %s on both faces is more than the pane's thickness %s", both(j.Rounding), both(j.Thick))
	}
	return nil
}

// slack is what a size may pass its bound by, for rounding in the survey's own numbers.
const slack = 1e-6 * unit.Metre

// largestPilot is the largest diameter that is drilled in a sheet of plastic: own choice.
const largestPilot = 2 * unit.Inch

// Pilot returns the diameter of the four pilot holes: twice the corner radius,
// so that the drill makes the corner. It is 0 where nothing is drilled: in a
// pane that is ordered made, and where the corner is too round for a bit or two
// pilot holes would run into one another, so that the router makes it.
func (j Job) Pilot() unit.Length {
	dia := 2 * j.Corner
	if j.Route == Order || dia > largestPilot+slack || 2*dia > min(j.Hole.Size.W, j.Hole.Size.H)+slack {
		return 0
	}
	return dia
}

// both prints a length in both systems: "12.7 mm (1/2 in)".
func both(l unit.Length) string {
	return l.FormatFine(unit.Metric) + " (" + l.FormatFine(unit.Imperial) + ")"
}

func hypot(a, b unit.Length) unit.Length { return unit.Length(math.Hypot(float64(a), float64(b))) }
