package cut

import (
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// styles are the classes of shop drawings beside the sheet's own.
func styles() sheet.Stylesheet {
	return sheet.Base().Merge(sheet.Stylesheet{
		{Class: "pane", Style: sheet.Style{Stroke: sheet.Ink, Fill: sheet.Ice, Width: sheet.W50}},
		{Class: "cut", Style: sheet.Style{Stroke: sheet.Ink, Fill: sheet.White, Width: sheet.W50}},
		{Class: "beside", Style: sheet.Style{Stroke: sheet.Deep, Fill: sheet.White, Width: sheet.W25, Dash: []float64{2, 1}}},
		{Class: "cut-line", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W35}},
		{Class: "pilot", Style: sheet.Style{Stroke: sheet.Deep, Width: sheet.W25, Dash: []float64{2, 1}}},
		{Class: "boards", Style: sheet.Style{Stroke: sheet.Ink, Fill: sheet.White, Width: sheet.W35}},
		{Class: "bar", Style: sheet.Style{Fill: sheet.Ink}},
		{Class: "plot", Style: sheet.Style{Stroke: sheet.Deep, Width: sheet.W50}},
		{Class: "plot-mark", Style: sheet.Style{Fill: sheet.Bad}},
		{Class: "plot-drop", Style: sheet.Style{Stroke: sheet.Bad, Width: sheet.W25, Dash: []float64{2, 1}}},
		{Class: "warn", Style: sheet.Style{Fill: sheet.Bad, Face: sheet.Bold, Size: sheet.SizeHead}},
	})
}

// page is one sheet being drawn: its drawing and the area left inside the frame.
type page struct {
	d    *sheet.Drawing
	area sheet.Rect
	sys  unit.System
}

// pagePad is the white between frame and drawing, mm.
const pagePad = 5.0

// newPage frames a sheet of a paper lying on its side.
func (p Plan) newPage(paper sheet.Paper, name, title string, fields ...sheet.Field) page {
	d := paper.Landscape().Sheet(name, styles())
	d.Layers = []string{sheet.LayerFrame, sheet.LayerHatch, sheet.LayerDatum, sheet.LayerCut, sheet.LayerEngrave, sheet.LayerDim, sheet.LayerText}
	d.Title = title
	d.Desc = p.Stamp()
	area := d.Frame(sheet.TitleBlock{
		Title: title, Subject: p.subject(), Caution: cautions(),
		Fields: append(fields, sheet.Field{Name: "Plan revision", Value: p.Mark}),
	})
	return page{d: d, area: area.Inset(pagePad), sys: p.Arena.Units}
}

func (p Plan) subject() string {
	if p.Arena.Place == "" {
		return p.Arena.Name
	}
	return p.Arena.Name + ", " + p.Arena.Place
}

func cautions() string { return strings.Join(glass.Cautions(), " ") }

// group starts a group on a layer.
func (g page) group(layer string) *sheet.Group {
	group, _ := g.d.Group(layer, "")
	return group
}

// dims returns a length for a dimension: in the plan's units above the line,
// in the other below.
func (g page) dims(l unit.Length) (text, under string) {
	metric, imperial := sheet.Measure(l)
	if g.sys == unit.Imperial {
		return imperial, metric
	}
	return metric, imperial
}

// places is dims for places and sizes of panes, which nobody holds to less
// than a sixteenth of an inch.
func (g page) places(l unit.Length) (text, under string) {
	metric, imperial := l.FormatFine(unit.Metric), l.FormatFine(unit.Imperial)
	if g.sys == unit.Imperial {
		return imperial, metric
	}
	return metric, imperial
}

// one returns a length in the plan's units and the other's in brackets.
func (g page) one(l unit.Length) string {
	a, b := g.dims(l)
	return a + " (" + b + ")"
}

// scales are those of ISO 5455 (from memory) with 1:2.5, 1:3, 1:4 and builders'
// 1:25, 1:30, 1:40 between, largest first, sheet over part.
func scales() []float64 {
	return []float64{5, 2, 1, 1.0 / 2, 1.0 / 2.5, 1.0 / 3, 1.0 / 4, 1.0 / 5, 1.0 / 10, 1.0 / 20, 1.0 / 25, 1.0 / 30, 1.0 / 40, 1.0 / 50, 1.0 / 100}
}

// tolerance prints a plus-minus to two digits: "±0.25 mm (±0.010 in)".
func tolerance(l unit.Length) string {
	return fmt.Sprintf("±%.2g mm (±%.3f in)", l.Millimetres(), l.Inches())
}

// scaleFor returns the largest scale not above most at which a part of so
// many metres fits a box in millimetres.
func scaleFor(w, h unit.Length, boxW, boxH, most float64) float64 {
	for _, s := range scales() {
		if s <= most && w.Millimetres()*s <= boxW && h.Millimetres()*s <= boxH {
			return s
		}
	}
	return math.Min(boxW/w.Millimetres(), boxH/h.Millimetres())
}

// scaleText prints a scale: "1:20", "2:1".
func scaleText(s float64) string {
	if s >= 1 {
		return fmt.Sprintf("%.3g:1", s)
	}
	return fmt.Sprintf("1:%.3g", 1/s)
}

// heading sets a heading with its top left corner at a point and returns the
// height used.
func heading(g *sheet.Group, x, y float64, s string) float64 {
	g.Add("head", sheet.Text{At: sheet.Pt(x, y), S: s, VAlign: sheet.Top})
	return headHeight
}

const (
	headHeight  = 6.0 // mm, a heading with the gap below it
	lineHeight  = 4.0 // mm, a line of notes
	blockGap    = 4.0 // mm, between blocks of notes
	numberInset = 5.0 // mm, the text of a numbered note
)

// numbered sets numbered sentences below one another and returns the height used.
func numbered(g *sheet.Group, x, y, width float64, lines []string) float64 {
	top := y
	for i, s := range lines {
		g.Add("note", sheet.Text{At: sheet.Pt(x, y), S: fmt.Sprintf("%d", i+1), VAlign: sheet.Top})
		y += g.Paragraph("note", sheet.Regular, sheet.Pt(x+numberInset, y), s, sheet.SizeText, width-numberInset, lineHeight)
	}
	return y - top
}

// notes sets sentences below one another and returns the height used.
func notes(g *sheet.Group, x, y, width float64, lines ...string) float64 {
	top := y
	for _, s := range lines {
		y += g.Paragraph("note", sheet.Regular, sheet.Pt(x, y), s, sheet.SizeText, width, lineHeight)
	}
	return y - top
}

// table draws a table and returns the height used.
func table(g *sheet.Group, x, y, width float64, t sheet.Table) float64 {
	l := t.Fit(width)
	return l.Draw(g, sheet.Pt(x, y), 0, l.Rows())
}

// whereabouts says where a hole is on the boards, in words.
func (p Plan) whereabouts(j Job) string {
	r := p.Arena.Rink
	s := r.Wrap(j.Hole.Station)
	text := "station " + along(s, p.Arena.Units)
	if c := r.Corner(s); c != rink.NoCorner {
		text = "corner " + c.String() + ", " + text
	}
	return "pane " + j.Pane.ID + ", " + text
}

// along prints a station: metres to the millimetre, or feet and inches.
func along(s unit.Length, sys unit.System) string {
	if sys == unit.Metric {
		return fmt.Sprintf("%.3f m", s.Metres())
	}
	return s.FormatFine(sys)
}
