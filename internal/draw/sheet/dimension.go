package sheet

import (
	"math"
	"strconv"

	"example.org/rinkpane/internal/measure/unit"
)

// Dimension is a measured distance between two points with extension lines, a
// dimension line with arrows and the measure in both unit systems.
type Dimension struct {
	A, B Point
	// Off is how far the dimension line stands off the line from A to B, in
	// millimetres: positive to the left as one goes from A to B.
	Off   float64
	Text  string // above the line
	Under string // below the line, such as the measure in inches
}

// Gaps of a dimension in millimetres: between part and extension line, past the
// dimension line, and between line and text.
const (
	extensionGap  = 1.0
	extensionPast = 1.5
	dimTextGap    = 0.9
)

// Measure returns a length as drawings print it: millimetres to a tenth, and
// inches in thirty-seconds where one is met to 0.05 mm, in thousandths else.
func Measure(l unit.Length) (metric, imperial string) {
	metric = l.FormatFine(unit.Metric)
	const part = unit.Inch / 32
	parts := math.Round(float64(l / part))
	if math.Abs(float64(l-unit.Length(parts)*part)) <= fractionSlack {
		return metric, l.FormatFine(unit.Imperial)
	}
	return metric, strconv.FormatFloat(l.Inches(), 'f', 3, 64) + " in"
}

// fractionSlack is how far, in metres, a length may lie from a fraction of an
// inch to be printed as one: a tenth of what a shop holds in plastic.
const fractionSlack = 0.00005

// Dim adds a dimension. Its lines have the classes dim and dim-arrow, its text dim-text.
func (g *Group) Dim(d Dimension) {
	a, b, n := d.line()
	g.extension(d.A, a)
	g.extension(d.B, b)
	g.Add("dim", Line{a, b})
	dir := direction(a, b)
	length := a.Dist(b)
	width := max(Regular.Width(d.Text, SizeDim), Regular.Width(d.Under, SizeDim))
	if length < 2*arrowLength+1 {
		// Too short for arrows within: they point from outside.
		g.arrow(a, dir)
		g.arrow(b, dir+math.Pi)
		g.Add("dim", Line{a.Polar(2*arrowLength, dir+math.Pi), a})
		g.Add("dim", Line{b, b.Polar(2*arrowLength, dir)})
	} else {
		g.arrow(a, dir+math.Pi)
		g.arrow(b, dir)
	}
	mid := a.Add(b).Scale(0.5)
	if width > length-2*arrowLength-1 {
		// Too short for the text within: it stands past the far end.
		mid = b.Polar(2*arrowLength+width/2+1, dir)
		g.Add("dim", Line{b, b.Polar(2*arrowLength+width+1, dir)})
	}
	g.dimText(mid, dir, n, d)
}

// dimText sets the measure above the dimension line and its twin below, turned
// so that it reads from the foot or from the right of the sheet.
func (g *Group) dimText(mid Point, dir, n float64, d Dimension) {
	turn := math.Remainder(dir, 2*math.Pi)
	if turn > math.Pi/2+1e-9 || turn <= -math.Pi/2+1e-9 {
		turn = math.Remainder(turn+math.Pi, 2*math.Pi)
	}
	up := turn + math.Pi/2
	if d.Text != "" {
		g.Add("dim-text", Text{At: mid.Polar(dimTextGap, up), S: d.Text, Anchor: Middle, Rotate: turn})
	}
	if d.Under != "" {
		g.Add("dim-text", Text{At: mid.Polar(dimTextGap, up+math.Pi), S: d.Under, Anchor: Middle, VAlign: Top, Rotate: turn})
	}
}

// line returns the ends of the dimension line and the direction of the offset.
func (d Dimension) line() (a, b Point, normal float64) {
	normal = direction(d.A, d.B) + math.Pi/2
	return d.A.Polar(d.Off, normal), d.B.Polar(d.Off, normal), normal
}

func (g *Group) extension(from, to Point) {
	dir := direction(from, to)
	if from.Dist(to) > extensionGap {
		g.Add("dim", Line{from.Polar(extensionGap, dir), to.Polar(extensionPast, dir)})
	}
}

// Radius adds a radius dimension: an arrow on the arc of a circle of radius r
// about c, in a direction, and its text beyond, out millimetres past the arc.
func (g *Group) Radius(c Point, r, angle, out float64, text string) {
	tip := c.Polar(r, angle)
	end := c.Polar(r+out, angle)
	g.arrow(tip, angle+math.Pi)
	g.Note(tip, end, false, text)
}
