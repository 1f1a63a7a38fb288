package sheet

// wrapFields shares captioned entries out over as few rows as let each be as wide as
// it needs, the rows about equally full; at least one stands in a row.
func wrapFields(fields []Field, width float64) (rows [][]Field) {
	wants := wanted(fields)
	ends := fillRows(wants, width)
	for w := width; w >= 1; w *= 0.98 {
		narrower := fillRows(wants, w)
		if len(narrower) != len(ends) {
			break
		}
		ends = narrower
	}
	from := 0
	for _, end := range ends {
		rows, from = append(rows, fields[from:end]), end
	}
	return rows
}

// fillRows fills each row with what stands in a width, one after another, and returns
// where each ends.
func fillRows(wants []float64, width float64) (ends []int) {
	left := 0.0
	for i, w := range wants {
		if len(ends) == 0 || w > left {
			ends, left = append(ends, 0), width
		}
		ends[len(ends)-1], left = i+1, left-w
	}
	return ends
}

// wanted is the room in millimetres that each entry needs.
func wanted(fields []Field) []float64 {
	out := make([]float64, len(fields))
	for i, f := range fields {
		out[i] = f.width()
	}
	return out
}

// width is the room in millimetres that an entry needs.
func (f Field) width() float64 {
	return max(Regular.Width(f.Value, SizeText), Regular.Width(f.Name, SizeSmall)) + 2*blockPad
}

// Sizes of the symbol of projection in millimetres.
const (
	coneSmall = 1.3 // half the cone's narrow end
	coneLarge = 2.5 // half its wide end
	coneLong  = 5.2
	coneGap   = 2.4
	coneOver  = 0.8 // of its centre lines past it
	conePad   = 2.4 // white between it and the border to either side
)

// symbolWidth is the width of the symbol of projection with the white round it.
const symbolWidth = 2*coneLarge + coneGap + coneLong + 2*conePad

// thirdAngle draws the symbol of third-angle projection (ISO 5456-2, from memory): the
// view from the left of a cone cut short, narrow end to the left, stands to its left.
func thirdAngle(g *Group, at Point) {
	c := Pt(at.X+coneLarge, at.Y)
	g.Add("edge", Circle{C: c, R: coneSmall})
	g.Add("edge", Circle{C: c, R: coneLarge})
	x := c.X + coneLarge + coneGap
	g.Add("edge", Polygon(Pt(x, at.Y-coneSmall), Pt(x+coneLong, at.Y-coneLarge), Pt(x+coneLong, at.Y+coneLarge), Pt(x, at.Y+coneSmall)))
	g.Add("centre-line", Line{Pt(at.X-coneOver, at.Y), Pt(x+coneLong+coneOver, at.Y)})
	g.Add("centre-line", Line{Pt(c.X, at.Y-coneLarge-coneOver), Pt(c.X, at.Y+coneLarge+coneOver)})
}
