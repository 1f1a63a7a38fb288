package cut

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/table"
)

// Kind says what a file of the cut folder is.
type Kind string

// The kinds of files. A DXF of release 12 has the kind of its like with "-r12" behind.
const (
	DrawingPDF   Kind = "drawing"      // all sheets of a hole, to scale
	TemplatePDF  Kind = "template"     // full size, with check bars
	PaneDXF      Kind = "pane-dxf"     // the pane with its hole for a machine
	CoverDXF     Kind = "cover-dxf"    // the cover's outlines for a machine, a file for each thickness of sheet
	HoldDXF      Kind = "hold-dxf"     // what keeps the cover in, for a machine
	PaneSVG      Kind = "pane-svg"     // the pane from both sides, as a picture
	TemplateSVG  Kind = "template-svg" // the template as a picture, full size
	WindowPDF    Kind = "window"       // a low window's clear patch
	WindowDXF    Kind = "window-dxf"   // the patch for a plotter
	CutListPDF   Kind = "cut-list"     // over the arena
	CutListTable Kind = "cut-list-csv" // the same for a spreadsheet
	TableCSV     Kind = "table-csv"    // another table of the drawings, for a spreadsheet
)

// File is one file of the cut folder: its path below the folder with slashes,
// its kind, the hole (or window) it is of ("" for the arena's), its bytes.
type File struct {
	Path string
	Kind Kind
	Hole string
	Data []byte
}

// Request is what is to be drawn.
type Request struct {
	Holes   []string // ids of holes and low windows; empty means every one of them, and the cut list
	Paper   string   // of sheet.Papers, or Full
	Options Options
	Spares  SpareOptions
	Kit     kit.Kit // for the patches of low windows
	Creator string  // the program and its version, for the PDFs
}

// Folder is the cut folder before it is written, and the holes it has no
// drawing of.
type Folder struct {
	Files   []File
	Holes   int // with a drawing
	Windows int // with a drawing
	Refused []*Refusal
	Marked  []*Refusal // drawn, and marked across every sheet as not passed, with the reasons
	Doubted []*Refusal // drawn, and marked as not proved
	Notes   []string   // what else could not be drawn, in plain words
	List    *List      // sums the arena up; nil when only some holes are asked for
	Lack    sheet.Lack // letters that the drawings' fonts do not hold
}

// fullPaper is the paper of drawings to scale where templates are on paper Full.
const fullPaper = "a3"

// leastPaper is the width in millimetres of the narrowest paper, upright, on
// which the drawings have room: a4 has 210, letter 215.9.
const leastPaper = 209.0

// Folder draws what is asked. A hole that may not be made has no file and
// stands in Refused; an opening that is not in the plan, or an unknown paper, is an error.
func (p ShopOrder) Folder(ctx context.Context, r Request) (Folder, error) {
	name := r.Paper
	if name == Full {
		name = fullPaper
	}
	paper, err := sheet.ParsePaper(name)
	if err != nil {
		return Folder{}, err
	}
	if paper = paper.Portrait(); paper.W < leastPaper {
		return Folder{}, fmt.Errorf("paper %s: too small for shop drawings; take a4, letter or larger", paper.Name)
	}
	// What is wrong for every hole is said once.
	if err := errors.Join(r.Options.Cover.check(), r.Spares.check()); err != nil {
		return Folder{}, err
	}
	jobs, refused, err := p.jobs(r)
	if err != nil {
		return Folder{}, err
	}
	sets, lacks, errs := make([][]File, len(jobs)), make([]sheet.Lack, len(jobs)), make([]error, len(jobs))
	if err := cores.EachUntil(ctx, "drawing the holes", len(jobs), func(i int) {
		sets[i], lacks[i], errs[i] = p.holeFiles(ctx, jobs[i], r, paper)
	}); err != nil {
		return Folder{}, err
	}
	out := Folder{Refused: refused, Holes: len(jobs)}
	for i, s := range sets {
		j := jobs[i]
		if errs[i] != nil {
			return Folder{}, fmt.Errorf("hole %s: %w", j.Hole.ID, errs[i])
		}
		if len(j.NotPassed) > 0 {
			out.Marked = append(out.Marked, p.refuse(j.Hole, j.NotPassed...))
		}
		if len(j.NotProved) > 0 {
			out.Doubted = append(out.Doubted, p.refuse(j.Hole, j.NotProved...))
		}
		out.Files, out.Lack = append(out.Files, s...), out.Lack.And(lacks[i])
	}
	if err := p.windowFiles(ctx, &out, r, paper); err != nil {
		return Folder{}, err
	}
	if len(r.Holes) == 0 {
		err = p.listFiles(ctx, &out, r, paper)
	}
	out.Files = append(out.Files, p.holeTables(jobs)...)
	return out, err
}

// names lists the holes and low windows that may be asked for.
func (p ShopOrder) names() string {
	if ids := p.Arena.Openings(); len(ids) > 0 {
		return strings.Join(ids, ", ")
	}
	return "an id, once the plan has holes"
}

// windows returns the low windows asked for.
func (p ShopOrder) windows(r Request) []glass.Window {
	if len(r.Holes) == 0 {
		return p.Arena.Windows
	}
	return slices.DeleteFunc(slices.Clone(p.Arena.Windows), func(w glass.Window) bool { return !slices.Contains(r.Holes, w.ID) })
}

// jobs gathers the jobs asked for, refusals apart.
func (p ShopOrder) jobs(r Request) (jobs []Job, refused []*Refusal, err error) {
	holes := p.Arena.Working()
	if len(r.Holes) > 0 {
		holes = nil
		for _, id := range r.Holes {
			h, ok := p.Arena.Hole(id)
			isWindow := slices.ContainsFunc(p.Arena.Windows, func(w glass.Window) bool { return w.ID == id })
			switch {
			case isWindow:
			case !ok:
				return nil, nil, fmt.Errorf("no hole or low window %q in the plan; write %s", id, p.names())
			case h.State == glass.Off:
				return nil, nil, fmt.Errorf("hole %q is off in the plan, so nothing is made of it; set its state to planned, or write %s", id, p.names())
			case !slices.ContainsFunc(holes, func(k glass.Hole) bool { return k.ID == id }):
				holes = append(holes, h)
			}
		}
	}
	for _, h := range holes {
		j, err := p.Job(h, r.Options)
		var no *Refusal
		if errors.As(err, &no) {
			refused = append(refused, no)
			continue
		}
		if err != nil {
			return nil, nil, err
		}
		jobs = append(jobs, j)
	}
	return jobs, refused, nil
}

// Sheets are the sheets to scale of the pane that a hole is in: the pane with all its
// holes; of each hole outline with edge and route, and cover; the order form; corner
// radii. They are the same for every hole of the pane.
func (p ShopOrder) Sheets(j Job, paper sheet.Paper) []*sheet.Drawing {
	pane := p.paneJob(j)
	usual := 1 + 4*len(pane.jobs)
	if pane.ordered() {
		usual++
	}
	if pane.marks().long(p.Arena.Units) {
		usual++
	}
	return p.document(paper, j.Pane.ID, usual, func(s *set) {
		s.part(func() { s.panePage(pane) })
		s.part(func() { s.reasonsPage(pane) })
		for _, k := range pane.jobs {
			s.part(func() { s.detailPage(k) })
			s.part(func() { s.coverPage(k) })
			s.part(func() { s.holdPage(k) })
		}
		s.part(func() { s.orderPage(pane) })
		for _, k := range pane.jobs {
			s.part(func() { s.advisoryPage(k) })
		}
	})
}

func (p ShopOrder) holeFiles(ctx context.Context, j Job, r Request, paper sheet.Paper) ([]File, sheet.Lack, error) {
	id := j.Hole.ID
	sheets := p.Sheets(j, paper)
	drawing, err := p.pdf(ctx, "Pane "+j.Pane.ID+": shop drawing", r.Creator, sheets)
	if err != nil {
		return nil, sheet.Lack{}, err
	}
	tiles, err := p.Template(j, r.Paper)
	if err != nil {
		return nil, sheet.Lack{}, err
	}
	template, err := p.pdf(ctx, "Hole "+id+": template, full size", r.Creator, tiles)
	if err != nil {
		return nil, sheet.Lack{}, err
	}
	whole, err := p.Template(j, Full)
	if err != nil {
		return nil, sheet.Lack{}, err
	}
	dir := "holes/" + id + "/"
	files := slices.Concat(dxfs(dir+"pane", PaneDXF, id, p.PaneOutline(j)),
		dxfs(dir+"cover-plug", CoverDXF, id, p.PlugOutline(j)), dxfs(dir+"cover-flange", CoverDXF, id, p.FlangeOutline(j)),
		dxfs(dir+"cover-hold", HoldDXF, id, p.HoldOutline(j)))
	return append([]File{
		{dir + "drawing.pdf", DrawingPDF, id, drawing},
		{dir + "template.pdf", TemplatePDF, id, template},
		{dir + "pane.svg", PaneSVG, id, sheet.SVG(sheets[0])},
		{dir + "template.svg", TemplateSVG, id, sheet.SVG(whole[0])},
	}, files...), lackOf(sheets).And(lackOf(tiles)), nil
}

// dxfs is a drawing for a machine in both releases of the format.
func dxfs(path string, k Kind, of string, d *sheet.Drawing) []File {
	return []File{{path + ".dxf", k, of, sheet.DXF(d)}, {path + "-r12.dxf", k + "-r12", of, sheet.DXF12(d)}}
}

func lackOf(drawings []*sheet.Drawing) (l sheet.Lack) {
	for _, d := range drawings {
		l = l.And(d.Lacking())
	}
	return l
}

// windowFiles adds the low windows asked for.
func (p ShopOrder) windowFiles(ctx context.Context, out *Folder, r Request, paper sheet.Paper) error {
	var patches []table.Table
	for _, w := range p.windows(r) {
		job, err := p.WindowJob(w, r.Kit)
		if err != nil {
			out.Notes = append(out.Notes, err.Error())
			continue
		}
		pages := p.windowPages(job, paper)
		pdf, err := p.pdf(ctx, "Low window "+w.ID, r.Creator, pages)
		if err != nil {
			return err
		}
		out.Lack = out.Lack.And(lackOf(pages))
		out.Windows++
		patches = append(patches, ofWhich("window", w.ID, patchFields(w).Of("", job.Patches, p.Arena.Units)))
		dir := "windows/" + w.ID + "/"
		out.Files = append(out.Files, File{dir + "window.pdf", WindowPDF, w.ID, pdf})
		if w.Printed && !job.Clear.IsZero() { // else a plotter has nothing to cut
			out.Files = append(out.Files, dxfs(dir+"window", WindowDXF, w.ID, p.WindowOutline(job))...)
		}
	}
	out.Files = append(out.Files, tableFile("patches", patches)...)
	return nil
}

// listFiles adds the cut list.
func (p ShopOrder) listFiles(ctx context.Context, out *Folder, r Request, paper sheet.Paper) error {
	list, err := p.List(r.Options, r.Spares)
	if err != nil {
		return err
	}
	pages := p.listPages(list, paper)
	pdf, err := p.pdf(ctx, "Cut list", r.Creator, pages)
	if err != nil {
		return err
	}
	out.List, out.Lack = &list, out.Lack.And(lackOf(pages))
	out.Files = append(out.Files,
		File{"cut-list.pdf", CutListPDF, "", pdf},
		File{"cut-list.csv", CutListTable, "", csvOf(holeFields(p.Mark).Of("", list.Rows, p.Arena.Units))},
		File{"tables/spares.csv", TableCSV, "", csvOf(spareFields().Of("", slices.Concat(list.Panes, list.Covers), p.Arena.Units))})
	return nil
}

// holeTables are the tables of the holes' drawings, for a spreadsheet.
func (p ShopOrder) holeTables(jobs []Job) []File {
	var sizes, limits, plays, factors []table.Table
	sys := p.Arena.Units
	for _, j := range jobs {
		id := j.Hole.ID
		sizes = append(sizes, ofWhich("hole", id, sizeFields().Of("", j.sizes(), sys)))
		limits = append(limits, ofWhich("hole", id, limitFields().Of("", j.Limits, sys)))
		plays = append(plays, ofWhich("hole", id, playFields().Of("", j.Cover.Fits, sys)))
		factors = append(factors, ofWhich("hole", id, radiusFields().Of("", j.radii(), sys)))
	}
	return slices.Concat(tableFile("sizes", sizes), tableFile("distances", limits), tableFile("cover-play", plays), tableFile("corner-radius", factors))
}

// tableFile is tables with the same columns in one file; none for no table.
func tableFile(name string, tables []table.Table) []File {
	if len(tables) == 0 {
		return nil
	}
	all := tables[0]
	for _, t := range tables[1:] {
		all.Rows = append(all.Rows, t.Rows...)
	}
	return []File{{"tables/" + name + ".csv", TableCSV, "", csvOf(all)}}
}

// pdf sets drawings as the pages of one PDF that carries the plan's stamp.
func (p ShopOrder) pdf(ctx context.Context, title, creator string, drawings []*sheet.Drawing) ([]byte, error) {
	pages := make([]sheet.Page, len(drawings))
	for i, d := range drawings {
		pages[i] = sheet.Page{Drawing: d, Bookmarks: []sheet.Bookmark{{Title: d.Title}}}
	}
	info := sheet.Info{
		Title: title + ", " + p.Arena.Name, Subject: p.subject() + ", plan revision " + p.Mark,
		Keywords: p.Stamp(), Creator: creator,
	}
	return sheet.PDF(ctx, info, pages...)
}
