package chart

import "example.org/rinkpane/internal/draw/sheet"

// Intervals is a row for each of several values with the interval that it lies in.
// Numbers are in the axis' own unit, which its name states.
type Intervals struct {
	Name  string // for the drawing's name
	Title string // for those who cannot see it
	Desc  string // the same in a sentence
	Axis  string // with its unit
	Rows  []Interval
}

// Interval is one row: a value between two limits, at least zero, in the axis' own unit.
type Interval struct {
	Name, Note    string
	At, Low, High float64
}

// Room of the rows in millimetres.
const (
	rowNames = 14.0 // at least
	nameGap  = 2.0
	rowNotes = 24.0
	barEnd   = 1.4 // half of the stroke at a limit
)

// mostReach is how many times the largest value the axis reaches: a bar whose limit lies
// beyond it ends open.
const mostReach = 3

// Draw draws the rows at a width and height in millimetres (40 at least).
func (c Intervals) Draw(width, height float64) *sheet.Drawing {
	f := &field{Plot: Plot{X: Axis{Name: c.Axis}}, d: sheet.New(c.Name, max(width, leastPlot), max(height, leastPlot), Styles())}
	f.d.Title, f.d.Desc = c.Title, c.Desc
	left := rowNames
	for _, r := range c.Rows {
		left = max(left, sheet.Regular.Width(r.Name, sheet.SizeSmall)+nameGap)
	}
	f.box = sheet.Rect{X: left, Y: 3, W: f.d.W - left - rowNotes, H: f.d.H - 3 - plotFoot}
	f.xt = f.X.ticks([2]float64{0, c.reach()}, int(f.box.W/tickSpace))
	f.axisX()
	for i, r := range c.Rows {
		c.row(f, r, f.box.Y+f.box.H*(float64(i)+0.5)/float64(len(c.Rows)))
	}
	return f.d
}

// reach returns the end of the axis.
func (c Intervals) reach() float64 {
	most, high := 0.0, 0.0
	for _, r := range c.Rows {
		most, high = max(most, r.At), max(high, r.High)
	}
	if most > 0 {
		high = min(high, mostReach*most)
	}
	if high == 0 {
		return 1
	}
	return high
}

func (c Intervals) row(f *field, r Interval, y float64) {
	g, e := f.d.Group("series", seriesClass(0))
	e.Titled(r.Name)
	end := f.xt[len(f.xt)-1]
	low, high := f.x(r.Low), f.x(min(r.High, end))
	g.Add("", sheet.Line{A: sheet.Pt(low, y), B: sheet.Pt(high, y)})
	g.Add("", sheet.Line{A: sheet.Pt(low, y-barEnd), B: sheet.Pt(low, y+barEnd)})
	if r.High <= end {
		g.Add("", sheet.Line{A: sheet.Pt(high, y-barEnd), B: sheet.Pt(high, y+barEnd)})
	} else {
		g.Add("", sheet.Lines(sheet.Pt(high-barEnd, y-barEnd), sheet.Pt(high, y), sheet.Pt(high-barEnd, y+barEnd)))
	}
	drawSign(g, sheet.Pt(f.x(r.At), y), 0)
	f.d.Add("axes", "axis-text", sheet.Text{At: sheet.Pt(f.box.X-nameGap, y), S: r.Name, Anchor: sheet.End, VAlign: sheet.Centre})
	f.d.Add("axes", "tick-text", sheet.Text{At: sheet.Pt(f.box.X+f.box.W+2, y), S: r.Note, VAlign: sheet.Centre})
}
