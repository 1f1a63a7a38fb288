package chart

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
)

// Plot is one or more series over two axes. Numbers are in the axes' own units,
// which their names state.
type Plot struct {
	Name   string // for the drawing's name: "bound"
	Title  string
	Desc   string // a sentence for those who cannot see the plot
	X, Y   Axis
	Series []Series // ten at most differ in their look
	Marks  []RefLine
}

// Axis is an axis of a plot. Low and High are in the axis' own unit; when both
// are zero the axis covers the series.
type Axis struct {
	Name      string  // with its unit: "pan, degrees"
	Low, High float64 // in the axis' own unit
	FromZero  bool    // the axis starts at zero even when no value is near it
	Step      float64 // between ticks, in the axis' own unit; 0 chooses
}

// Series is a row of points in rising x, joined by lines; a value that is not
// finite breaks the line.
type Series struct {
	Name   string
	Steps  bool // level to the next point, then up or down: a bound over time
	Points []XY
}

// XY is a point of a series, in the axes' own units.
type XY struct{ X, Y float64 }

// RefLine is an upright line right across the plot at a value of x, in the axis' own
// unit, with words above it.
type RefLine struct {
	Words  string
	At     float64
	Strong bool // in the colour of emphasis
}

// Room round a plot's field in millimetres.
const (
	plotTop    = 8.0
	plotFoot   = 11.5
	plotRight  = 5.0
	markRow    = 5.0 // above the field, for the words of marks at a value of x
	tickLength = 1.2
	tickGap    = 0.8
	leastPlot  = 40 // mm, width and height
	tickSpace  = 14 // mm between ticks of x, about
	tickRise   = 9  // mm between ticks of y, about
	mostTicks  = 100
)

// Draw draws the plot at a width and height in millimetres (40 at least).
func (p Plot) Draw(width, height float64) *sheet.Drawing {
	f := &field{Plot: p, d: sheet.New(p.Name, max(width, leastPlot), max(height, leastPlot), Styles())}
	f.d.Title, f.d.Desc = p.Title, p.Desc
	f.layout()
	f.axes()
	f.series()
	f.marks()
	return f.d
}

// field is a plot with its axes laid on the sheet.
type field struct {
	Plot
	d      *sheet.Drawing
	box    sheet.Rect
	xt, yt []float64
}

// head returns the height of the plot's title, millimetres.
func (f *field) head() float64 {
	if f.Title == "" {
		return 3
	}
	return plotTop
}

func (f *field) layout() {
	top := f.head()
	if len(f.Series) > 1 {
		g, _ := f.d.Group("legend", "")
		top += f.legend(g, sheet.Pt(3, top-1.5), f.d.W-6)
	}
	if len(f.Marks) > 0 {
		top += markRow
	}
	f.yt = f.Y.ticks(f.span(func(p XY) float64 { return p.Y }, nil), int((f.d.H-top-plotFoot)/tickRise))
	left := 6.0
	for _, v := range f.yt {
		left = max(left, 6+sheet.Regular.Width(tickName(v, f.yt[1]-f.yt[0]), sheet.SizeSmall)+tickLength+tickGap)
	}
	f.box = sheet.Rect{X: left, Y: top, W: f.d.W - left - plotRight, H: f.d.H - top - plotFoot}
	f.xt = f.X.ticks(f.span(func(p XY) float64 { return p.X }, f.Marks), int(f.box.W/tickSpace))
}

// span returns the least and largest finite value of the series and of marks.
func (f *field) span(of func(XY) float64, marks []RefLine) [2]float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	take := func(v float64) {
		if !math.IsInf(v, 0) && !math.IsNaN(v) {
			lo, hi = min(lo, v), max(hi, v)
		}
	}
	for _, s := range f.Series {
		for _, p := range s.Points {
			take(of(p))
		}
	}
	for _, m := range marks {
		take(m.At)
	}
	if lo > hi {
		return [2]float64{0, 1}
	}
	return [2]float64{lo, hi}
}

// ticks returns the axis' ticks for a span of values; given limits are kept to,
// with the ticks that lie within.
func (a Axis) ticks(span [2]float64, n int) []float64 {
	lo, hi := span[0], span[1]
	if a.FromZero {
		lo, hi = min(lo, 0), max(hi, 0)
	}
	if a.Low != 0 || a.High != 0 {
		lo, hi = a.Low, a.High
	}
	if a.Step > 0 && (hi-lo)/a.Step < mostTicks {
		if t := stepTicks(lo, hi, a.Step); len(t) > 1 {
			return t
		}
	}
	return ticks(lo, hi, min(max(n, 2), 12))
}

// at returns where a point stands on the sheet.
func (f *field) at(p XY) sheet.Point { return sheet.Pt(f.x(p.X), f.y(p.Y)) }

func (f *field) x(v float64) float64 {
	lo, hi := f.xt[0], f.xt[len(f.xt)-1]
	return f.box.X + f.box.W*(v-lo)/(hi-lo)
}

func (f *field) y(v float64) float64 {
	lo, hi := f.yt[0], f.yt[len(f.yt)-1]
	return f.box.Y + f.box.H*(hi-v)/(hi-lo)
}

func (f *field) axes() {
	if f.Title != "" {
		f.d.Add("legend", "head", sheet.Text{At: sheet.Pt(3, 2.2), S: sheet.Bold.Shorten(f.Title, sheet.SizeHead, f.d.W-6), VAlign: sheet.Top})
	}
	g, b := f.axisX(), f.box
	for _, v := range f.yt {
		y := f.y(v)
		g.Add("grid", sheet.Line{A: sheet.Pt(b.X, y), B: sheet.Pt(b.X+b.W, y)})
		g.Add("axis", sheet.Line{A: sheet.Pt(b.X-tickLength, y), B: sheet.Pt(b.X, y)})
		g.Add("tick-text", sheet.Text{At: sheet.Pt(b.X-tickLength-tickGap, y), S: tickName(v, f.yt[1]-f.yt[0]), Anchor: sheet.End, VAlign: sheet.Centre})
	}
	g.Add("axis", sheet.Lines(sheet.Pt(b.X, b.Y), sheet.Pt(b.X, b.Y+b.H), sheet.Pt(b.X+b.W, b.Y+b.H)))
	g.Add("axis-text", sheet.Text{At: sheet.Pt(3.4, b.Y+b.H/2), S: f.Y.Name, Anchor: sheet.Middle, VAlign: sheet.Centre, Rotate: quarterTurn})
}

// axisX draws the ticks of x, with a line across the field at each, and its name.
func (f *field) axisX() *sheet.Group {
	g, _ := f.d.Group("axes", "")
	b := f.box
	for _, v := range f.xt {
		x := f.x(v)
		g.Add("grid", sheet.Line{A: sheet.Pt(x, b.Y), B: sheet.Pt(x, b.Y+b.H)})
		g.Add("axis", sheet.Line{A: sheet.Pt(x, b.Y+b.H), B: sheet.Pt(x, b.Y+b.H+tickLength)})
		g.Add("tick-text", sheet.Text{At: sheet.Pt(x, b.Y+b.H+tickLength+tickGap), S: tickName(v, f.xt[1]-f.xt[0]), Anchor: sheet.Middle, VAlign: sheet.Top})
	}
	g.Add("axis-text", sheet.Text{At: sheet.Pt(b.X+b.W/2, f.d.H-2.2), S: f.X.Name, Anchor: sheet.Middle})
	return g
}
