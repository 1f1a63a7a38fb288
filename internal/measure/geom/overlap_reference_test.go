package geom

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

// TestOverlapByQuadrature integrates, with gonum's Gauss-Legendre rule, the
// length that each vertical slice of an ellipse has inside a rounded rectangle,
// in parts; where the integrand bends inside one the rule is right to 1e-8.
func TestOverlapByQuadrature(t *testing.T) {
	told := 0
	for _, r := range []RoundRect{{0.07, 0.057, 0.012}, {0.07, 0.057, 0}, {0.05, 0.05, 0.05}, {0.08, 0.04, 0.04}} {
		o := r.Outline()
		for _, half := range []Vec2{{0.03, 0.03}, {0.06, 0.035}, {0.02, 0.075}} {
			for _, at := range []Vec2{{0, 0}, {0.05, 0.03}, {-0.065, 0.02}, {0.03, -0.05}} {
				e := Ellipse{Centre: at, A: Vec2{half.X, 0}, B: Vec2{0, half.Y}}
				got, _ := o.Overlap(e)
				want := sliceByGauss(r, e)
				if math.Abs(got-want) > 2e-8*e.Area() {
					t.Errorf("%+v with %+v: area %.12g, quadrature %.12g", r, e, got, want)
				}
				if got > 0.01*e.Area() && got < 0.99*e.Area() {
					told++
				}
			}
		}
	}
	if told < 25 {
		t.Errorf("only %d overlaps were partial", told)
	}
}

// sliceByGauss works on an upright ellipse.
func sliceByGauss(r RoundRect, e Ellipse) float64 {
	top := func(x float64) float64 { // of the rectangle at x
		over := math.Abs(x) - (r.HalfW - r.Radius)
		if over <= 0 {
			return r.HalfH
		}
		return r.HalfH - r.Radius + math.Sqrt(max(0, r.Radius*r.Radius-over*over))
	}
	slice := func(x float64) float64 {
		w := (x - e.Centre.X) / e.A.X
		h := e.B.Y * math.Sqrt(max(0, 1-w*w))
		return max(0, min(e.Centre.Y+h, top(x))-max(e.Centre.Y-h, -top(x)))
	}
	lo, hi := max(-r.HalfW, e.Centre.X-e.A.X), min(r.HalfW, e.Centre.X+e.A.X)
	const parts, nodes = 400, 24
	sum := 0.0
	for i := range parts {
		// Parts bunched toward the ends, where the slices go like a root.
		place := func(i int) float64 { return (lo+hi)/2 - (hi-lo)/2*math.Cos(math.Pi*float64(i)/parts) }
		sum += quad.Fixed(slice, place(i), place(i+1), nodes, quad.Legendre{}, 0)
	}
	return sum
}
