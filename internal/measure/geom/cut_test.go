package geom

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestCutAgainstSlices cuts a region along a horizontal or vertical line and
// compares with the slices of the region above or beside it.
func TestCutAgainstSlices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, e := genRect(t), genEllipse(t)
		d := genVec(t, "d", 1)
		at := rapid.Float64Range(-2, 2).Draw(t, "at")
		turn := rapid.IntRange(0, 3).Draw(t, "side")
		n := [4]Vec2{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}[turn]
		o := r.Shared(d)
		cut := o.Cut(n, at)
		rest := o.Cut(n.Scale(-1), -at)
		a, _ := cut.Overlap(e)
		b, _ := rest.Overlap(e)
		whole, _ := o.Overlap(e)
		if math.Abs(a+b-whole) > 1e-9*max(1, e.Area()) {
			t.Fatalf("parts %.12g + %.12g, whole %.12g", a, b, whole)
		}
		// The part's own area, by slices across the cut.
		if got, want := cut.Area(), cutSlices(r, d, n, at); math.Abs(got-want) > 1e-5 {
			t.Fatalf("area %.9g, slices %.9g", got, want)
		}
	})
}

// cutSlices is the area of the shared region where n . q <= at, n along an axis.
func cutSlices(r RoundRect, d, n Vec2, at float64) float64 {
	if n.X != 0 { // turn the scene so that the cut is horizontal
		r.HalfW, r.HalfH = r.HalfH, r.HalfW
		d, n = Vec2{d.Y, d.X}, Vec2{n.Y, n.X}
	}
	lo, hi := max(-r.HalfH, d.Y-r.HalfH), min(r.HalfH, d.Y+r.HalfH)
	if n.Y > 0 {
		hi = min(hi, at)
	} else {
		lo = max(lo, -at)
	}
	if lo >= hi {
		return 0
	}
	const steps = 4000
	sum := 0.0
	for i := range steps {
		a := math.Pi * (float64(i) + 0.5) / steps
		y := (lo+hi)/2 - (hi-lo)/2*math.Cos(a)
		left := max(-r.right(y), d.X-r.right(y-d.Y))
		right := min(r.right(y), d.X+r.right(y-d.Y))
		sum += max(0, right-left) * (hi - lo) / 2 * math.Sin(a) * math.Pi / steps
	}
	return sum
}

func TestSupportAndContains(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := genRect(t)
		d := genVec(t, "d", 1)
		o := r.Shared(d)
		if o.Area() < 1e-6 {
			return
		}
		q := rapid.Float64Range(0, 7).Draw(t, "q")
		n := Vec2{math.Cos(q), math.Sin(q)}
		h, at := o.Support(n)
		if math.Abs(n.Dot(at)-h) > 1e-12 || !o.Contains(at.Scale(1-1e-9).Add(d.Scale(0.5e-9))) {
			t.Fatalf("support %g at %v is not on the region", h, at)
		}
		if beyond := at.Add(n.Scale(1e-6)); o.Contains(beyond) {
			t.Fatalf("%v lies beyond the support but counts as inside", beyond)
		}
		// No cut-off part is left past the support.
		if past := o.Cut(n.Scale(-1), -h-1e-9); past.Area() > 1e-12 {
			t.Fatalf("area %g past the support", past.Area())
		}
	})
}
