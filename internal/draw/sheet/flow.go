package sheet

import (
	"strconv"

	"example.org/rinkpane/internal/tell/table"
)

// Flow sets headings, sentences, tables and drawings below one another and
// starts a new sheet where one is full. Make one with NewFlow.
type Flow struct {
	start  func() (*Drawing, Rect)
	sheets []*Drawing
	area   Rect
	group  *Group
	y      float64
	// Measure is how long a line of sentences is at most, in millimetres; 0: as the area is wide.
	Measure float64
}

// Heights of a flow's parts in millimetres.
const (
	flowHead    = 6.0 // a heading with the gap below it
	flowLine    = 4.0 // a line of sentences
	flowGap     = 4.0 // between parts
	flowKeep    = 14.0
	numberInset = 5.0
)

// NewFlow starts a flow; start makes the next sheet and returns the area to
// be filled on it, in millimetres. It is called once at once.
func NewFlow(start func() (*Drawing, Rect)) *Flow {
	f := &Flow{start: start}
	f.Fresh()
	return f
}

// FlowOn starts a flow in an area of a sheet begun, in millimetres; next makes
// the sheets on which it goes on.
func FlowOn(d *Drawing, area Rect, next func() (*Drawing, Rect)) *Flow {
	f := &Flow{start: next}
	f.on(d, area)
	return f
}

// Sheets returns the sheets so far, in order.
func (f *Flow) Sheets() []*Drawing { return f.sheets }

// Fresh starts a new sheet.
func (f *Flow) Fresh() { f.on(f.start()) }

func (f *Flow) on(d *Drawing, area Rect) {
	f.sheets = append(f.sheets, d)
	f.area, f.y = area, area.Y
	f.group, _ = d.Group(LayerText, "")
}

// Room returns the area that is left on the sheet, in millimetres.
func (f *Flow) Room() Rect {
	return Rect{X: f.area.X, Y: f.y, W: f.area.W, H: f.area.Y + f.area.H - f.y}
}

// Group returns the group in which the flow's text stands on this sheet.
func (f *Flow) Group() *Group { return f.group }

// Need starts a new sheet when less than so many millimetres are left and
// something stands on this one.
func (f *Flow) Need(h float64) {
	if f.Room().H < h && f.y > f.area.Y {
		f.Fresh()
	}
}

// High returns the height of the area in which the flow stands, in millimetres.
func (f *Flow) High() float64 { return f.area.H }

// Skip leaves so many millimetres free.
func (f *Flow) Skip(h float64) { f.y += h }

// Heading sets a heading; it does not stand alone at a sheet's foot.
func (f *Flow) Heading(s string) {
	f.Need(flowHead + flowKeep)
	f.group.Add("head", Text{At: Pt(f.area.X, f.y), S: Bold.Shorten(s, SizeHead, f.area.W), VAlign: Top}).PartOf(&Part{Role: RoleHeading})
	f.y += flowHead
}

// Notes sets sentences below one another, each wrapped.
func (f *Flow) Notes(lines ...string) {
	for _, s := range lines {
		f.paragraph(s, 0, &Part{Role: RoleParagraph})
	}
	f.y += flowGap / 2
}

// Numbered sets numbered sentences below one another.
func (f *Flow) Numbered(lines ...string) {
	list := &Part{Role: RoleList}
	for i, s := range lines {
		item := list.Within(RoleItem)
		f.Need(float64(len(Regular.Wrap(s, SizeText, f.line(numberInset)))) * flowLine)
		f.group.Add("note", Text{At: Pt(f.area.X, f.y), S: strconv.Itoa(i + 1), VAlign: Top}).PartOf(item.Within(RoleLabel))
		f.paragraph(s, numberInset, item.Within(RoleBody))
	}
	f.y += flowGap / 2
}

func (f *Flow) paragraph(s string, inset float64, part *Part) {
	f.Need(float64(len(Regular.Wrap(s, SizeText, f.line(inset)))) * flowLine)
	f.y += f.Paragraph("note", Pt(f.area.X+inset, f.y), s, SizeText, f.line(inset), flowLine, part)
}

// line is how long a line of sentences may be after an inset, in millimetres.
func (f *Flow) line(inset float64) float64 {
	if f.Measure > 0 {
		return min(f.Measure, f.area.W) - inset
	}
	return f.area.W - inset
}

// Paragraph is [Group.Paragraph] in the flow's group, as a part of the document: a height in millimetres.
func (f *Flow) Paragraph(class string, at Point, s string, size, width, leading float64, part *Part) float64 {
	from := len(f.group.Items)
	high := f.group.Paragraph(class, Regular, at, s, size, width, leading)
	for _, line := range f.group.Items[from:] {
		line.Part = part
	}
	return high
}

// Table sets a table in a type size in millimetres, its head again on every
// sheet that it runs over.
func (f *Flow) Table(t table.Table, size float64) {
	l := FitTable(t, size, f.area.W)
	for from := 0; from < l.Rows(); {
		rows := l.Fits(from, f.Room().H)
		if rows == 0 {
			if f.y > f.area.Y {
				f.Fresh()
				continue
			}
			rows = 1 // a row higher than a sheet: it stands over
		}
		f.y += l.Draw(f.group, Pt(f.area.X, f.y), from, rows)
		from += rows
	}
	f.y += flowGap
}

// leastShrink is how far, as a share of its size, a drawing is made smaller to
// stand on the sheet begun rather than on a new one.
const leastShrink = 0.7

// Drawing places a whole drawing at its own size, or smaller when it is wider
// or higher than an empty sheet's area, or when a little smaller it still
// stands on this one.
func (f *Flow) Drawing(d *Drawing) { f.Drawings(0, d) }

// Drawings places drawings side by side with a gap between, in millimetres, as
// [Flow.Drawing] places one.
func (f *Flow) Drawings(gap float64, row ...*Drawing) {
	wide, high := gap*float64(len(row)-1), 0.0
	for _, d := range row {
		wide, high = wide+d.W, max(high, d.H)
	}
	scale := min(1, f.area.W/wide, f.area.H/high)
	if fit := f.Room().H / high; fit < scale && fit >= leastShrink*scale {
		scale = fit
	}
	f.Need(high*scale - 1e-9)
	x := f.area.X
	for _, d := range row {
		f.sheets[len(f.sheets)-1].placeIn(f.group, d, Pt(x, f.y), scale).PartOf(&Part{Role: RoleFigure, Alt: d.Says()})
		x += scale * (d.W + gap)
	}
	f.y += high*scale + flowGap
}
