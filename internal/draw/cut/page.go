package cut

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// styles are the classes of shop drawings beside the sheet's own.
func styles() sheet.Stylesheet {
	return sheet.Base().Merge(sheet.Stylesheet{
		{Class: "pane", Style: sheet.Style{Stroke: sheet.Ink, Fill: sheet.Ice, Width: sheet.W50}},
		{Class: "cut", Style: sheet.Style{Stroke: sheet.Ink, Fill: sheet.White, Width: sheet.W50}},
		{Class: "exists", Style: sheet.Style{Stroke: sheet.Ink, Fill: sheet.White, Width: sheet.W18}},
		{Class: "beside", Style: sheet.Style{Stroke: sheet.Deep, Fill: sheet.White, Width: sheet.W25, Dash: []float64{2, 1}}},
		{Class: "cut-line", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W35}},
		{Class: "pilot", Style: sheet.Style{Stroke: sheet.Deep, Width: sheet.W25, Dash: []float64{2, 1}}},
		{Class: "boards", Style: sheet.Style{Stroke: sheet.Ink, Fill: sheet.White, Width: sheet.W35}},
		{Class: "bar", Style: sheet.Style{Fill: sheet.Ink}},
		{Class: "across", Style: sheet.Style{Fill: sheet.Slate.Alpha(0.12), Face: sheet.Bold}},
		{Class: "across-bad", Style: sheet.Style{Fill: sheet.Bad.Alpha(0.16)}},
		{Class: "status", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Bold, Size: sheet.SizeText}},
		{Class: "status-bad", Style: sheet.Style{Fill: sheet.Bad}},
		{Class: "tag", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Bold, Size: sheet.SizeText}},
		{Class: "warn", Style: sheet.Style{Fill: sheet.Bad, Face: sheet.Bold, Size: sheet.SizeHead}},
	})
}

// layers are the layers of our drawings, from the lowest up.
func layers() []string {
	return []string{statusLayer, sheet.LayerFrame, sheet.LayerHatch, sheet.LayerDatum, sheet.LayerCut, sheet.LayerDrill, sheet.LayerEngrave, sheet.LayerDim, sheet.LayerText}
}

// unapproved adds to what a sheet says across itself that its revision is not approved.
func (p ShopOrder) unapproved(word string) string {
	switch {
	case p.Approval.Standing == custody.Approved:
		return word
	case word == "":
		return "NOT APPROVED"
	}
	return word + ", NOT APPROVED"
}

// statusLayer holds what a drawing says of its hole across the sheet, apart
// from what a machine follows.
const statusLayer = "STATUS"

func (p ShopOrder) subject() string {
	if p.Arena.Place == "" {
		return p.Arena.Name
	}
	return p.Arena.Name + ", " + p.Arena.Place
}

// group starts a group on a layer.
func (g page) group(layer string) *sheet.Group {
	group, _ := g.d.Group(layer, "")
	return group
}

// drawnAs prints a length as a drawing does: a fraction of an inch only where
// it is met, else thousandths.
func drawnAs(l unit.Length, sys unit.System) string {
	metric, imperial := sheet.Measure(l)
	if sys == unit.Imperial {
		return imperial
	}
	return metric
}

// dims returns a length for a dimension: in the plan's units, which govern,
// above the line, in the other below, in brackets.
func (g page) dims(l unit.Length) (text, under string) {
	return drawnAs(l, g.sys), bracketed(drawnAs(l, other(g.sys)))
}

// bracketed is a measure in the unit that does not govern, square as against the round
// brackets of a measure for reference (ISO 129-1, from memory).
func bracketed(s string) string { return "[" + s + "]" }

// rim is the upright box of a size about a centre, k millimetres on paper to one.
func rim(c sheet.Point, s unit.Size, k float64) sheet.Rect {
	w, h := s.W.Millimetres()*k, s.H.Millimetres()*k
	return sheet.Rect{X: c.X - w/2, Y: c.Y - h/2, W: w, H: h}
}

// dim adds a dimension between two points, off millimetres to the left, of a
// length printed by dims or places.
func dim(g *sheet.Group, a, b sheet.Point, off float64, l unit.Length, printed func(unit.Length) (text, under string)) {
	text, under := printed(l)
	g.Dim(sheet.Dimension{A: a, B: b, Off: off, Text: text, Under: under})
}

// places is dims for places and sizes of panes, which nobody holds to less
// than a sixty-fourth of an inch: always fractions.
func (g page) places(l unit.Length) (text, under string) {
	return l.FormatCut(g.sys), bracketed(l.FormatCut(other(g.sys)))
}

// place returns a place in the plan's units and the other's in brackets.
func (g page) place(l unit.Length) string {
	return l.FormatCut(g.sys) + " (" + l.FormatCut(other(g.sys)) + ")"
}

// first returns a length in the plan's units alone, where words beside it give both.
func (g page) first(l unit.Length) string { return drawnAs(l, g.sys) }

// one returns a length in the plan's units and the other's in brackets.
func (g page) one(l unit.Length) string { return both(l).Say(g.sys) }

func other(sys unit.System) unit.System {
	if sys == unit.Imperial {
		return unit.Metric
	}
	return unit.Imperial
}

// governing is the field that says which of two printed lengths governs.
func (g page) governing() sheet.Field {
	if g.sys == unit.Imperial {
		return sheet.Field{Name: "Lengths", Value: "inches govern, mm in [ ]"}
	}
	return sheet.Field{Name: "Lengths", Value: "mm govern, inches in [ ]"}
}

// tolerance prints a plus-minus, the governing unit first: "±0.25 mm (±0.009 in)".
// What is rounded is rounded down, so that neither unit allows more than the other.
func tolerance(l unit.Length, sys unit.System) string {
	down := func(v, step float64) float64 { return math.Floor(v/step+1e-6) * step }
	inches := fmt.Sprintf("±%.3f in", down(l.Inches(), 0.001))
	metric := fmt.Sprintf("±%.3g mm", down(l.Millimetres(), 0.01))
	if sys == unit.Imperial {
		return inches + " (" + metric + ")"
	}
	return metric + " (" + inches + ")"
}

// heading sets a heading with its top left corner at a point.
func heading(g *sheet.Group, x, y float64, s string) {
	g.Add("head", sheet.Text{At: sheet.Pt(x, y), S: s, VAlign: sheet.Top})
}

const (
	headHeight = 6.0 // mm, a heading with the gap below it
	lineHeight = 4.0 // mm, a line of notes
)

// whereabouts says where a hole is on the boards, in words.
func (p ShopOrder) whereabouts(pane string, station unit.Length) string {
	r := p.Arena.Rink
	s := r.Wrap(station)
	text := "station " + along(s, p.Arena.Units)
	if c := r.Corner(s); c != rink.NoCorner {
		text = "corner " + c.String() + ", " + text
	}
	return "pane " + pane + ", " + text
}

// along prints a station: metres to the millimetre, or feet and inches.
func along(s unit.Length, sys unit.System) string {
	if sys == unit.Metric {
		return fmt.Sprintf("%.3f m", s.Metres())
	}
	return s.FormatFine(sys)
}

// beside is the column to the right of a drawing so many millimetres wide.
func (g page) beside(wide float64) sheet.Rect {
	return sheet.Rect{X: g.area.X + wide + columnGap, Y: g.area.Y, W: g.area.W - wide - columnGap, H: g.area.H}
}
