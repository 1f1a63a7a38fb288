package sheet

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// An arc's circle must go through both ends, and its middle must lie on the side
// that the bulge's sign says: to the right of the way for a positive bulge, the
// arc then turns counter-clockwise.
func TestArcOfBulge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Point{rapid.Float64Range(-500, 500).Draw(t, "x"), rapid.Float64Range(-500, 500).Draw(t, "y")}
		chord, dir := rapid.Float64Range(0.1, 300).Draw(t, "chord"), rapid.Float64Range(-3, 3).Draw(t, "dir")
		sweep := rapid.Float64Range(0.05, 5).Draw(t, "sweep")
		if rapid.Bool().Draw(t, "clockwise") {
			sweep = -sweep
		}
		q := p.Polar(chord, dir)
		a := arcOf(p, q, Bulge(sweep))
		tol := 1e-7 * (1 + a.R)
		if math.Abs(a.C.Dist(p)-a.R) > tol || a.C.Polar(a.R, a.From).Dist(p) > tol || a.C.Polar(a.R, a.From+a.Sweep).Dist(q) > tol {
			t.Fatalf("circle %+v misses the ends %v, %v", a, p, q)
		}
		if math.Abs(a.Sweep-sweep) > 1e-9 {
			t.Fatalf("sweep %g, want %g", a.Sweep, sweep)
		}
		// Height of the arc over its chord: h = c/2 tan(s/4), to the right for s > 0.
		mid := a.C.Polar(a.R, a.From+a.Sweep/2)
		half := p.Add(q).Scale(0.5)
		want := half.Polar(chord/2*math.Tan(sweep/4), dir-math.Pi/2)
		if mid.Dist(want) > tol {
			t.Fatalf("middle %v, want %v", mid, want)
		}
	})
}

// Bézier pieces of an eighth of a turn leave the circle by less than 5e-6 of its radius.
func TestCubicsKeepToTheCircle(t *testing.T) {
	worst, n := 0.0, 0
	for _, sweep := range []float64{0.1, math.Pi / 4, math.Pi / 2, -math.Pi, 2 * math.Pi} {
		a := Arc{C: Point{10, 20}, R: 100, From: 0.3, Sweep: sweep}
		p := a.C.Polar(a.R, a.From)
		a.cubics(func(c1, c2, q Point) {
			for i := range 101 {
				u := float64(i) / 100
				v := 1 - u
				b := p.Scale(v * v * v).Add(c1.Scale(3 * v * v * u)).Add(c2.Scale(3 * v * u * u)).Add(q.Scale(u * u * u))
				worst = math.Max(worst, math.Abs(b.Dist(a.C)/a.R-1))
				n++
			}
			p = q
		})
		if end := a.C.Polar(a.R, a.From+a.Sweep); p.Dist(end) > 1e-9 {
			t.Errorf("sweep %g ends at %v, want %v", sweep, p, end)
		}
	}
	if n < 1000 || worst > 5e-6 || worst < 1e-7 {
		t.Errorf("worst error %g of the radius at %d points", worst, n)
	}
}

// Flattened curves keep to their tolerance: each chord's middle leaves the
// circle by no more.
func TestFlattenKeepsItsTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(0.5, 5000).Draw(t, "r")
		tol := rapid.SampledFrom([]float64{0.001, 0.005, 0.1}).Draw(t, "tol")
		parts := Circle{C: Point{3, 4}, R: r}.path().flatten(tol)
		if len(parts) != 1 || !parts[0].closed {
			t.Fatalf("%d parts", len(parts))
		}
		pts := parts[0].pts
		for i, p := range pts {
			mid := p.Add(pts[(i+1)%len(pts)]).Scale(0.5)
			if d := r - mid.Dist(Point{3, 4}); d > tol*1.001 || d < -1e-9 {
				t.Fatalf("chord %d of %d leaves the circle by %g", i, len(pts), d)
			}
		}
	})
}

func TestFlattenCubic(t *testing.T) {
	var p Path
	p.MoveTo(Point{0, 0})
	p.CubicTo(Point{0, 100}, Point{100, -100}, Point{100, 0})
	pts := p.flatten(0.01)[0].pts
	for i := 0; i+1 < len(pts); i++ {
		// Nearest of many points of the curve to the chord's middle.
		mid, best := pts[i].Add(pts[i+1]).Scale(0.5), math.Inf(1)
		for k := range 20001 {
			u := float64(k) / 20000
			v := 1 - u
			b := Point{300*v*u*u + 100*u*u*u, 300*v*v*u - 300*v*u*u}
			best = math.Min(best, b.Dist(mid))
		}
		if best > 0.0125 {
			t.Fatalf("chord %d of %d leaves the curve by %g", i, len(pts), best)
		}
	}
	if len(pts) < 20 || len(pts) > 200 {
		t.Errorf("%d points", len(pts))
	}
}
