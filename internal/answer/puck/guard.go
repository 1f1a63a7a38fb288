package puck

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/play"
)

// Options say how much is shot and how long covers are out.
type Options struct {
	Shots []Shot // nil takes DefaultShots
	// GameShots and PracticeShots are shots per hour of play or practice, both ends together.
	GameShots, PracticeShots float64
	// GameMinutes and PracticeMinutes are minutes for which the cover is out.
	GameMinutes, PracticeMinutes float64
	Floor                        unit.Length // of the spectators' side, above the ice
	Seating                      Seating     // of the rows behind the glass; zero takes UsualSeating
	Only                         string      // id of the one opening to assess; "" for all
}

// DefaultOptions: 170 struck pucks at both ends per hour of play (110 shot
// attempts, 60 clearances and dump-ins) and 500 per hour of practice (all from memory), covers out for an hour of each, a floor level with the ice.
func DefaultOptions() Options {
	return Options{
		GameShots: 170, PracticeShots: 500, GameMinutes: 60, PracticeMinutes: 60,
	}
}

// Passes is how many pucks to expect through a hole while its cover is out,
// between two bounds: the low ones count what passes without touching, the
// high ones what meets the opening with its centre, raised to what games show.
type Passes struct {
	PerHour, PerHourHigh       float64 // number of pucks per hour open
	Minutes                    float64 // minutes open that Expected is for
	Expected, ExpectedHigh     float64 // mean number of pucks in those minutes
	AtLeastOne, AtLeastOneHigh float64 // probability of one or more, 0 to 1
}

// gamesOverModel is by how much the high bound is raised: the model sends 1.2
// pucks an hour over the demo's glass, where three to four people a game were
// struck in a venue without netting (a study of five years, second hand) and
// up to three dozen pucks leave play (from memory).
const gamesOverModel = 30

// Guard is what one hole, or one low window that is open, lets through.
type Guard struct {
	Hole, Pane   string // the pane is "" for a low window
	Opening      Opening
	Assumed      []arena.Assumption // what stood in for lengths that the survey lacks
	ThickAssumed bool               // one of them is the thickness
	FlatWindow   unit.Size          // head on
	FlatLimit    unit.Maybe[unit.Angle]
	AnyLimit     unit.Maybe[unit.Angle]
	// ShareAtPane is the share of all shots that reach the pane's glass, the hole
	// included; unknown for a low window, which stands in no pane.
	ShareAtPane unit.Maybe[float64]
	// ShareOfShots is the share of all shots that pass through the hole clean,
	// ShareHigh the high bound, as in Passes; 0 where no puck passes at all.
	ShareOfShots, ShareHigh float64
	MeanJ                   float64 // mean energy of the pucks that pass, joules; 0 when none passes
	MostJ                   float64 // energy of the fastest that the shots hold, joules
	Game                    Passes
	Practice                Passes
	Sector                  Sector
	Seating                 Seating // of the rows behind the glass
	Reach                   []Protrusion
}

// orientations is how many directions of the axis stand for a tumbling puck
// in the sum over shots.
const orientations = 256

// Assess returns the guard of every working hole and then of every low window
// that is open, in the arena's order. It ends early with ctx's error when ctx ends.
func Assess(ctx context.Context, a arena.Arena, o Options) ([]Guard, error) {
	if o.Shots == nil {
		shots, err := DefaultShots(ctx, a.Rink, a.Game)
		if err != nil {
			return nil, err
		}
		o.Shots = shots
	}
	if o.Seating == (Seating{}) {
		o.Seating = UsualSeating(a.Units)
	}
	if err := o.check(); err != nil {
		return nil, err
	}
	openings, err := o.openings(a)
	if err != nil {
		return nil, err
	}
	guards := make([]Guard, len(openings))
	axes := NewOrientations(orientations)
	errs := make([]error, len(openings))
	err = cores.EachUntil(ctx, "shooting at the holes", len(openings), func(i int) {
		guards[i], errs[i] = assess(a, openings[i], o, axes)
	})
	return guards, cmp.Or(err, errors.Join(errs...))
}

// openings returns what is to be assessed.
func (o Options) openings(a arena.Arena) ([]arena.Opening, error) {
	if o.Only != "" {
		return a.Pick([]string{o.Only})
	}
	out, err := a.Pick(nil)
	for _, w := range a.Windows {
		if w.Open && err == nil {
			var way arena.Opening
			way, err = a.Opening(w.ID)
			out = append(out, way)
		}
	}
	return out, err
}

// Rank returns the guards with the most pucks first; equal ones by energy, then
// by id. Equal is what agrees to a thousandth, as places that mirror one another do.
func Rank(guards []Guard) []Guard {
	out := slices.Clone(guards)
	about := func(x float64) float64 { return math.Round(1000 * math.Log(x)) }
	slices.SortStableFunc(out, func(a, b Guard) int {
		return cmp.Or(cmp.Compare(about(b.ShareOfShots), about(a.ShareOfShots)), cmp.Compare(about(b.MeanJ), about(a.MeanJ)), cmp.Compare(a.Hole, b.Hole))
	})
	return out
}

func (o Options) check() error {
	for _, n := range []struct {
		name string
		v    float64
	}{
		{"shots per hour of a game", o.GameShots}, {"shots per hour of practice", o.PracticeShots},
		{"open minutes in a game", o.GameMinutes}, {"open minutes at practice", o.PracticeMinutes},
	} {
		if !(n.v >= 0 && n.v <= 1e5) {
			return fmt.Errorf("%s: %g: give a number from 0 to 100000", n.name, n.v)
		}
	}
	if !(o.Floor > -10 && o.Floor < 10) {
		return fmt.Errorf("floor %g m above the ice: give a height within 10 m", o.Floor.Metres())
	}
	if err := o.Seating.check(); err != nil {
		return err
	}
	for _, s := range o.Shots {
		if err := s.check(); err != nil {
			return err
		}
	}
	return nil
}

func assess(a arena.Arena, way arena.Opening, o Options, axes Orientations) (Guard, error) {
	h := way.Hole
	open, err := NewOpening(h.Size, way.Thick.Value)
	if err != nil {
		return Guard{}, fmt.Errorf("hole %s: %w", h.ID, err)
	}
	pane, inPane := way.Pane.Get()
	g := Guard{
		Hole: h.ID, Pane: pane.ID, Opening: open, Assumed: arena.Assumed(way.Thick, way.Setback), ThickAssumed: !way.Thick.Surveyed(),
		FlatWindow: open.Flat(0), FlatLimit: open.FlatLimit(), AnyLimit: open.AnyLimit(),
		Reach: Through(open), Seating: o.Seating,
	}
	face := facing(a, way)
	t := newTally(open, axes)
	t.add(o.Shots, face(h.Station, h.Height), goals(a))
	g.ShareOfShots, g.MeanJ, g.MostJ = t.share, t.meanJ(), t.mostJ
	if inPane {
		g.ShareAtPane = unit.Known(atPane(a, pane, o.Shots, face))
	}
	if !g.AnyLimit.IsZero() {
		g.ShareHigh = min(1, gamesOverModel*t.touching)
	}
	g.Game = expect(o.GameShots*g.ShareOfShots, o.GameShots*g.ShareHigh, o.GameMinutes)
	g.Practice = expect(o.PracticeShots*g.ShareOfShots, o.PracticeShots*g.ShareHigh, o.PracticeMinutes)
	g.Sector = t.sector(h.Height, o.Floor, g.AnyLimit, o.GameShots)
	return g, nil
}

// Over returns what the same hole, open for so many minutes, brings.
func (p Passes) Over(minutes float64) Passes { return expect(p.PerHour, p.PerHourHigh, minutes) }

// expect turns two rates per hour into what some minutes bring, pucks being
// independent: P(at least one) = 1 - exp(-mean).
func expect(low, high, minutes float64) Passes {
	mean, most := low*minutes/60, high*minutes/60
	return Passes{low, high, minutes, mean, most, -math.Expm1(-mean), -math.Expm1(-most)}
}

// facing returns how an opening's glass stands at a station and a height: a flat
// pane faces as at its middle, a curved one as the boards do.
func facing(a arena.Arena, o arena.Opening) func(station, height unit.Length) place {
	return func(station, height unit.Length) place {
		at := station
		if p, ok := o.Pane.Get(); ok && !p.Curved {
			at = p.From + p.Width/2
		}
		n := a.Rink.Normal(at)
		return place{
			at:     a.Rink.Point(station).Sub(n.Scale(o.Setback.Value.Metres())),
			normal: n, tangent: a.Rink.Tangent(at), height: height,
		}
	}
}

func goals(a arena.Arena) goalFrames {
	m := a.Rink.Dimensions().Markings
	if !a.Rink.Marked() || m.GoalWidth == 0 {
		return goalFrames{}
	}
	return goalFrames{play.Field(a.Rink, a.Game).Goals(), m.GoalWidth.Metres() / 2, m.GoalHeight.Metres()}
}

// gauss are the points and weights of Gauss and Legendre's rule of three on
// [0, 1]: exact for polynomials of the fifth degree.
var gauss = [3]struct{ at, weight float64 }{
	{0.1127016653792583, 5.0 / 18}, {0.5, 8.0 / 18}, {0.8872983346207417, 5.0 / 18},
}

// atPane sums the shots that reach a pane's glass, three points each way.
func atPane(a arena.Arena, p glass.Pane, shots []Shot, face func(s, h unit.Length) place) float64 {
	total, sum := weight(shots), 0.0
	if total == 0 {
		return 0
	}
	nets := goals(a)
	for _, x := range gauss {
		for _, y := range gauss {
			at := face(p.From+p.Width*unit.Length(x.at), a.Boards.Height+p.Height*unit.Length(y.at))
			for _, s := range shots {
				s.arrivals(at, nets, func(v arrival) { sum += v.perM2 * s.Weight * x.weight * y.weight })
			}
		}
	}
	return min(1, sum*p.Width.Metres()*p.Height.Metres()/total)
}

func weight(shots []Shot) float64 {
	sum := 0.0
	for _, s := range shots {
		sum += s.Weight
	}
	return sum
}
