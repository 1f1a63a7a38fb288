package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

type chooseFlags struct {
	source
	keep, forbid, heights, materials []string

	count, people, newCuts, moments, alternatives int
	seed                                          uint64
	second                                        float64
	step, edge                                    unit.Maybe[unit.Length]
	face                                          unit.Maybe[unit.Angle]

	limit                    unit.Maybe[time.Duration]
	model                    target
	budget                   unit.Maybe[cost.Money]
	costs                    string
	play, events, eventUnits string
	tracks, momentsOut       string
	apply                    string
	lenient, plain           bool
	counted, manned          bool // the flag was given
	letter                   letterFlags
	person                   personFlags
}

func chooseCommand(a *app) *cobra.Command {
	var f chooseFlags
	c := &cobra.Command{
		Use:   "choose ARENA",
		Short: "Which legal set of holes is best, provably, and why?",
		Long: `Lays candidate places over the panes, scores each for thousands of moments of a
game, and finds the set of holes with the most news in view that keeps the rules:
for each moment the best view's score, and a share of the second best's. The answer
comes with a proved upper bound; Ctrl-C or --limit end the search with the best set
so far and its gap. Holes that are cut already cost no new cut; one that the answer
leaves out means a whole pane in its place.

First comes a table of steps, each proved: what is cut today; the best that keeps all
of it and cuts 1, 2, 3, ... panes more; what giving up a hole brings; the best of all.
What a step costs follows from --costs FILE, which may hold these:

  rinkpane: costs 1
  currency: USD
  panes: {acrylic: {each: 150, per-m2: 260}}   # to buy one; or per-ft2; other materials likewise
  cutting: 90       # one hole on site; glass is ordered made
  cover: 120
  call-out: 400     # once
  labour: 85        # an hour
  closure: 150      # an hour that the ice is closed
  hours: {cut: 1.5, fit: 2, day: 8}

Exit 0 with an answer, 1 when no set of holes keeps the rules and wishes (the smallest
clashing group is named), 2 on bad input.`,
		Example: `  # the best eight holes by common practice, and what each is good for
  rinkpane choose my.yaml

  # keep the hole B1, cut at most three panes, and show five other sets
  rinkpane choose my.yaml --count 6 --keep B1 --new-cuts 3 --alternatives 5

  # what so much money buys, by one's own costs
  rinkpane choose my.yaml --costs costs.yaml --budget 2500

  # take the answer over: the arena with the chosen holes as planned
  rinkpane choose my.yaml --apply chosen.yaml

  # one page for the rink's manager: what is asked, why, cost, gain, risk
  rinkpane choose my.yaml --costs costs.yaml --letter letter.pdf

  # judged by one's own games, and the same problem for another solver
  rinkpane choose my.yaml --events season.csv --units-of-events ft --model choice.lp`,
		Args: oneArena,
		RunE: func(c *cobra.Command, args []string) error {
			f.counted, f.manned = c.Flags().Changed("count"), c.Flags().Changed("people")
			return runChoose(c.Context(), a, args[0], f)
		},
	}
	chooseWishes(c, &f)
	chooseInputs(c, &f)
	return c
}

// chooseWishes adds the flags that say what is wanted.
func chooseWishes(c *cobra.Command, f *chooseFlags) {
	fl := c.Flags()
	f.rulesFlag(c)
	fl.IntVar(&f.count, "count", 0, "exactly this many holes (default as many as the rules allow, 8 if they do not say)")
	fl.IntVar(&f.people, "people", 0, "most holes that are worked at once, one lens a person: in each phase of play the best of the set (default all)")
	fl.StringSliceVar(&f.keep, "keep", nil, "hole that must be in the answer, or a place such as \"B-bench goal-line -33 in\"")
	fl.StringSliceVar(&f.forbid, "forbid", nil, "hole, place or pane that must not be used")
	fl.IntVar(&f.newCuts, "new-cuts", -1, "most panes to be newly cut (default no limit)")
	quantity(c, &f.step, "step", "length", unit.ParseLength, `distance between places along a pane (default "150 mm")`)
	quantity(c, &f.edge, "edge", "length", unit.ParseLength, `least distance from a hole's rim to its pane's edges (default "100 mm")`)
	fl.StringSliceVar(&f.heights, "heights", nil, "heights of hole centres above the ice to try (default the middle of the rules' range)")
	f.person.flags(c)
	fl.StringSliceVar(&f.materials, "materials", nil, "pane materials that may be cut or ordered (default all)")
	fl.IntVar(&f.alternatives, "alternatives", 3, "next best sets to show, each leaving a pane unused that the ones before use")
	fl.BoolVar(&f.plain, "plain", false, "leave out the steps, the prices of rules and the losses of panes, which take longer")
	fl.StringVar(&f.costs, "costs", "", "file of costs: panes, cutting, cover, labour, closure, currency (default invented ones)")
	quantity(c, &f.budget, "budget", "amount of money", cost.ParseMoney, "most to be spent, in whole units of the currency of --costs")
	quantity(c, &f.limit, "limit", "time", parseLimit, "longest time to search after scoring, as 30s or 2m (default 60s)")
}

// chooseInputs adds the flags that say by what the choice is judged.
func chooseInputs(c *cobra.Command, f *chooseFlags) {
	fl := c.Flags()
	fl.IntVar(&f.moments, "moments", 20_000, "moments of a game to look at")
	fl.Uint64Var(&f.seed, "seed", 1, "seed of the moments; the same seed gives the same answer")
	fl.StringVar(&f.play, "play", "", "YAML file with shares and news weights of the phases")
	fl.StringVar(&f.events, "events", "", "CSV file of your own games' puck places, with columns x and y")
	fl.StringVar(&f.eventUnits, "units-of-events", "", "unit of x and y in --events: ft or m")
	fl.BoolVar(&f.lenient, "lenient", false, "skip bad rows of --events and name them, instead of refusing the file")
	fl.Float64Var(&f.second, "second", choose.DefaultOptions().Second, "worth of a second view as a share of a first, 0 to below 1")
	quantity(c, &f.face, "face", "angle", unit.ParseAngle, `turn of the face at which a view is worth nothing (default "100 deg")`)
	f.kitFlag(c)
	fl.StringVar(&f.tracks, "tracks", "", "CSV file of tracked moments, as --moments-out writes them; what it leaves out is filled and counted")
	fl.StringVar(&f.momentsOut, "moments-out", "", "CSV file to write every body of every moment to")
	fl.StringVar(&f.apply, "apply", "", "file to write the arena to with the chosen holes as planned; its holes that are left out are turned off")
	f.model.flags(c, "model", "write the same problem as a CPLEX-LP file")
	f.letter.flags(c)
}

func runChoose(ctx context.Context, a *app, path string, f chooseFlags) error {
	moments, apply := target{"moments-out", f.momentsOut, f.model.force}, target{"apply", f.apply, f.model.force}
	if err := errors.Join(f.model.may(), moments.may(), apply.may(), f.letter.check(f.model.force, f.plain)); err != nil {
		return err
	}
	if err := f.open(a, path); err != nil {
		return err
	}
	opt, err := chooseOptions(ctx, a, f.arena, f)
	if err != nil {
		return err
	}
	if moments.path != "" {
		if opt.Set, err = opt.Sample(ctx, f.arena); err != nil {
			return err
		}
		if err := moments.writeBy(opt.Set.WriteMoments); err != nil {
			return err
		}
	}
	// The scores are few, large and stay: letting the heap grow to twice their
	// size before it is swept would only cost memory.
	defer debug.SetGCPercent(debug.SetGCPercent(chooseGarbage))
	bar := newProgress(a.err)
	opt.Tell = bar.tell
	begun := time.Now()
	own, err := f.doc.Check() // in the document's own units, in which places are written
	if err != nil {
		return err
	}
	study, err := choose.Prepare(ctx, own, f.Rules, f.Kit, opt)
	if err != nil {
		bar.end()
		return chooseError(err)
	}
	if err := f.model.writeBy(study.WriteLP); err != nil {
		return err
	}
	timed, stop := context.WithTimeout(ctx, f.limit.Or(usualLimit))
	defer stop()
	ans := study.Answer(timed)
	ans.Took = time.Since(begun)
	bar.end()
	if most, ok := opt.Budget.Get(); ok && len(ans.Frontier) == 1 && len(ans.Unfinished) == 0 {
		return fmt.Errorf("--budget: %s", words.ChoiceShort(ans, most))
	}
	if len(ans.Holes) > 0 {
		if err := apply.writeBy(func(w io.Writer) error { return f.accept(w, ans) }); err != nil {
			return err
		}
	}
	if err := f.letter.send(ctx, a, ans, &f.source); err != nil {
		return err
	}
	yes := len(ans.Holes) > 0 || ans.Status == solve.Stopped
	return a.verdict(yes, wire.ChoiceOf(ans, f.arena.Units), func() string { return words.Choice(ans, f.arena.Units) })
}

// accept writes the arena's document with the answer's new holes as planned; its own
// holes that the answer leaves out are turned off.
func (f chooseFlags) accept(w io.Writer, ans choose.Answer) error {
	var take []string
	for _, h := range ans.Holes {
		take = append(take, h.Hole.ID)
	}
	doc := f.doc
	if edits := ans.Accept(0, take, true); len(edits) > 0 {
		var err error
		if doc, _, err = (edit.Editor{Standard: f.Rules.Standard}).Apply(doc, edits); err != nil {
			return err
		}
	}
	_, err := w.Write(doc.Bytes())
	return err
}

// usualLimit is how long the search may take after scoring.
const usualLimit = time.Minute

func parseLimit(s string) (time.Duration, error) {
	limit, err := time.ParseDuration(s)
	if err != nil || limit <= 0 {
		return 0, fmt.Errorf("%q: write a time above 0, as 30s or 2m", s)
	}
	return limit, nil
}

// chooseGarbage is the waste allowed while choosing, in percent of what is in use.
const chooseGarbage = 20

// chooseError says in words that the user stopped the scoring.
func chooseError(err error) error {
	if errors.Is(err, context.Canceled) {
		return errors.New("stopped before there was anything to choose from")
	}
	return err
}
