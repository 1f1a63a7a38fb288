package book

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// flow is what a chapter is written into: sheets of paper or a page for a browser.
type flow interface {
	Heading(s string)
	Notes(lines ...string)
	Numbered(lines ...string)
	Table(t table.Table, size float64) // type in millimetres
	Drawing(d *sheet.Drawing)
}

// chapter is a part of the book with its pages and how it stands in the
// contents and the bookmarks.
type chapter struct {
	title string
	level int // 0, or 1 for a hole under "Holes"
	pages []*sheet.Drawing
}

// setter makes pages of one paper and look.
type setter struct {
	c       Content
	caution string
}

func (c Content) setter() setter {
	return setter{c: c, caution: strings.Join(append([]string{words.ApprovalSentence(c.Plan.Approval)}, glass.Cautions()...), " ")}
}

// pagePad is the white between frame and content, mm.
const pagePad = 5.0

// page frames a sheet lying on its side and returns the area for its content.
func (s setter) page(name, title string) (*sheet.Drawing, sheet.Rect) {
	d := s.c.Options.Paper.Landscape().Sheet(name, chart.Styles().Merge(styles()))
	d.Title = title
	subject := s.c.Arena.Name
	if s.c.Arena.Place != "" {
		subject += ", " + s.c.Arena.Place
	}
	// The revision goes first: the end of a long name may be cut off.
	area := d.Frame(sheet.TitleBlock{Title: title, Subject: "plan " + s.c.Mark + ", " + subject, Caution: s.caution})
	return d, area.Inset(pagePad)
}

func styles() sheet.Stylesheet {
	return sheet.Stylesheet{
		{Class: "book-title", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Bold, Size: 9}},
		{Class: "book-sub", Style: sheet.Style{Fill: sheet.Slate, Face: sheet.Regular, Size: 5}},
		{Class: "folio", Style: sheet.Style{Fill: sheet.Slate, Face: sheet.Regular, Size: sheet.SizeSmall}},
		{Class: "sign-line", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W25}},
		{Class: "link-text", Style: sheet.Style{Fill: sheet.Deep, Face: sheet.Regular, Size: sheet.SizeText}},
	}
}

// flow starts a flow over whole pages; later ones say so in their title.
func (s setter) flow(name, title string) *sheet.Flow {
	n := 0
	return sheet.NewFlow(func() (*sheet.Drawing, sheet.Rect) {
		n++
		if n > 1 {
			return s.page(fmt.Sprintf("%s-%d", name, n), title+", continued")
		}
		return s.page(name, title)
	})
}

// chapter writes a chapter over whole pages.
func (s setter) chapter(name, title string, write func(flow)) chapter {
	f := s.flow(name, title)
	write(f)
	return chapter{title: title, pages: f.Sheets()}
}

// spread is a page of two columns. What does not fit into a column goes on
// on a page of its own behind it.
type spread struct {
	s           setter
	name, title string
	first       *sheet.Drawing
	more        []*sheet.Drawing
}

// columnGap is the white between two columns, mm.
const columnGap = 8.0

// columns starts a spread and returns its two flows; share is the left
// column's part of the width, from 0 to 1.
func (s setter) columns(name, title string, share float64) (*spread, *sheet.Flow, *sheet.Flow) {
	d, area := s.page(name, title)
	sp := &spread{s: s, name: name, title: title, first: d}
	wide := area.W*share - columnGap/2
	left := sheet.Rect{X: area.X, Y: area.Y, W: wide, H: area.H}
	right := sheet.Rect{X: area.X + wide + columnGap, Y: area.Y, W: area.W - wide - columnGap, H: area.H}
	return sp, sp.column(left), sp.column(right)
}

func (sp *spread) column(r sheet.Rect) *sheet.Flow {
	return sheet.FlowOn(sp.first, r, func() (*sheet.Drawing, sheet.Rect) {
		d, area := sp.s.page(fmt.Sprintf("%s-%d", sp.name, len(sp.more)+2), sp.title+", continued")
		sp.more = append(sp.more, d)
		area.W = r.W
		return d, area
	})
}

func (sp *spread) pages() []*sheet.Drawing { return append([]*sheet.Drawing{sp.first}, sp.more...) }

// findingsTable sets findings, those not kept in bold.
func (s setter) findingsTable(found []rules.Finding, columns ...string) table.Table {
	t := words.Findings().Pick(columns...).Of("", found, s.units())
	for _, f := range found {
		t.Strong = append(t.Strong, f.Status != rules.Pass)
	}
	return t
}
