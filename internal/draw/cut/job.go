package cut

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
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
	way, err := p.Arena.OpeningOf(h)
	if err != nil {
		return Job{}, &Refusal{h.ID, []string{err.Error()}}
	}
	pane, _ := way.Pane.Get()
	j := Job{Hole: h, Pane: pane, Face: p.Arena.Face(pane, h), Neighbours: p.Arena.Neighbours(pane, h),
		Corner: way.Corner.Value, Rounding: way.Rounding.Value}
	var why []string
	no := func(err error) {
		if err != nil {
			why = append(why, err.Error())
		}
	}
	no(j.material(way.Thick, o.Route))
	taken := []arena.Fact{way.Corner, way.Rounding}
	if j.Face.Radius > 0 || j.Face.Width != pane.Width {
		taken = append(taken, way.Setback) // the boards turn: the pane is longer where it stands back
	}
	j.Assumed = arena.Reasons(arena.Assumed(taken...), p.Arena.Units)
	if _, known := h.Cover.Get(); !known {
		j.Assumed = append(j.Assumed, "cover: not in the plan; drawn all the same, because no hole goes without one")
	}
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
		k.Hole.Corner = unit.Known(k.Corner)
		left -= k.Hole.Area()
	}
	j.Whole, j.Mass = j.Material.Mass(area, j.Thick), j.Material.Mass(left, j.Thick)
}

// material settles material, thickness and route. An order never rests on a
// thickness that nobody measured.
func (j *Job) material(thick arena.Fact, asked Route) error {
	m, known := j.Pane.Material.Get()
	if !known {
		return fmt.Errorf("the material of pane %s is not recorded; the way to make the hole hangs on it", j.Pane.ID)
	}
	props, err := m.Properties()
	if err != nil {
		return fmt.Errorf("pane %s: %w", j.Pane.ID, err)
	}
	if !thick.Surveyed() {
		return fmt.Errorf("%s; measure it and record it: an order does not rest on a guess", thick.Lacking().In(unit.Metric))
	}
	j.Material, j.Thick = props, thick.Value
	j.Route, err = routeFor(props, asked)
	return err
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
