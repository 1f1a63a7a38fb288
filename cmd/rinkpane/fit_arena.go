package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
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
		return fmt.Errorf("fit with an arena needs --hole (%s) and --lens (%s)", strings.Join(ar.Openings(), ", "), lensIDs(k))
	}
	if t, given := f.thick.Get(); given {
		ar = ar.TakingThickness(t)
	}
	openings, err := pickOpenings(ar, []string{f.hole})
	if err != nil {
		return err
	}
	o := openings[0]
	lens, err := pickLens(k, ar, f.lens)
	if err != nil {
		return err
	}
	body, err := pickBody(k, f.body)
	if err != nil {
		return err
	}
	use, err := f.setting(lens)
	if err != nil {
		return err
	}
	cs, err := fit.FromKit(o, lens, body, use)
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
	return f.answer(a, cs, title+"\n", ar.Units, arena.Assumed(fit.Facts(o)...))
}

func lensIDs(k kit.Kit) string {
	ids := make([]string, 0, len(k.Lenses))
	for _, l := range k.Lenses {
		ids = append(ids, l.ID)
	}
	return strings.Join(ids, ", ")
}

// setting settles focal length and stop for the lens.
func (f fitFlags) setting(l kit.Lens) (fit.Setting, error) {
	focal := f.focal.Or(l.FocalMax)
	if focal < l.FocalMin || focal > l.FocalMax {
		return fit.Setting{}, fmt.Errorf("--focal %s: lens %s goes from %s to %s", focal.Format(unit.Metric), l.ID,
			l.FocalMin.Format(unit.Metric), l.FocalMax.Format(unit.Metric))
	}
	widest := l.WidestAt(focal)
	stop := f.stop.Or(widest)
	// A stop is written to two figures, so that f/2.8 may stand for 2.83.
	if float64(stop) < float64(widest)*0.97 {
		return fit.Setting{}, fmt.Errorf("--stop f/%.3g: lens %s opens to f/%.3g at %s", float64(stop), l.ID, float64(widest), focal.Format(unit.Metric))
	}
	if f.hood && l.NoseHood == 0 {
		return fit.Setting{}, fmt.Errorf("--hood: lens %s has no hood that comes off; leave it out", l.ID)
	}
	return fit.Setting{Focal: focal, Stop: stop, Hood: f.hood, Portrait: f.orientation.Or(landscape) == portrait}, nil
}
