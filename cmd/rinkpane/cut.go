package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// cutFlags are the flags of command cut.
type cutFlags struct {
	source
	cut.Request
	out           target
	route, verify string
	hold          string
	clearance     unit.Maybe[unit.Length]
	record        record
	issue         cut.Issue
	issued        []string // revisions, the latest last
}

func cutCommand(a *app) *cobra.Command {
	f := cutFlags{Request: cut.Request{Options: cut.DefaultOptions(), Spares: cut.DefaultSpareOptions(), Creator: "rinkpane " + release}}
	c := &cobra.Command{
		Use:   "cut ARENA --out DIR",
		Short: "Draw what a shop needs to make the holes and their covers",
		Long: `Writes a folder of shop drawings: per hole its pane with every hole of it, outline,
section, route, cover, what holds the cover, and corner radius as PDF, a full-size
template with check bars, and DXF outlines of pane and cover; openings in the boards
and the clear patches of low windows; the cut list with spares. What exists is drawn
as existing, to check it by. A hole that may not be made has no drawing and the
reason is said; one that fails a rule is drawn, and every sheet says NOT PASSED and
why. Every drawing carries the plan's revision; --verify says whether a drawing is
of this plan.`,
		Example: `  # every hole of an arena, on A4
  rinkpane cut arena.yaml --out shop --paper a4

  # one hole, cut where its pane stands, templates on one sheet each
  rinkpane cut arena.yaml --hole B1 --route site --paper full --out shop

  # is this drawing of this plan?
  rinkpane cut arena.yaml --verify shop/holes/B1/template.pdf`,
		Args: atMostOne,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 && f.verify == "" {
				return errors.New("cut needs an arena file: rinkpane cut ARENA --out DIR")
			}
			if f.verify != "" {
				return runVerify(a, args, f)
			}
			return runCut(c.Context(), a, args[0], f)
		},
	}
	cover, spares, fl := &f.Options.Cover, &f.Spares, c.Flags()
	fl.StringArrayVar(&f.Holes, "hole", nil, "only this hole or low window; may be given several times")
	f.out.flags(c, "out", "folder to write to; it is made when absent")
	fl.StringVar(&f.Paper, "paper", "", "a4, a3, letter, tabloid, another ISO or ANSI size, or full: templates on one sheet as large as needed (default: a4, letter in imperial plans)")
	fl.StringVar(&f.route, "route", "", "shop, site or order (default: what the pane's material asks)")
	fl.StringVar(&f.hold, "hold", string(cut.Button), "button or strap: what keeps a cover in its hole")
	quantity(c, &f.clearance, "clearance", "length", unit.ParseLength, `between a cover's plug and its hole, on each side (default "1 mm")`)
	fl.Float64Var(&cover.Cold, "cold", cover.Cold, "coldest that a pane or a cover gets, degrees Celsius")
	fl.Float64Var(&cover.Warm, "warm", cover.Warm, "warmest that a pane or a cover gets, degrees Celsius")
	fl.Float64Var(&spares.BreakRate, "break-rate", spares.BreakRate, "breaks per drilled pane and season, for the spares")
	fl.Float64Var(&spares.Certainty, "certainty", spares.Certainty, "certainty with which the spares last a season, 0 to below 1")
	f.record.flags(c)
	fl.StringArrayVar(&f.issued, "issue", nil, `a revision with its date and what changed, as in "A 2027-01-09 first issue"; give all of them, the latest last`)
	fl.StringVar(&f.issue.Owner, "owner", "", "legal owner of the drawings, for the title block")
	fl.StringVar(&f.issue.Number, "number", "", "document number, for the title block (default: the plan's mark)")
	fl.StringVar(&f.issue.Drawn, "drawn", "", "who drew, for the title block")
	fl.StringVar(&f.issue.Checked, "checked", "", "who checked, for the title block")
	f.kitFlag(c)
	f.rulesFlag(c)
	fl.StringVar(&f.verify, "verify", "", "do not draw; say whether this drawing (PDF, SVG, DXF) is of this plan")
	return c
}

// request completes the request that the flags make.
func (f cutFlags) request() (r cut.Request, err error) {
	r = f.Request
	r.Kit, r.Paper = f.Maker.Kit, cmp.Or(f.Paper, sheet.UsualPaper(f.arena.Units))
	r.Options.Cover.Clearance = f.clearance.Or(r.Options.Cover.Clearance)
	if f.route != "" {
		if r.Options.Route, err = cut.ParseRoute(f.route); err != nil {
			return r, fmt.Errorf("--route: %w", err)
		}
	}
	if r.Options.Hold, err = cut.ParseHold(f.hold); err != nil {
		return r, fmt.Errorf("--hold: %w", err)
	}
	if r.Paper != cut.Full {
		if _, err = sheet.ParsePaper(r.Paper); err != nil {
			return r, fmt.Errorf("--paper: %w, or full", err)
		}
	}
	return r, nil
}

func runCut(ctx context.Context, a *app, path string, f cutFlags) error {
	if f.out.path == "" {
		return errors.New("cut needs --out DIR, the folder for the drawings")
	}
	if err := f.open(a, path); err != nil {
		return err
	}
	r, err := f.request()
	if err != nil {
		return err
	}
	order := cut.NewShopOrder(f.arena, f.doc.Bytes(), f.Rules.Check(f.arena).Findings)
	if order.Approval, err = f.record.of(ctx, f.doc); err != nil {
		return err
	}
	for _, s := range f.issued {
		next, err := cut.ParseRevision(s)
		if err != nil {
			return fmt.Errorf("--issue: %w", err)
		}
		f.issue.History = append(f.issue.History, next)
	}
	order.Issue = f.issue
	ctx, end := a.watched(ctx)
	defer end()
	folder, err := order.Folder(ctx, r)
	if err != nil {
		return err
	}
	end()
	switch {
	case folder.Holes+folder.Windows+len(folder.Refused) == 0:
		return errors.New("the plan has no hole to draw; add one to its holes")
	case folder.Holes == 0 && len(folder.Refused) > 0 && (len(f.Holes) == 0 || folder.Windows == 0):
		folder.Files = nil // nothing of what was asked may be drawn: no folder
	}
	done := cutDone{Folder: folder, mark: order.Mark, dir: f.out.path, sys: f.arena.Units}
	if err := done.write(f.out.force); err != nil {
		return err
	}
	for _, no := range folder.Refused {
		fmt.Fprintln(a.err, printable(no.Error()))
	}
	for _, part := range done.marked() {
		for _, no := range part.holes {
			fmt.Fprintln(a.err, printable("hole "+no.Hole+": drawn, "+part.stamp+": "+no.Words()))
		}
	}
	lacking(a, folder.Lack)
	// One policy with check: what fails a rule, and what nobody can prove, is no yes.
	yes := len(folder.Refused)+len(folder.Marked)+len(folder.Doubted) == 0
	return a.verdict(yes, done.json(), done.text)
}
