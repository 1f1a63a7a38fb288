package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"path"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// cutFlags are the flags of command cut.
type cutFlags struct {
	holes, rules        []string
	out, paper, route   string
	kit, verify         string
	clearance           string
	cold, warm          float64
	breakRate, sureness float64
	force               bool
}

func cutCommand(a *app) *cobra.Command {
	var f cutFlags
	c := &cobra.Command{
		Use:   "cut ARENA --out DIR",
		Short: "Draw what a shop needs to make the holes and their covers",
		Long: `Writes a folder of shop drawings: per hole the pane from both sides, outline,
section, route, cover and corner radius as PDF, a full-size template with check
bars, and DXF outlines of pane and cover; the clear patches of low windows; the
cut list with spares. What exists is drawn as existing, to check it by. A hole that
may not be made has no drawing and the reason is said; one that fails a rule is
drawn, and every sheet says NOT PASSED and why. Every drawing carries the plan's
revision; --verify says whether a drawing is of this plan.`,
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
	o, s := cut.DefaultCoverOptions(), cut.DefaultSpareOptions()
	c.Flags().StringArrayVar(&f.holes, "hole", nil, "only this hole or low window; may be given several times")
	c.Flags().StringVar(&f.out, "out", "", "folder to write to; it is made when absent")
	c.Flags().StringVar(&f.paper, "paper", "", "a4, a3, letter, tabloid, another ISO or ANSI size, or full: templates on one sheet as large as needed (default: a4, letter in imperial plans)")
	c.Flags().StringVar(&f.route, "route", "", "shop, site or order (default: what the pane's material asks)")
	c.Flags().StringVar(&f.clearance, "clearance", "1 mm", "between a cover's plug and its hole, on each side")
	c.Flags().Float64Var(&f.cold, "cold", o.Cold, "coldest that a pane or a cover gets, degrees Celsius")
	c.Flags().Float64Var(&f.warm, "warm", o.Warm, "warmest that a pane or a cover gets, degrees Celsius")
	c.Flags().Float64Var(&f.breakRate, "break-rate", s.BreakRate, "breaks per drilled pane and season, for the spares")
	c.Flags().Float64Var(&f.sureness, "certainty", s.Certainty, "certainty with which the spares last a season, 0 to below 1")
	c.Flags().StringVar(&f.kit, "kit", "", "kit file, for the clear patches of low windows (default: the built-in kit)")
	rulesFlag(c, &f.rules)
	c.Flags().StringVar(&f.verify, "verify", "", "do not draw; say whether this drawing (PDF, SVG, DXF) is of this plan")
	c.Flags().BoolVar(&f.force, "force", false, "replace files that exist")
	return c
}

// request reads the flags into a request for the plan's own units.
func (f cutFlags) request(a *app, sys unit.System) (cut.Request, error) {
	r := cut.Request{Holes: f.holes, Paper: cmp.Or(f.paper, sheet.UsualPaper(sys)), Options: cut.DefaultOptions(), Spares: cut.DefaultSpareOptions(), Creator: "rinkpane " + release}
	var err error
	if f.route != "" {
		if r.Options.Route, err = cut.ParseRoute(f.route); err != nil {
			return r, fmt.Errorf("--route: %w", err)
		}
	}
	if r.Options.Cover.Clearance, err = unit.ParseLength(f.clearance); err != nil {
		return r, fmt.Errorf("--clearance: %w", err)
	}
	if r.Paper != cut.Full {
		if _, err = sheet.ParsePaper(r.Paper); err != nil {
			return r, fmt.Errorf("--paper: %w, or full", err)
		}
	}
	r.Options.Cover.Cold, r.Options.Cover.Warm = f.cold, f.warm
	r.Spares.BreakRate, r.Spares.Certainty = f.breakRate, f.sureness
	r.Kit, err = readKit(a, f.kit)
	return r, err
}

// cutAnswer is the JSON answer; contract field names.
type cutAnswer struct {
	Files   []cutFile    `json:"files"`
	Refused []cutRefusal `json:"refused"`
	// NotPassed are holes that are drawn and marked, with the reasons; NotProved
	// those of which the survey lacks something.
	NotPassed []cutRefusal `json:"not_passed"`
	NotProved []cutRefusal `json:"not_proved"`
	Notes     []string     `json:"notes"`
	Revision  string       `json:"revision"`
	// CutList sums the arena up; absent when only some holes are asked for.
	CutList *cutSums `json:"cut_list,omitempty"`
}

type cutFile struct {
	Path string   `json:"path"`
	Kind cut.Kind `json:"kind"`
	Hole string   `json:"hole"`
}

type cutRefusal struct {
	Hole    string   `json:"hole"`
	Reasons []string `json:"reasons"`
}

func reasonsOf(list []*cut.Refusal) []cutRefusal {
	out := []cutRefusal{}
	for _, r := range list {
		out = append(out, cutRefusal{r.Hole, say.All(r.Reasons, r.Units)})
	}
	return out
}

func runCut(ctx context.Context, a *app, arenaPath string, f cutFlags) error {
	if f.out == "" {
		return errors.New("cut needs --out DIR, the folder for the drawings")
	}
	doc, ar, err := readDocument(a, arenaPath)
	if err != nil {
		return err
	}
	r, err := f.request(a, ar.Units)
	if err != nil {
		return err
	}
	sets, err := readRules(a, f.rules)
	if err != nil {
		return err
	}
	order := cut.NewShopOrder(ar, doc.Bytes(), sets.Check(ar).Findings)
	ctx, end := a.watched(ctx)
	defer end()
	folder, err := order.Folder(ctx, r)
	end()
	if err != nil {
		return err
	}
	switch {
	case folder.Holes+folder.Windows+len(folder.Refused) == 0:
		return errors.New("the plan has no hole to draw; add one to its holes")
	case folder.Holes == 0 && len(folder.Refused) > 0 && (len(f.holes) == 0 || folder.Windows == 0):
		folder.Files = nil // nothing of what was asked may be drawn: no folder
	}
	files := make([]outFile, len(folder.Files))
	var sums *cutSums
	if len(f.holes) == 0 {
		list, err := order.List(r.Options, r.Spares)
		if err != nil {
			return err
		}
		sums = sumsOf(list, ar.Units)
	}
	answer := cutAnswer{Files: []cutFile{}, Notes: folder.Notes, Revision: order.Mark, CutList: sums}
	for i, file := range folder.Files {
		files[i] = outFile{file.Path, file.Data}
		answer.Files = append(answer.Files, cutFile{filepath.ToSlash(filepath.Join(f.out, filepath.FromSlash(file.Path))), file.Kind, file.Hole})
	}
	answer.Refused, answer.NotPassed, answer.NotProved = reasonsOf(folder.Refused), reasonsOf(folder.Marked), reasonsOf(folder.Doubted)
	for _, no := range folder.Refused {
		fmt.Fprintln(a.err, printable(no.Error()))
	}
	for _, no := range folder.Marked {
		fmt.Fprintln(a.err, printable("hole "+no.Hole+": drawn, NOT PASSED: "+no.Words()))
	}
	lacking(a, folder.Lack)
	if answer.Notes == nil {
		answer.Notes = []string{}
	}
	if len(files) > 0 {
		if err := writeFolder(f.out, files, f.force); err != nil {
			return err
		}
	}
	if err := a.print(answer, func(out io.Writer) { writeCut(out, answer, f.out) }); err != nil {
		return err
	}
	if len(folder.Refused)+len(folder.Marked) > 0 {
		return errAnswerNo
	}
	return nil
}

func writeCut(out io.Writer, answer cutAnswer, dir string) {
	if len(answer.Files) == 0 {
		fmt.Fprintf(out, "plan revision %s: nothing is drawn, and no folder is made\n", answer.Revision)
	} else {
		fmt.Fprintf(out, "plan revision %s, %d files in %s\n\n", answer.Revision, len(answer.Files), dir)
	}
	last := ""
	for _, f := range answer.Files {
		if d := path.Dir(f.Path); d != last {
			fmt.Fprintf(out, "%s/\n", d)
			last = d
		}
		fmt.Fprintf(out, "  %-16s %s\n", path.Base(f.Path), kindWords(f.Kind))
	}
	fmt.Fprintln(out)
	for _, no := range answer.Refused {
		writeLines(out, []string{"hole " + no.Hole + ", not drawn: " + strings.Join(no.Reasons, "; ")})
	}
	for _, no := range answer.NotPassed {
		writeLines(out, []string{"hole " + no.Hole + ", drawn and marked NOT PASSED: " + strings.Join(no.Reasons, "; ")})
	}
	for _, no := range answer.NotProved {
		writeLines(out, []string{"hole " + no.Hole + ", drawn and marked NOT PROVED: " + strings.Join(no.Reasons, "; ")})
	}
	writeLines(out, answer.Notes)
	if answer.CutList != nil {
		writeLines(out, answer.CutList.words())
	}
	writeLines(out, append([]string{"Measure the template's check bars before anything is cut."}, glass.Cautions()...))
}

func kindWords(k cut.Kind) string {
	return map[cut.Kind]string{
		cut.DrawingPDF: "pane from both sides, outline, section, route, cover, corner radius", cut.TemplatePDF: "template at full size, with check bars",
		cut.PaneDXF: "pane with its hole, for a machine", cut.CoverDXF: "plug and flange, for a machine", cut.PaneSVG: "pane from both sides",
		cut.TemplateSVG: "template at full size", cut.WindowPDF: "clear patch of a low window", cut.WindowDXF: "the patch, for a plotter",
		cut.CutListPDF: "panes, covers, spares", cut.CutListTable: "the list for a spreadsheet", cut.TableCSV: "a table for a spreadsheet",
	}[k]
}
