package cut

import (
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/tell/words"
)

// styles are the classes of shop drawings beside the sheet's own.
func styles() sheet.Stylesheet {
	return sheet.Base().Merge(sheet.Stylesheet{
		{Class: "pane", Style: sheet.Style{Stroke: sheet.Ink, Fill: sheet.Ice, Width: sheet.W50}},
		{Class: "cut", Style: sheet.Style{Stroke: sheet.Ink, Fill: sheet.White, Width: sheet.W50}},
		{Class: "exists", Style: sheet.Style{Stroke: sheet.Slate, Fill: sheet.White, Width: sheet.W35}},
		{Class: "beside", Style: sheet.Style{Stroke: sheet.Deep, Fill: sheet.White, Width: sheet.W25, Dash: []float64{2, 1}}},
		{Class: "cut-line", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W35}},
		{Class: "pilot", Style: sheet.Style{Stroke: sheet.Deep, Width: sheet.W25, Dash: []float64{2, 1}}},
		{Class: "boards", Style: sheet.Style{Stroke: sheet.Ink, Fill: sheet.White, Width: sheet.W35}},
		{Class: "bar", Style: sheet.Style{Fill: sheet.Ink}},
		{Class: "across", Style: sheet.Style{Fill: sheet.Slate.Alpha(0.12), Face: sheet.Bold}},
		{Class: "across-bad", Style: sheet.Style{Fill: sheet.Bad.Alpha(0.16)}},
		{Class: "status", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Bold, Size: sheet.SizeText}},
		{Class: "status-bad", Style: sheet.Style{Fill: sheet.Bad}},
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

// newPage frames a sheet of a paper lying on its side; what a job says of
// itself across its sheets stands on it, nil for none.
func (p ShopOrder) newPage(paper sheet.Paper, name, title string, j *Job, fields ...sheet.Field) page {
	d := paper.Landscape().Sheet(name, styles())
	return p.frame(d, title, j, fields...)
}

// layers are the layers of our drawings, from the lowest up.
func layers() []string {
	return []string{statusLayer, sheet.LayerFrame, sheet.LayerHatch, sheet.LayerDatum, sheet.LayerCut, sheet.LayerDrill, sheet.LayerEngrave, sheet.LayerDim, sheet.LayerText}
}

// frame gives a drawing its frame and title block.
func (p ShopOrder) frame(d *sheet.Drawing, title string, j *Job, fields ...sheet.Field) page {
	d.Layers = layers()
	d.Title, d.Desc = title, p.Stamp()
	area := d.Frame(sheet.TitleBlock{
		Title: title, Subject: p.subject(), Caution: strings.Join(append([]string{words.ApprovalSentence(p.Approval)}, glass.Cautions()...), " "),
		Fields: append(fields, sheet.Field{Name: "Plan revision", Value: p.Mark}), Issue: p.fields(j),
	})
	g := page{d: d, area: area.Inset(pagePad), sys: p.Arena.Units}
	word, why, bad := "", []say.Sentence(nil), false
	if j != nil {
		word, why = j.status()
		bad = len(j.NotPassed) > 0
	}
	g.across(p.unapproved(word), why, bad)
	return g
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

// status returns what a job's sheets say across themselves, in a word, and
// why, a sentence each; "" for a hole that is to be made as drawn.
func (j Job) status() (word string, why []say.Sentence) {
	if len(j.NotPassed) > 0 {
		word = "NOT PASSED"
		why = append(why, say.Make("NOT PASSED: %s.", list(j.NotPassed)))
	}
	if len(j.NotProved) > 0 {
		if word == "" {
			word = "NOT PROVED"
		}
		why = append(why, say.Make("NOT PROVED: %s.", list(j.NotProved)))
	}
	if j.Exists() {
		if word == "" {
			word = "EXISTS"
		}
		why = append(why, say.Make("THE HOLE EXISTS: nothing is cut. This sheet is to check it by."))
	}
	return word, why
}

// list is sentences said one after another.
type list []say.Sentence

// Say joins the sentences.
func (l list) Say(sys unit.System) string { return joined(l, sys) }

// across writes a word over the whole sheet, pale beneath the drawing, and the reasons
// along its top; what is bad in the colour for it.
func (g *page) across(word string, why []say.Sentence, bad bool) {
	if word == "" {
		return
	}
	over, t := g.group(statusLayer), g.group(sheet.LayerText)
	middle := sheet.Pt(g.area.X+g.area.W/2, g.area.Y+g.area.H/2)
	slope := math.Atan2(g.area.H, g.area.W)
	size := sheet.Bold.FitSize(word, g.area.H/3, sheet.SizeTitle, 0.8*math.Hypot(g.area.W, g.area.H))
	class := "across"
	if bad {
		class = "across across-bad"
	}
	over.Add(class, sheet.Text{At: middle, S: word, Size: size, Anchor: sheet.Middle, VAlign: sheet.Centre, Rotate: slope})
	for _, s := range why {
		class := "status"
		if bad {
			class = "status status-bad"
		}
		h := t.Paragraph(class, sheet.Bold, sheet.Pt(g.area.X, g.area.Y), s.In(g.sys), sheet.SizeText, g.area.W, lineHeight)
		g.area.Y, g.area.H = g.area.Y+h, g.area.H-h
	}
	g.area.Y, g.area.H = g.area.Y+2, g.area.H-2
}

// column starts a column of text in a box on a sheet; what does not fit goes
// on to sheets of its own.
func (p ShopOrder) column(g page, box sheet.Rect, paper sheet.Paper, j *Job) *sheet.Flow {
	return sheet.FlowOn(g.d, box, func() (*sheet.Drawing, sheet.Rect) {
		next := p.newPage(paper, g.d.Name+"-more", g.d.Title+", continued", j)
		return next.d, next.area
	})
}

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
// above the line, in the other below.
func (g page) dims(l unit.Length) (text, under string) {
	return drawnAs(l, g.sys), drawnAs(l, other(g.sys))
}

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
	return l.FormatFine(g.sys), l.FormatFine(other(g.sys))
}

// place returns a place in the plan's units and the other's in brackets.
func (g page) place(l unit.Length) string {
	a, b := g.places(l)
	return a + " (" + b + ")"
}

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
		return sheet.Field{Name: "Lengths", Value: "inches govern, mm below"}
	}
	return sheet.Field{Name: "Lengths", Value: "mm govern, inches below"}
}

// scales are those of ISO 5455:1979 (from memory) that our sheets use, largest
// first, sheet over part.
func scales() []float64 {
	return []float64{5, 2, 1, 1.0 / 2, 1.0 / 5, 1.0 / 10, 1.0 / 20, 1.0 / 50, 1.0 / 100}
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

// heading sets a heading with its top left corner at a point.
func heading(g *sheet.Group, x, y float64, s string) {
	g.Add("head", sheet.Text{At: sheet.Pt(x, y), S: s, VAlign: sheet.Top})
}

const (
	headHeight = 6.0 // mm, a heading with the gap below it
	lineHeight = 4.0 // mm, a line of notes
	blockGap   = 4.0 // mm, between blocks of notes
)

// whereabouts says where a hole is on the boards, in words.
func (p ShopOrder) whereabouts(j Job) string {
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
