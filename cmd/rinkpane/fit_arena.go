package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

func runFitArena(a *app, c *cobra.Command, path string, f fitFlags) error {
	if err := refuseFlags(c, fitBareFlags, "is for a lens and a hole by their numbers; leave it out or leave the arena out"); err != nil {
		return err
	}
	ar, err := readArena(a, path)
	if err != nil {
		return err
	}
	k, err := readKit(a, f.kit)
	if err != nil {
		return err
	}
	if f.hole == "" || f.lens == "" {
		return fmt.Errorf("fit with an arena needs --hole (%s) and --lens (%s)", strings.Join(ar.Openings(), ", "), strings.Join(k.LensIDs(), ", "))
	}
	lens, body, err := pickKit(k, ar, f.lens, f.body)
	if err != nil {
		return err
	}
	if t, given := f.thick.Get(); given {
		ar = ar.TakingThickness(t)
	}
	openings, err := pickOpenings(ar, []string{f.hole})
	if err != nil {
		return err
	}
	use, err := fit.Use(lens, f.focal, f.stop, f.hood, f.orientation.Or(landscape) == portrait)
	if err != nil {
		return fmt.Errorf("--%w", err)
	}
	cs, err := fit.FromKit(openings[0], lens, body, use)
	if err != nil {
		return err
	}
	cs.Pivot = f.pivot.Or(fit.Free)
	if b, ok := f.back.Get(); ok {
		cs.Back = unit.Known(b.Metres())
	}
	if err := cs.Validate(); err != nil {
		return err
	}
	title := fmt.Sprintf("%s, hole %s: %s at %s, f/%.3g", ar.Name, f.hole, lens.Name, use.Focal.Format(unit.Metric), float64(use.Stop))
	if use.Hood {
		title += ", hood on"
	}
	return f.answer(a, cs, title+"\n", ar.Units, arena.Assumed(fit.Facts(openings[0])...))
}
