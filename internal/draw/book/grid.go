package book

import (
	"math"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
)

// grid is how a page is divided, made for a paper lying on its side. Pages are laid
// out in millimetres of the grid and set on the paper larger by its zoom, so that
// type, lines, gaps and margins grow with the paper together.
type grid struct {
	w, h float64 // of the page, in millimetres of the grid
	zoom float64 // millimetres on the paper for one of the grid
	area sheet.Rect
}

// a4Diagonal is that of the paper whose zoom is 1, in millimetres.
const a4Diagonal = 363.7

// The page's parts, in millimetres of the grid. The outer margins are a twentieth of
// the page's width.
const (
	marginShare = 0.05
	headHigh    = 18.5 // from the page's top to the text
	footHigh    = 17.5
	columnGap   = 8.0
)

// gridOf divides a paper. Type grows with the root of the paper's size: a larger sheet
// is read from farther away, and holds more as well. Letter stands as A4 does.
func gridOf(p sheet.Paper) grid {
	p = p.Landscape()
	g := grid{zoom: max(1, math.Sqrt(math.Hypot(p.W, p.H)/a4Diagonal))}
	g.w, g.h = p.W/g.zoom, p.H/g.zoom
	side := marginShare * g.w
	g.area = sheet.Rect{X: side, Y: headHigh, W: g.w - 2*side, H: g.h - headHigh - footHigh}
	return g
}

// sheet is an empty page in millimetres of the grid.
func (g grid) sheet(name, title string) *sheet.Drawing {
	d := sheet.New(name, g.w, g.h, chart.Styles().Merge(styles()))
	d.Title = title
	return d
}

// onPaper is a page in millimetres of the paper.
func (g grid) onPaper(d *sheet.Drawing) *sheet.Drawing {
	out := sheet.New(d.Name, g.w*g.zoom, g.h*g.zoom, nil)
	out.Title, out.Desc = d.Title, d.Desc
	out.Place("", d, sheet.Point{}, g.zoom)
	return out
}

func styles() sheet.Stylesheet {
	return sheet.Stylesheet{
		{Class: "cover-title", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Bold, Size: coverTitle}},
		{Class: "cover-sub", Style: sheet.Style{Fill: sheet.Slate, Face: sheet.Regular, Size: coverSub}},
		{Class: "running", Style: sheet.Style{Fill: sheet.Slate, Face: sheet.Regular, Size: sheet.SizeSmall}},
		{Class: "fact", Style: sheet.Style{Fill: sheet.Deep, Face: sheet.Bold, Size: sheet.SizeTitle}},
		{Class: "sign-line", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W25}},
		{Class: "link-text", Style: sheet.Style{Fill: sheet.Deep, Face: sheet.Regular, Size: sheet.SizeText}},
	}
}

// Type of the cover, mm of the grid.
const (
	coverTitle = 13.0
	coverSub   = 5.0
)
