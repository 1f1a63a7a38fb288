package dxffile

import "math"

// Pen says on which layer and with which line type (from Dash) an entity lies.
type Pen struct{ Layer, Ltype string }

// Vertex is a corner of a polyline in millimetres, with the bulge (no unit) of the
// way to the next.
type Vertex struct{ X, Y, Bulge float64 }

func (f *File) entity(kind string, pen Pen, class string) *pairs {
	p := &f.entities
	p.str(0, kind)
	if !p.r12 {
		p.str(5, f.next()).str(330, modelRecord)
	}
	p.class("AcDbEntity").str(8, pen.Layer)
	if pen.Ltype != "" {
		p.str(6, pen.Ltype)
	}
	return p.class(class)
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
	p.class("AcDbArc").num(50, degrees(from)).num(51, degrees(to))
}

func degrees(a float64) float64 {
	d := math.Mod(a*180/math.Pi, 360)
	if d < 0 {
		d += 360
	}
	return d
}

// Polyline adds a polyline with true arcs, light-weight in release 2000.
func (f *File) Polyline(pen Pen, v []Vertex, closed bool) {
	flags := 0
	if closed {
		flags = 1
	}
	if f.entities.r12 {
		f.vertices(pen, v, flags)
		return
	}
	p := f.entity("LWPOLYLINE", pen, "AcDbPolyline").int(90, len(v)).int(70, flags)
	for _, q := range v {
		p.xy(0, q.X, q.Y)
		if q.Bulge != 0 {
			p.num(42, q.Bulge)
		}
	}
}

// vertices adds a polyline as release 12 has it: its corners as entities of their own.
func (f *File) vertices(pen Pen, v []Vertex, flags int) {
	f.entity("POLYLINE", pen, "").int(66, 1).xyz(0, 0, 0).int(70, flags)
	for _, q := range v {
		p := f.entity("VERTEX", Pen{Layer: pen.Layer}, "").xyz(0, q.X, q.Y)
		if q.Bulge != 0 {
			p.num(42, q.Bulge)
		}
	}
	f.entity("SEQEND", Pen{Layer: pen.Layer}, "")
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
	p.class("AcDbText")
}
