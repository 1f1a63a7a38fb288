package sheet

import "math"

// flatTolerance is how far, in millimetres, a chord may leave its curve where
// curves are turned into straight lines for measuring and hatching.
const flatTolerance = 0.005

// maxChords bounds the straight pieces of one curve.
const maxChords = 4096

// chain is a part of a path as straight lines.
type chain struct {
	pts    []Point
	closed bool
}

// flatten turns a path into chains of straight lines that leave its curves by
// at most tol millimetres.
func (p Path) flatten(tol float64) []chain {
	lines := p.polylines(tol)
	out := make([]chain, len(lines))
	for i, l := range lines {
		out[i] = l.flatten(tol)
	}
	return out
}

func (l Polyline) flatten(tol float64) chain {
	n := len(l.Vertices)
	pts := make([]Point, 0, n)
	for i, v := range l.Vertices {
		pts = append(pts, v.Point)
		if next := l.Vertices[(i+1)%n].Point; v.Bulge != 0 {
			pts = flatArc(pts, arcOf(v.Point, next, v.Bulge), tol)
		}
	}
	return chain{pts: pts, closed: l.Closed}
}

// flatArc appends the points between the ends: with a sagitta of tol, a chord spans 2 acos(1 - tol/r).
func flatArc(pts []Point, a Arc, tol float64) []Point {
	span := math.Pi / 2
	if a.R > tol {
		span = 2 * math.Acos(1-tol/a.R)
	}
	n := min(max(int(math.Ceil(math.Abs(a.Sweep)/span)), 1), maxChords)
	for i := 1; i < n; i++ {
		pts = append(pts, a.C.Polar(a.R, a.From+a.Sweep*float64(i)/float64(n)))
	}
	return pts
}

// flatCubic appends chords. The second derivative is at most 6 d, d the largest
// second difference of the control points, so that n chords leave the curve by at
// most 6 d / (8 n^2).
func flatCubic(pts []Point, p Point, s Step, tol float64) []Point {
	d := max(
		p.Sub(s.C1.Scale(2)).Add(s.C2).Dist(Point{}),
		s.C1.Sub(s.C2.Scale(2)).Add(s.P).Dist(Point{}))
	n := min(max(int(math.Ceil(math.Sqrt(0.75*d/tol))), 1), maxChords)
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		pts = append(pts, p.Scale(u*u*u).Add(s.C1.Scale(3*u*u*t)).Add(s.C2.Scale(3*u*t*t)).Add(s.P.Scale(t*t*t)))
	}
	return append(pts, s.P)
}
