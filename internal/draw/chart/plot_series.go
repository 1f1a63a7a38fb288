package chart

import (
	"math"
	"strconv"

	"example.org/rinkpane/internal/draw/sheet"
)

// looks is the number of different looks of a series.
const looks = 6

// seriesClass returns the class of the i-th series: colour, dash and sign differ.
func seriesClass(i int) string { return "series series-" + strconv.Itoa(i%looks+1) }

// plotStyles returns the classes of plots. Each series has a dash of its own, so
// that a print in grey keeps them apart.
func plotStyles() sheet.Stylesheet {
	line := func(i int, c sheet.Colour, dash ...float64) sheet.Rule {
		if dash == nil {
			dash = sheet.Solid
		}
		return sheet.Rule{Class: "series-" + strconv.Itoa(i), Style: sheet.Style{Stroke: c, Dash: dash}}
	}
	return sheet.Stylesheet{
		{Class: "axis", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W25}},
		{Class: "grid", Style: sheet.Style{Stroke: sheet.Mist, Width: sheet.W13}},
		{Class: "tick-text", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Regular, Size: sheet.SizeSmall}},
		{Class: "axis-text", Style: sheet.Style{Fill: sheet.Slate, Face: sheet.Regular, Size: sheet.SizeSmall}},
		{Class: "series", Style: sheet.Style{Width: sheet.W50}},
		line(1, sheet.Deep),
		line(2, sheet.Doubt, 2.4, 1),
		line(3, sheet.Good, 0.8, 0.8),
		line(4, sheet.Bad, 3, 0.8, 0.8, 0.8),
		line(5, sheet.Slate, 5, 1.2),
		line(6, sheet.Ink, 1.6, 0.6, 0.5, 0.6, 0.5, 0.6),
		{Class: "sign", Style: sheet.Style{Fill: sheet.White, Width: sheet.W35, Dash: sheet.Solid}},
		{Class: "mark", Style: sheet.Style{Stroke: sheet.Slate, Width: sheet.W25, Dash: []float64{0.5, 0.7}}},
		{Class: "mark-strong", Style: sheet.Style{Stroke: sheet.Deep, Width: sheet.W35}},
		{Class: "mark-stem", Style: sheet.Style{Stroke: sheet.Slate, Width: sheet.W18}},
		{Class: "mark-text", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Italic, Size: sizeTiny}},
		{Class: "key-dark", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Regular, Size: sizeTiny}},
		{Class: "key-light", Style: sheet.Style{Fill: sheet.White, Face: sheet.Regular, Size: sizeTiny}},
		{Class: "key-rim", Style: sheet.Style{Stroke: sheet.Slate, Width: sheet.W13}},
	}
}

// mostSigns is the most points of a line that get a sign each.
const mostSigns = 24

func (f *field) series() {
	for i, s := range f.Series {
		g, e := f.d.Group("series", seriesClass(i))
		e.With("series", s.Name).Titled(s.Name)
		g.Clip = &sheet.Rect{X: f.box.X - 1, Y: f.box.Y - 1, W: f.box.W + 2, H: f.box.H + 2}
		for _, run := range f.runs(s) {
			g.Add("", sheet.Lines(run...))
		}
		if len(f.Series) == 1 || len(s.Points) > mostSigns {
			continue
		}
		for _, p := range s.Points {
			if finite(p) {
				drawSign(g, f.at(p), i)
			}
		}
	}
}

func finite(p XY) bool {
	return !math.IsNaN(p.X+p.Y) && !math.IsInf(p.X, 0) && !math.IsInf(p.Y, 0)
}

// runs returns the unbroken lines of a series on the sheet.
func (f *field) runs(s Series) [][]sheet.Point {
	var out [][]sheet.Point
	var cur []sheet.Point
	for _, p := range s.Points {
		if !finite(p) {
			if len(cur) > 1 {
				out = append(out, cur)
			}
			cur = nil
			continue
		}
		at := f.at(p)
		if n := len(cur); n > 0 && s.Steps {
			cur = append(cur, sheet.Pt(at.X, cur[n-1].Y))
		}
		cur = append(cur, at)
	}
	if len(cur) > 1 {
		out = append(out, cur)
	}
	return out
}

// drawSign adds the sign of the i-th series: disc, square, diamond, triangle,
// and the same again.
func drawSign(g *sheet.Group, at sheet.Point, i int) {
	const r = 0.85
	switch p := about(at, r); i % 4 {
	case 0:
		g.Add("sign", sheet.Circle{C: at, R: r})
	case 1:
		g.Add("sign", square(p, 0.9))
	case 2:
		g.Add("sign", diamond(p, 1.2))
	default:
		g.Add("sign", sheet.Polygon(p(0, -1.1), p(1.05, 0.8), p(-1.05, 0.8)))
	}
}

// legend sets the series' names with their lines and returns the height in millimetres.
func (f *field) legend(g *sheet.Group, at sheet.Point, width float64) float64 {
	entries := make([]entry, len(f.Series))
	for i, s := range f.Series {
		entries[i] = entry{s.Name, lineSample, func(g *sheet.Group, at sheet.Point) {
			h := &sheet.Group{}
			h.Add("", sheet.Line{A: at, B: sheet.Pt(at.X+lineSample, at.Y)})
			drawSign(h, sheet.Pt(at.X+lineSample/2, at.Y), i)
			g.Add(seriesClass(i), h)
		}}
	}
	return drawLegend(g, at, width, entries)
}
