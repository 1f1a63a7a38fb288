package choose

import (
	"context"
	"fmt"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/play"
)

// Options says what is chosen from, by what, and under what wishes. Start from
// [DefaultOptions].
type Options struct {
	// Moments is how many moments of a game are looked at.
	Moments int
	Seed    uint64
	Play    play.Assumptions
	Events  []play.Event // the user's own puck places; none: the sampler's
	Set     *play.Set    // moments that are made already, as from tracks; nil: made by the above
	Judge   sight.Judgement
	// Second is the worth of a second view of a moment as a share of a first
	// view's, from 0 up to but not including 1.
	Second float64

	Step      unit.Length      // between places along a pane
	Edge      unit.Length      // least distance from a hole's rim to the pane's edges
	Heights   []unit.Length    // of hole centres above the ice; none: the rule set's middle
	Materials []glass.Material // that may be cut or ordered; none: all

	Count   int             // exactly this many holes; 0: at most CommonCount
	NewCuts unit.Maybe[int] // at most this many panes newly cut
	Person  Person          // who works at the holes
	People  int             // at most this many holes worked at once; 0: all
	Keep    []string        // holes or places that must be in the answer
	Forbid  []string        // holes, places or panes that must not

	Costs  cost.Costs
	Budget unit.Maybe[cost.Money] // at most this much spent

	Alternatives int
	// Ladder asks for the steps from what is cut today to the best, and for what
	// each amount of money buys.
	Ladder bool
	// Nodes ends the search after so many parts of it, 0 for no limit: unlike a
	// limit in time it gives the same answer on every machine.
	Nodes int
	// Plain leaves out what takes further searches: prices of the rules and
	// losses of the panes.
	Plain bool
	// Tell is told how far the work is, one report after the other and never by two
	// goroutines at once; nil for nobody.
	Tell func(Report)
}

// Report is how far the work is.
type Report struct {
	Stage string  // "placing", "pairing", "scoring", "ranking", "choosing", "ladder", "frontier", "alternatives", "prices", "losses", "other samples"
	Share float64 // of the stage that is done, from 0 to 1
	Value float64 // best so far, without unit
	Bound float64 // no set is better, without unit
}

// CommonCount is how many holes are chosen at most when nobody says how many:
// what common practice allows.
const CommonCount = 8

// Bounds of the options.
const (
	maxAlternatives = 50
	maxCount        = 200
	leastStep       = 0.01 * unit.Metre
)

// DefaultOptions returns the shipped options; step, edge and the worth of a
// second view are own choice.
func DefaultOptions() Options {
	return Options{
		Moments: 20_000, Seed: 1, Play: play.DefaultAssumptions(), Judge: sight.DefaultJudgement(),
		Second: 0.3, Step: 150 * unit.Millimetre, Edge: 100 * unit.Millimetre, Alternatives: 3,
		Costs: cost.Default(),
	}
}

// FolderOptions returns the options for a plan's folder: fewer moments and a
// wider step than usual, the steps and no prices, and a search that ends after a number of
// nodes, not a time, so that the folder is the same on every machine.
func FolderOptions() Options {
	o := DefaultOptions()
	o.Moments, o.Step, o.Alternatives, o.Plain, o.Nodes = 4000, 300*unit.Millimetre, 2, true, 200
	o.Ladder = true
	return o
}

// Check reports the first option that makes no sense.
func (o Options) Check() error {
	switch {
	case o.Moments < 1 || o.Moments > play.MaxMoments:
		return fmt.Errorf("moments: %d: write a number from 1 to %d", o.Moments, play.MaxMoments)
	case !(o.Second >= 0 && o.Second < 1):
		return fmt.Errorf("second: %g: write a share from 0 up to but not including 1", o.Second)
	case !(o.Step >= leastStep):
		return fmt.Errorf("step: %g mm: write a length of at least 10 mm", o.Step.Millimetres())
	case !(o.Edge >= 0):
		return fmt.Errorf("edge: %g mm: write a length of at least 0", o.Edge.Millimetres())
	case o.Count < 0 || o.Count > maxCount:
		return fmt.Errorf("count: %d: write a number from 1 to %d", o.Count, maxCount)
	case o.People < 0:
		return fmt.Errorf("people: %d: write a number from 1", o.People)
	case o.NewCuts.Or(0) < 0:
		return fmt.Errorf("new cuts: %d: write a number from 0", o.NewCuts.Or(0))
	case o.Alternatives < 0 || o.Alternatives > maxAlternatives:
		return fmt.Errorf("alternatives: %d: write a number from 0 to %d", o.Alternatives, maxAlternatives)
	}
	if err := o.Play.Check(); err != nil {
		return err
	}
	return o.Judge.Check()
}

// Sample returns the moments that the options ask for: those that are made already,
// else around the user's events, else the sampler's, of games as the arena has them.
func (o Options) Sample(ctx context.Context, a arena.Arena) (*play.Set, error) {
	o.Play.Game = a.Game
	switch {
	case o.Set != nil:
		return o.Set, nil
	case len(o.Events) > 0:
		return play.Around(ctx, a.Rink, o.Events, o.Play, o.Seed, o.Moments)
	}
	return play.Sample(ctx, a.Rink, o.Play, o.Seed, o.Moments)
}

func (o Options) tell(r Report) {
	if o.Tell != nil {
		o.Tell(r)
	}
}
