package dxffile

import "math"

// Pen says on which layer and with which line type (from Dash) an entity lies.
type Pen struct{ Layer, Ltype string }

// Vertex is a corner of a polyline in millimetres, with the bulge (no unit) of the
// way to the next.
type Vertex struct{ X, Y, Bulge float64 }

func (f *File) entity(kind string, pen Pen, class string) *pairs {
	p := &f.entities
	p.str(0, kind).str(5, f.next()).str(330, modelRecord).str(100, "AcDbEntity").str(8, pen.Layer)
	if pen.Ltype != "" {
		p.str(6, pen.Ltype)
	}
	return p.str(100, class)
}

// Line adds a straight line.
func (f *File) Line(pen Pen, x0, y0, x1, y1 float64) {
	f.entity("LINE", pen, "AcDbLine").xyz(0, x0, y0).xyz(1, x1, y1)
}

// Circle adds a circle.
func (f *File) Circle(pen Pen, x, y, r float64) {
	f.entity("CIRCLE", pen, "AcDbCircle").xyz(0, x, y).num(40, r)
}

// Arc adds an arc, counter-clockwise from one angle to another, in radians.
func (f *File) Arc(pen Pen, x, y, r, from, to float64) {
	p := f.entity("ARC", pen, "AcDbCircle").xyz(0, x, y).num(40, r)
	p.str(100, "AcDbArc").num(50, degrees(from)).num(51, degrees(to))
}

func degrees(a float64) float64 {
	d := math.Mod(a*180/math.Pi, 360)
	if d < 0 {
		d += 360
	}
	return d
}

// Polyline adds a light-weight polyline with true arcs.
func (f *File) Polyline(pen Pen, v []Vertex, closed bool) {
	p := f.entity("LWPOLYLINE", pen, "AcDbPolyline").int(90, len(v))
	if closed {
		p.int(70, 1)
	} else {
		p.int(70, 0)
	}
	for _, q := range v {
		p.xy(0, q.X, q.Y)
		if q.Bulge != 0 {
			p.num(42, q.Bulge)
		}
	}
}

// Solid adds a filled triangle or quadrangle, its corners in order round it.
func (f *File) Solid(pen Pen, v []Vertex) {
	c := [4]Vertex{v[0], v[1], v[2], v[2]}
	if len(v) > 3 {
		// The file's order zigzags: third and fourth change places.
		c[2], c[3] = v[3], v[2]
	}
	p := f.entity("SOLID", pen, "AcDbTrace")
	for i, q := range c {
		p.xyz(i, q.X, q.Y)
	}
}

// Text adds a line of text by its baseline: left end (x, y); align 0 left, 1
// middle, 2 right with the point (ax, ay) there; height of capitals; angle in radians.
func (f *File) Text(pen Pen, s string, x, y, height, angle float64, align int, ax, ay float64) {
	p := f.entity("TEXT", pen, "AcDbText").xyz(0, x, y).num(40, height).str(1, s)
	p.num(50, degrees(angle)).str(7, textStyle)
	if align != 0 {
		p.int(72, align).xyz(1, ax, ay)
	}
	p.str(100, "AcDbText")
}
