package cut

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/say"
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
	Options    Options
	Cover      Cover
	Whole      float64        // mass of the pane without its holes, kg
	Mass       float64        // mass of the pane with all its holes, kg
	Assumed    []say.Sentence // what the plan does not say and the drawing had to take
	NotPassed  []say.Sentence // why the hole is not allowed as it is; empty when it is
	NotProved  []say.Sentence // what the survey lacks to say whether it is allowed
}

// Exists reports whether the hole is cut already, so that nothing is made of
// it but what its cover lacks.
func (j Job) Exists() bool { return j.Hole.State == glass.Cut }

// CoverExists reports whether the hole's cover is there already.
func (j Job) CoverExists() bool {
	c, known := j.Hole.Cover.Get()
	return j.Exists() && known && c.Present
}

// PaneExists reports whether the pane stands as drawn: no hole of it is still to be made.
func (j Job) PaneExists() bool {
	for _, k := range j.Neighbours {
		if k.Hole.State != glass.Cut {
			return false
		}
	}
	return j.Exists()
}

// Options are the choices of who draws.
type Options struct {
	Route Route // "" takes the material's own
	Cover CoverOptions
	Hold  Hold // what keeps the cover in; "" is [Button]
}

// DefaultOptions returns the material's own route and the usual cover, held by turn buttons.
func DefaultOptions() Options { return Options{Cover: DefaultCoverOptions(), Hold: Button} }

// Job gathers a hole's job. What may not be drawn gives a [*Refusal] with every
// reason that was found.
func (p ShopOrder) Job(h glass.Hole, o Options) (Job, error) {
	way, err := p.Arena.OpeningOf(h)
	if err != nil {
		return Job{}, p.refuse(h, say.Make("%s", err.Error()))
	}
	pane, _ := way.Pane.Get()
	j := Job{Hole: h, Pane: pane, Options: o, Face: p.Arena.Face(pane, h, way.Setback.Value), Neighbours: p.Arena.Neighbours(pane, h, way.Setback.Value),
		Corner: way.Corner.Value, Rounding: way.Rounding.Value}
	why := j.material(way.Thick, o.Route)
	taken := []arena.Fact{way.Corner, way.Rounding}
	if j.Face.Radius > 0 || j.Face.Width != pane.Width {
		taken = append(taken, way.Setback) // the boards turn: the pane is longer where it stands back
	}
	for _, a := range arena.Assumed(taken...) {
		j.Assumed = append(j.Assumed, a.Reason)
	}
	if _, known := h.Cover.Get(); !known {
		j.Assumed = append(j.Assumed, say.Make("cover: not in the plan; drawn all the same, because no hole goes without one"))
	}
	if j.Thick > 0 {
		j.Limits = j.Material.Trade.Limits(j.Face, j.Thick, h, j.Corner, j.Neighbours)
		for _, l := range j.Limits {
			if !l.Kept() {
				j.NotPassed = append(j.NotPassed, l.Say())
			}
		}
		why = append(why, j.shape()...)
	}
	if err := o.Cover.check(); err != nil {
		why = append(why, say.Make("%s", err.Error()))
	}
	why = append(why, j.stand()...)
	j.heed(rules.About(h.ID, p.Findings))
	if len(why) == 0 {
		why = j.cover(o.Cover)
	}
	if len(why) > 0 {
		return Job{}, p.refuse(h, why...)
	}
	j.weigh()
	return j, nil
}

// JobOf gathers the job of the hole with an id. One that is off or not there is an error.
func (p ShopOrder) JobOf(hole string, o Options) (Job, error) {
	jobs, refused, err := p.jobs(Request{Holes: []string{hole}, Options: o})
	switch {
	case err != nil:
		return Job{}, err
	case len(refused) > 0:
		return Job{}, refused[0]
	case len(jobs) == 0:
		return Job{}, fmt.Errorf("%q is a low window, which has no drawing of a hole; write %s", hole, p.names())
	}
	return jobs[0], nil
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
func (j *Job) material(thick arena.Fact, asked Route) []say.Sentence {
	m, known := j.Pane.Material.Get()
	if !known {
		return []say.Sentence{say.Make("the material of pane %s is not recorded; the way to make the hole hangs on it", j.Pane.ID)}
	}
	props, err := m.Properties()
	if err != nil {
		return []say.Sentence{say.Make("pane %s: %s", j.Pane.ID, err.Error())}
	}
	if !thick.Surveyed() {
		return []say.Sentence{say.Make("%s; measure it and record it: an order does not rest on a guess", thick.Lacking())}
	}
	j.Material, j.Thick, j.Route = props, thick.Value, Standing
	if j.Exists() {
		return nil
	}
	if j.Route, err = routeFor(props, asked); err != nil {
		return []say.Sentence{say.Make("%s", err.Error())}
	}
	return nil
}

// shape refuses an outline that cannot be drawn.
func (j *Job) shape() []say.Sentence {
	switch {
	case 2*j.Corner > min(j.Hole.Size.W, j.Hole.Size.H)+slack:
		return []say.Sentence{say.Make("the corner radius %s is more than half of the smaller side of the hole", both(j.Corner))}
	case !(j.Rounding > 0) && !j.Exists():
		return []say.Sentence{say.Make("the edges are not rounded; record an edge rounding above zero")}
	case 2*j.Rounding > j.Thick+slack:
		return []say.Sentence{say.Make("the edge rounding %s on both faces is more than the pane's thickness %s", both(j.Rounding), both(j.Thick))}
	}
	return nil
}

// slack is what a size may pass its bound by, for rounding in the survey's own numbers.
const slack = 1e-6 * unit.Metre

// largestPilot is the largest diameter that is drilled in a sheet of plastic: own choice.
const largestPilot = 2 * unit.Inch

// Pilot returns the diameter of the four pilot holes: twice the corner radius,
// so that the drill makes the corner. It is 0 where nothing is drilled: in a
// hole that exists, in a pane that is ordered made, and where the corner is too
// round for a bit or two pilot holes would run into one another, so that the
// router makes it.
func (j Job) Pilot() unit.Length {
	dia := 2 * j.Corner
	if j.Route == Order || j.Route == Standing || dia > largestPilot+slack || 2*dia > min(j.Hole.Size.W, j.Hole.Size.H)+slack {
		return 0
	}
	return dia
}

// both is a length said in both systems, the reader's first: "12.7 mm (1/2 in)".
type both unit.Length

// Say prints the length in both systems.
func (b both) Say(sys unit.System) string {
	l := unit.Length(b)
	return drawnAs(l, sys) + " (" + drawnAs(l, other(sys)) + ")"
}

func hypot(a, b unit.Length) unit.Length { return unit.Length(math.Hypot(float64(a), float64(b))) }
