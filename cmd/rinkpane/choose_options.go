package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/play"
)

// chooseOptions makes the options of a choice from the flags.
func chooseOptions(ctx context.Context, a *app, ar arena.Arena, f chooseFlags) (choose.Options, error) {
	opt := choose.DefaultOptions()
	opt.Count, opt.Keep, opt.Forbid = f.count, f.keep, f.forbid
	opt.Moments, opt.Seed, opt.Second, opt.Alternatives, opt.Plain = f.moments, f.seed, f.second, f.alternatives, f.plain
	opt.Step, opt.Edge = f.step.Or(opt.Step), f.edge.Or(opt.Edge)
	opt.Judge.FaceMost = f.face.Or(opt.Judge.FaceMost)
	if f.counted && f.count < 1 {
		return opt, fmt.Errorf("--count: %d: write a number from 1, or leave it out", f.count)
	}
	if opt.People = f.people; f.manned && f.people < 1 {
		return opt, fmt.Errorf("--people: %d: write a number from 1, or leave it out", f.people)
	}
	if f.newCuts < -1 {
		return opt, fmt.Errorf("--new-cuts: %d: write a number from 0", f.newCuts)
	}
	if f.newCuts >= 0 {
		opt.NewCuts = unit.Known(f.newCuts)
	}
	for _, s := range f.heights {
		h, err := unit.ParseLength(s)
		if err != nil {
			return opt, fmt.Errorf("--heights: %w", err)
		}
		opt.Heights = append(opt.Heights, h)
	}
	var err error
	if opt.Person, err = f.person.person(); err != nil {
		return opt, err
	}
	for _, s := range f.materials {
		m := glass.Material(strings.TrimSpace(s))
		if _, err := m.Properties(); err != nil {
			return opt, fmt.Errorf("--materials: %w", err)
		}
		opt.Materials = append(opt.Materials, m)
	}
	opt.Ladder = !f.plain
	if err := chooseCosts(a, f, &opt); err != nil {
		return opt, err
	}
	if err := choosePlay(a, f, &opt); err != nil {
		return opt, err
	}
	if err := chooseEvents(a, ar, f, &opt); err != nil {
		return opt, err
	}
	if err := chooseTracks(ctx, a, ar, f, &opt); err != nil {
		return opt, err
	}
	if err := opt.Check(); err != nil {
		return opt, fmt.Errorf("--%w", err)
	}
	return opt, nil
}

// chooseCosts reads the user's costs and budget.
func chooseCosts(a *app, f chooseFlags, opt *choose.Options) error {
	if f.costs != "" {
		err := withInput(a, f.costs, func(name string, r io.Reader) (err error) {
			opt.Costs, err = cost.Read(name, r)
			return err
		})
		if err != nil {
			return fmt.Errorf("--costs: %w", err)
		}
	}
	opt.Budget = f.budget
	if _, limited := opt.Budget.Get(); limited {
		opt.Ladder = true
	}
	return nil
}

func choosePlay(a *app, f chooseFlags, opt *choose.Options) error {
	if f.play == "" {
		return nil
	}
	err := withInput(a, f.play, func(name string, r io.Reader) (err error) {
		opt.Play, err = play.ReadAssumptions(name, r)
		return err
	})
	if err != nil {
		return fmt.Errorf("--play: %w", err)
	}
	return nil
}

// chooseEvents reads the user's events; bad rows that are skipped are named on
// standard error.
func chooseEvents(a *app, ar arena.Arena, f chooseFlags, opt *choose.Options) error {
	if f.tracks != "" && f.events != "" {
		return errors.New("--tracks and --events are two ways to bring moments; name one")
	}
	if f.events == "" {
		if f.eventUnits != "" || f.lenient {
			return errors.New("--units-of-events and --lenient belong to --events; name the file with it")
		}
		return nil
	}
	format := play.EventFormat{Lenient: f.lenient}
	switch f.eventUnits {
	case "ft":
		format.Scale = unit.Foot.Metres()
	case "m":
		format.Scale = 1
	case "":
		return errors.New("--events needs --units-of-events: ft or m")
	default:
		return fmt.Errorf("--units-of-events: %s: write ft or m", form.Quote(f.eventUnits))
	}
	var skipped []*form.Problem
	err := withInput(a, f.events, func(name string, r io.Reader) (err error) {
		opt.Events, skipped, err = play.ReadEvents(name, r, ar.Rink, format)
		return err
	})
	if err != nil {
		return fmt.Errorf("--events: %w", err)
	}
	const most = 20 // lines on a screen
	for i, row := range skipped {
		if i == most {
			fmt.Fprintf(a.err, "and %d more rows skipped\n", len(skipped)-i)
			break
		}
		fmt.Fprintln(a.err, "skipped "+printable(row.Error()))
	}
	return nil
}

// chooseTracks reads tracked moments; what was filled is said on standard error.
func chooseTracks(ctx context.Context, a *app, ar arena.Arena, f chooseFlags, opt *choose.Options) error {
	if f.tracks == "" {
		return nil
	}
	var tracks []play.Track
	err := withInput(a, f.tracks, func(name string, r io.Reader) (err error) {
		tracks, err = play.ReadTracks(name, r, ar.Rink)
		return err
	})
	if err != nil {
		return fmt.Errorf("--tracks: %w", err)
	}
	set, filled, err := play.Tracked(ctx, ar.Rink, tracks, opt.Play, opt.Seed)
	if err != nil {
		return fmt.Errorf("--tracks: %w", err)
	}
	opt.Set, opt.Moments = set, set.Len()
	if what := filled.String(); what != "" {
		fmt.Fprintf(a.err, "%s: the file leaves out %s; they are filled as the sampler does\n", say.Count(filled.Moments, "moment"), what)
	}
	return nil
}
