package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// inspectFlags are the flags of command inspect.
type inspectFlags struct {
	source
	record                              record
	hole, measured, by, on, paper, take string
	out                                 target
}

func inspectCommand(a *app) *cobra.Command {
	var f inspectFlags
	c := &cobra.Command{
		Use:   "inspect ARENA --hole HOLE --measured FILE.csv",
		Short: "Judge whether a hole was made as drawn",
		Long: `Judges measurements of a made hole and its cover against its drawing's limits, by
the decision rule of ISO 14253-1: accepted when proved, refused when disproved,
unproved when the instrument cannot tell, and which usual instrument would do.
The file has a line for each measurement: what, value_mm, uncertainty_mm (the
instrument's expanded uncertainty, k = 2). What can be measured: width, height,
corner-radius, rounding-rink-face, rounding-shooting-face, from-left (the pane's
left edge to the hole's centre, seen from the shooting side), above-boards,
thickness, cover-width, cover-height, cover-corner-radius. What is looked at is
yes or no: no-cracks, snug, tethered. Exit 0 when accepted, 1 when not.`,
		Example: "  rinkpane inspect arena.yaml --hole B1 --measured b1.csv\n" +
			"  rinkpane inspect arena.yaml --hole B1 --measured b1.csv --out b1.pdf --by Ada --on 2026-11-28\n" +
			"  rinkpane inspect arena.yaml --hole B1 --measured b1.csv --take-over as-built.yaml",
		Args: oneArena,
		RunE: func(c *cobra.Command, args []string) error { return runInspect(c.Context(), a, args[0], f) },
	}
	fl := c.Flags()
	f.record.flags(c)
	fl.StringVar(&f.hole, "hole", "", "the hole that was measured")
	fl.StringVar(&f.measured, "measured", "", "file of measurements: what,value_mm,uncertainty_mm")
	f.out.flags(c, "out", "write the certificate as a page to this file (.pdf)")
	fl.StringVar(&f.by, "by", "", "who inspected, for the certificate")
	fl.StringVar(&f.on, "on", "", "the day of the inspection, as 2026-11-28, for the certificate")
	fl.StringVar(&f.paper, "paper", "", "paper of the certificate: a4, letter ... (default: a4, letter in imperial plans)")
	fl.StringVar(&f.take, "take-over", "", "write the arena with the measured numbers in place of the planned ones to this file")
	return c
}

func runInspect(ctx context.Context, a *app, path string, f inspectFlags) error {
	if f.hole == "" || f.measured == "" {
		return errors.New("inspect needs --hole and --measured, as in: rinkpane inspect arena.yaml --hole B1 --measured b1.csv")
	}
	if err := errors.Join(f.out.may(".pdf"), target{flag: "take-over", path: f.take, force: f.out.force}.may(".yaml", ".yml")); err != nil {
		return err
	}
	var on time.Time
	if f.on != "" {
		var err error
		if on, err = time.Parse(time.DateOnly, f.on); err != nil {
			return fmt.Errorf("--on %q: write a day as 2026-11-28", f.on)
		}
	}
	if path == "-" && f.measured == "-" {
		return errors.New("standard input cannot be both the arena and the measurements; name a file for one of them")
	}
	if err := f.open(a, path); err != nil {
		return err
	}
	var measured []custody.Measured
	var seen []custody.Seen
	if err := withInput(a, f.measured, func(name string, r io.Reader) (err error) {
		measured, seen, err = custody.ReadMeasured(name, r)
		return err
	}); err != nil {
		return err
	}
	order := cut.NewShopOrder(f.arena, f.doc.Bytes(), nil)
	var err error
	if order.Approval, err = f.record.of(ctx, f.doc); err != nil {
		return err
	}
	job, err := order.JobOf(f.hole, cut.DefaultOptions())
	if err != nil {
		return err
	}
	found := custody.Inspect(f.hole, job.Acceptance(), custody.Readings(measured), seen)
	if f.out.path != "" {
		page, err := order.Certificate(ctx, job, found, f.by, on, cmp.Or(f.paper, sheet.UsualPaper(f.arena.Units)), "rinkpane "+release)
		if err == nil {
			err = f.out.write(page)
		}
		if err != nil {
			return err
		}
	}
	if err := f.takeOver(found); err != nil {
		return err
	}
	return a.verdict(found.Verdict == custody.Accepted, wire.Inspection(found), func() string { return words.InspectionText(found, f.arena.Units) })
}

// takeOver writes the arena with the measured numbers, when it is asked for.
func (f inspectFlags) takeOver(found custody.Judged) error {
	if f.take == "" {
		return nil
	}
	edits := custody.TakeOver(f.arena, found)
	if len(edits) == 0 {
		return errors.New("--take-over: nothing was measured that the survey holds")
	}
	doc, _, err := edit.Editor{}.Apply(f.doc, edits)
	if err != nil {
		return fmt.Errorf("--take-over: %w", err)
	}
	return target{flag: "take-over", path: f.take, force: f.out.force}.write(doc.Bytes())
}
