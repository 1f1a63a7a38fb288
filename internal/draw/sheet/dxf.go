package sheet

import (
	"math"
	"strings"

	"example.org/rinkpane/internal/draw/sheet/internal/dxffile"
)

// The layers that a shop's drawing has. Names are kept in the DXF.
const (
	LayerCut     = "CUT"     // what the tool cuts: closed outlines only
	LayerDrill   = "DRILL"   // what is drilled: circles only
	LayerEngrave = "ENGRAVE" // what is scribed or marked on the part
	LayerDatum   = "DATUM"   // edges and centre lines measured from
	LayerDim     = "DIM"     // dimensions
	LayerText    = "TEXT"    // notes
	LayerFrame   = "FRAME"   // border and title block
	LayerHatch   = "HATCH"   // sections
)

// DXF returns the drawing as an ASCII DXF of release 2000 in millimetres, one
// drawing millimetre to the unit, y up, the origin at the drawing's datum. Lines,
// arcs, circles and text stay what they are; polylines become light-weight
// polylines with bulges, one an outline, without pieces of no length. Filled triangles and quadrangles become solids. Curves of a Path are
// cut into lines within 0.005 mm. Pictures and clips are left out; a shape
// without a visible line or fill is left out too.
func DXF(d *Drawing) []byte { return dxf(d, dxffile.R2000) }

// DXF12 is DXF in release 12, for machines whose programs read nothing newer: the
// same outlines, with polylines as that release has them. The release has no unit
// of its own; a drawing says in its text that it is in millimetres.
func DXF12(d *Drawing) []byte { return dxf(d, dxffile.R12) }

func dxf(d *Drawing, r dxffile.Release) []byte {
	f := dxffile.New(r, -d.Datum.X, -d.Datum.Y, d.W, d.H)
	w := &dxfWriter{f: f, d: d}
	for _, name := range d.LayerOrder() {
		w.layer = dxfLayer(name)
		for _, e := range d.Items {
			if e.Layer == name {
				f.AddLayer(dxffile.Layer{Name: w.layer, Colour: dxfColour(w.layer), Weight: w.weight(name)})
				w.element(e, Style{}, placed{scale: 1})
			}
		}
	}
	return f.Bytes()
}

type dxfWriter struct {
	f     *dxffile.File
	d     *Drawing
	layer string
}

// dxfLayer returns a layer's name as DXF allows it: capitals, digits, "_" and "-".
func dxfLayer(name string) string {
	if name == "" {
		return "0"
	}
	return strings.ToUpper(attrName(name))
}

// dxfColour returns the colour index of a layer, so that a shop tells them apart
// on a dark or a light screen.
func dxfColour(layer string) int {
	switch layer {
	case LayerCut:
		return 1 // red
	case LayerDrill:
		return 6 // magenta
	case LayerEngrave:
		return 5 // blue
	case LayerDatum:
		return 3 // green
	case LayerDim, LayerHatch, LayerFrame:
		return 8 // grey
	}
	return 7 // black or white
}

// dxfWeights are the line weights that DXF allows, in hundredths of a millimetre.
var dxfWeights = [...]int{13, 18, 25, 35, 50, 70, 100, 140, 200}

// weight returns the line weight of a layer: that of its first drawn line.
func (w *dxfWriter) weight(layer string) int {
	for _, e := range w.d.Items {
		if st := w.d.Styles.Resolve(e.Class, Style{}); e.Layer == layer && st.Width > 0 {
			best := dxfWeights[0]
			for _, v := range dxfWeights {
				if math.Abs(float64(v)-100*st.Width) < math.Abs(float64(best)-100*st.Width) {
					best = v
				}
			}
			return best
		}
	}
	return 25
}

func (w *dxfWriter) element(e *Element, base Style, at placed) {
	st := w.d.Styles.Resolve(e.Class, base)
	stroke, fill := st.Stroke.visible() && st.Width > 0, st.Fill.visible()
	if g, ok := e.Shape.(*Group); ok {
		for _, item := range g.Items {
			w.element(item, st, at.within(g))
		}
		return
	}
	if t, ok := e.Shape.(Text); ok {
		if fill && t.S != "" {
			w.text(t, st, at)
		}
		return
	}
	if !stroke && !fill {
		return
	}
	pen := dxffile.Pen{Layer: w.layer}
	if stroke {
		pen.Ltype = w.f.Dash(st.Dash)
	}
	w.draw(e.Shape, pen, at, stroke)
}

func (w *dxfWriter) draw(s Shape, pen dxffile.Pen, at placed, stroke bool) {
	switch s := s.(type) {
	case Line:
		a, b := w.xy(s.A, at), w.xy(s.B, at)
		if a.Dist(b) < leastLine {
			return
		}
		w.f.Line(pen, a.X, a.Y, b.X, b.Y)
	case Circle:
		c := w.xy(s.C, at)
		w.f.Circle(pen, c.X, c.Y, s.R*at.scale)
	case Arc:
		c := w.xy(s.C, at)
		from, to := s.From, s.From+s.Sweep
		if s.Sweep < 0 {
			from, to = to, from
		}
		w.f.Arc(pen, c.X, c.Y, s.R*at.scale, from, to)
	case Polyline:
		v := w.vertices(s, at)
		if !stroke && isSolid(s) {
			w.f.Solid(pen, v)
			return
		}
		if len(v) > 1 {
			w.f.Polyline(pen, v, s.Closed)
		}
	case Path:
		w.path(s, pen, at)
	}
}

func isSolid(l Polyline) bool {
	n := len(l.Vertices)
	for _, v := range l.Vertices {
		if v.Bulge != 0 {
			return false
		}
	}
	return n == 3 || n == 4
}

// path writes each part of a path as one polyline.
func (w *dxfWriter) path(p Path, pen dxffile.Pen, at placed) {
	for _, l := range p.polylines(flatTolerance) {
		if len(l.Vertices) > 1 {
			w.f.Polyline(pen, w.vertices(l, at), l.Closed)
		}
	}
}

func (w *dxfWriter) xy(p Point, at placed) Point {
	return Point{at.offset.X + at.scale*p.X - w.d.Datum.X, w.d.H - at.offset.Y - at.scale*p.Y - w.d.Datum.Y}
}

// leastLine is the length in millimetres below which a line is none: the last
// digit that is written.
const leastLine = 1e-6

// vertices returns a polyline's corners without those that the next one repeats.
func (w *dxfWriter) vertices(l Polyline, at placed) []dxffile.Vertex {
	out := make([]dxffile.Vertex, 0, len(l.Vertices))
	for i, q := range l.Vertices {
		p, next := w.xy(q.Point, at), i+1
		if l.Closed {
			next %= len(l.Vertices)
		}
		if next < len(l.Vertices) && next != i && p.Dist(w.xy(l.Vertices[next].Point, at)) < leastLine {
			continue
		}
		out = append(out, dxffile.Vertex{X: p.X, Y: p.Y, Bulge: q.Bulge})
	}
	return out
}

func (w *dxfWriter) text(t Text, st Style, at placed) {
	size := t.size(st)
	s, c := math.Sincos(t.Rotate)
	turn := func(dx, dy float64) Point {
		return w.xy(Point{t.At.X + dx*c + dy*s, t.At.Y - dx*s + dy*c}, at)
	}
	drop := t.drop(st)
	left := turn(-st.Face.Width(t.S, size)*t.Anchor.share(), drop)
	anchor := turn(0, drop)
	w.f.Text(dxffile.Pen{Layer: w.layer}, t.S, left.X, left.Y, st.Face.CapHeight(size)*at.scale, t.Rotate,
		int(t.Anchor), anchor.X, anchor.Y)
}
