package sheet

import "math"

// quarterBulge is the bulge of a quarter turn: tan(pi/8).
const quarterBulge = math.Sqrt2 - 1

// RoundRect returns the closed outline of an upright rectangle with corners of a
// radius in millimetres (at most half the shorter side; 0 or less gives square
// corners). It starts at the left end of the top edge's straight part and runs
// clockwise as seen.
func RoundRect(r Rect, radius float64) Polyline {
	radius = min(radius, r.W/2, r.H/2)
	x0, y0, x1, y1 := r.X, r.Y, r.X+r.W, r.Y+r.H
	if !(radius > 0) {
		return Polygon(Pt(x0, y0), Pt(x1, y0), Pt(x1, y1), Pt(x0, y1))
	}
	const b = -quarterBulge // clockwise
	l := Polyline{Closed: true, Vertices: make([]Vertex, 0, 8)}
	add := func(x, y, bulge float64) {
		l.Vertices = append(l.Vertices, Vertex{Pt(x, y), bulge})
	}
	add(x0+radius, y0, 0)
	add(x1-radius, y0, b)
	add(x1, y0+radius, 0)
	add(x1, y1-radius, b)
	add(x1-radius, y1, 0)
	add(x0+radius, y1, b)
	add(x0, y1-radius, 0)
	add(x0, y0+radius, b)
	return l
}

// Polygon returns the closed outline through points.
func Polygon(pts ...Point) Polyline {
	l := Lines(pts...)
	l.Closed = true
	return l
}

// Lines returns the open chain of straight lines through points.
func Lines(pts ...Point) Polyline {
	v := make([]Vertex, len(pts))
	for i, p := range pts {
		v[i].Point = p
	}
	return Polyline{Vertices: v}
}
