package cut

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Bounds of the stress factor's formula, ratios without unit.
const (
	leastRadiusRatio = 0.2 // r/b
	leastSideRatio   = 0.3 // b/a
)

// StressFactor returns how many times the stress at the corner of a
// rectangular hole with rounded corners exceeds that of the plain wide sheet
// under tension across the longer side (a factor without unit).
//
//	 2a: longer side      ^ tension
//	+----------------+    |
//	|                | 2b |
//	+----------------+    v
//
// With q = r/b and s = sqrt q:
//
//	Kt = C1 + C2 (b/a) + C3 (b/a)^2 + C4 (b/a)^3
//	C1 = 14.815 - 15.774 s + 8.149 q    C2 = -11.201 - 9.750 s + 9.600 q
//	C3 = 0.202 + 38.662 s - 27.374 q    C4 = 3.232 - 23.002 s + 15.482 q
//
// Source: Peterson's chart 4.62 as restated by formula. Valid for
// 0.2 <= r/b <= 1 and 0.3 <= b/a <= 1; ok is false outside. It compares
// shapes; it is no strength check.
func StressFactor(size unit.Size, radius unit.Length) (kt float64, ok bool) {
	long, short := float64(max(size.W, size.H)), float64(min(size.W, size.H))
	if !(short > 0) {
		return 0, false
	}
	side, q := short/long, 2*float64(radius)/short
	const hair = 1e-9 // for sizes that meet a bound but for rounding
	if side < leastSideRatio-hair || q < leastRadiusRatio-hair || q > 1+hair {
		return 0, false
	}
	s := math.Sqrt(q)
	c1 := 14.815 - 15.774*s + 8.149*q
	c2 := -11.201 - 9.750*s + 9.600*q
	c3 := 0.202 + 38.662*s - 27.374*q
	c4 := 3.232 - 23.002*s + 15.482*q
	return c1 + side*(c2+side*(c3+side*c4)), true
}

// StressPoint is one point of the advisory's curve.
type StressPoint struct {
	Radius unit.Length
	Factor float64 // stress factor, without unit
}

// StressCurve returns the stress factor over the radii for which the formula
// holds, in n steps of equal width; empty when it holds for none.
func StressCurve(size unit.Size, n int) []StressPoint {
	half := min(size.W, size.H) / 2
	out := make([]StressPoint, 0, n+1)
	for i := 0; i <= n; i++ {
		share := leastRadiusRatio + (1-leastRadiusRatio)*float64(i)/float64(n)
		r := half * unit.Length(share)
		if k, ok := StressFactor(size, r); ok {
			out = append(out, StressPoint{r, k})
		}
	}
	return out
}
