package sheet

import "math"

// arcOf returns the circle of an arc from p to q with a bulge: centre, radius,
// start angle and signed sweep, counter-clockwise as seen.
//
// With sweep s, bulge b = tan(s/4) and chord c: r = c (1+b^2) / (4 |b|); the
// centre stands off the chord's middle by c (1-b^2) / (4 b) to the left as seen.
// Own derivation, docs/formulas/sheet.md, "Bulge".
func arcOf(p, q Point, b float64) Arc {
	dx, dy := q.X-p.X, q.Y-p.Y
	h := (1 - b*b) / (4 * b)
	// The left normal of (dx, dy) as seen, with y down, is (dy, -dx).
	c := Point{(p.X+q.X)/2 + h*dy, (p.Y+q.Y)/2 - h*dx}
	return Arc{
		C:     c,
		R:     math.Hypot(dx, dy) * (1 + b*b) / (4 * math.Abs(b)),
		From:  math.Atan2(c.Y-p.Y, p.X-c.X),
		Sweep: 4 * math.Atan(b),
	}
}

// bulge returns the bulge of an arc of a sweep in radians, |sweep| < 2 pi.
func bulge(sweep float64) float64 { return math.Tan(sweep / 4) }

// Bulge returns the bulge of an arc with a sweep in radians, counter-clockwise as
// seen when positive, for the vertices of a [Polyline]. It grows without limit
// toward a full turn; arcs past half a turn are better split.
func Bulge(sweep float64) float64 { return bulge(sweep) }

// splitSweep cuts a sweep into equal parts of at most half a turn.
func splitSweep(sweep float64) []float64 {
	n := int(math.Ceil(math.Abs(sweep)/math.Pi - 1e-9))
	n = min(max(n, 1), 64)
	parts := make([]float64, n)
	for i := range parts {
		parts[i] = sweep / float64(n)
	}
	return parts
}

// cubics gives an arc as cubic Bézier curves of at most an eighth of a turn,
// calling add with the controls and end of each. Such a curve leaves the true
// arc by less than 5e-6 of the radius (a quarter turn: 2.8e-4; the error falls
// with the sixth power of the angle).
func (a Arc) cubics(add func(c1, c2, p Point)) {
	n := int(math.Ceil(math.Abs(a.Sweep)/(math.Pi/4) - 1e-9))
	n = max(n, 1)
	s := a.Sweep / float64(n)
	k := 4.0 / 3 * math.Tan(s/4) * a.R
	for i := range n {
		f, t := a.From+float64(i)*s, a.From+float64(i+1)*s
		sf, cf := math.Sincos(f)
		st, ct := math.Sincos(t)
		p, q := a.C.Polar(a.R, f), a.C.Polar(a.R, t)
		add(Point{p.X - k*sf, p.Y - k*cf}, Point{q.X + k*st, q.Y + k*ct}, q)
	}
}
