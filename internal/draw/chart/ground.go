package chart

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// ground maps a rink seen from above to the sheet.
type ground struct {
	sheet.View
	rink   rink.Rink
	length float64 // metres
	width  float64
	radius float64
}

func newGround(r rink.Rink, centre sheet.Point, scale float64) ground {
	d := r.Dimensions()
	return ground{
		View: sheet.View{Origin: centre, Scale: scale}, rink: r,
		length: d.Length.Metres(), width: d.Width.Metres(), radius: d.CornerRadius.Metres(),
	}
}

func (g ground) pt(v geom.Vec2) sheet.Point { return g.At(v.X, v.Y) }

// off returns the point at a station, out millimetres on paper outside the
// boards' rink face; negative is on the ice.
func (g ground) off(s unit.Length, out float64) sheet.Point {
	n := g.rink.Normal(s).Scale(out / g.Scale)
	return g.pt(g.rink.Point(s).Sub(n))
}

// outward returns the direction out of the rink at a station, on paper, radians.
func (g ground) outward(s unit.Length) float64 {
	n := g.rink.Normal(s)
	return math.Atan2(-n.Y, -n.X)
}

// breaks returns the stations between straights and arcs, rising from station 0;
// arcs lie between the first and second, third and fourth, and so on.
func (g ground) breaks() [8]float64 {
	a, q, e := g.length/2-g.radius, math.Pi*g.radius/2, g.width-2*g.radius
	return [8]float64{a, a + q, a + q + e, a + 2*q + e, 3*a + 2*q + e, 3*a + 3*q + e, 3*a + 3*q + 2*e, 3*a + 4*q + 2*e}
}

// ring returns the line along the boards between two stations (to may pass the
// perimeter), out millimetres outside the rink face, with true arcs.
func (g ground) ring(from, to unit.Length, out float64) sheet.Polyline {
	u, end := from.Metres(), to.Metres()
	per := g.rink.Perimeter().Metres()
	l := sheet.Polyline{}
	for u < end {
		v, curved := g.piece(math.Mod(u, per))
		v = min(u+v, end)
		bulge := 0.0
		if curved {
			bulge = sheet.Bulge((v - u) / g.radius)
		}
		l.Vertices = append(l.Vertices, sheet.Vertex{Point: g.off(unit.Length(u), out), Bulge: bulge})
		u = v
	}
	l.Vertices = append(l.Vertices, sheet.Vertex{Point: g.off(to, out)})
	return l
}

// piece returns how far it is from a station in [0, perimeter) to the next
// break, and whether the way is curved.
func (g ground) piece(s float64) (length float64, curved bool) {
	const near = 1e-9 // metres: a station at a break belongs to the piece after it
	for i, b := range g.breaks() {
		if s < b-near {
			return b - s, i%2 == 1
		}
	}
	return math.Max(g.rink.Perimeter().Metres()-s, near), false
}

// band returns the closed outline along the boards between two stations, from
// in to out millimetres outside the rink face.
func (g ground) band(from, to unit.Length, in, out float64) sheet.Polyline {
	l, far := g.ring(from, to, in), g.ring(from, to, out)
	l.Closed = true
	n := len(far.Vertices)
	for i := range far.Vertices {
		v := far.Vertices[n-1-i]
		v.Bulge = 0
		if i < n-1 {
			v.Bulge = -far.Vertices[n-2-i].Bulge
		}
		l.Vertices = append(l.Vertices, v)
	}
	return l
}

// around returns the closed outline of the whole rink, out millimetres outside
// the rink face.
func (g ground) around(out float64) sheet.Polyline {
	l := g.ring(0, g.rink.Perimeter(), out)
	l.Vertices = l.Vertices[:len(l.Vertices)-1]
	l.Closed = true
	return l
}
