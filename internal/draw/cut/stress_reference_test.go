package cut

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// Values of the restated formula of Peterson's chart 4.62: square opening
// r/b 0.2 3.808, 0.5 3.002; b/a 0.5: r/b 0.2 5.079, 0.5 3.890.
func TestStressFactorPublished(t *testing.T) {
	for _, c := range []struct{ side, q, kt float64 }{{1, .2, 3.808}, {1, .5, 3.002}, {.5, .2, 5.079}, {.5, .5, 3.890}} {
		size := unit.Size{W: 0.2, H: unit.Length(0.2 * c.side)}
		got, ok := StressFactor(size, unit.Length(c.q)*size.H/2)
		if !ok || math.Abs(got-c.kt) > 5e-4 {
			t.Errorf("b/a %g, r/b %g: %.4f (%v), published %.3f", c.side, c.q, got, ok, c.kt)
		}
		turned, _ := StressFactor(unit.Size{W: size.H, H: size.W}, unit.Length(c.q)*size.H/2)
		if turned != got {
			t.Errorf("b/a %g, r/b %g: %g when turned, %g", c.side, c.q, turned, got)
		}
	}
}

// The stress factor by plane elasticity, as testdata/ref/stress.py prints it (a
// conformal map and complex potentials: nothing shared with the fit). The fit
// keeps within 3 %: 2.8 % at a square with corners of three eighths of its side.
func TestStressFactorAgainstElasticity(t *testing.T) {
	for _, c := range []struct{ side, q, kt float64 }{
		{1, .2, 3.778}, {1, .5, 3.000}, {1, .75, 2.820}, {1, 1, 3.000}, {.8, .2, 4.120}, {.8, .5, 3.256}, {.8, 1, 3.246}, {.5, .4, 4.125}, {.5, 1, 3.865},
	} {
		size := unit.Size{W: 0.2, H: unit.Length(0.2 * c.side)}
		got, ok := StressFactor(size, unit.Length(c.q)*size.H/2)
		if !ok || math.Abs(got/c.kt-1) > 0.03 {
			t.Errorf("b/a %g, r/b %g: %.3f (%v), elasticity %.3f", c.side, c.q, got, ok, c.kt)
		}
	}
}

// A square with corners of half its side is a circle: 3 in the textbooks; the fit gives it to 3 %.
func TestStressFactorOfACircle(t *testing.T) {
	got, ok := StressFactor(unit.Size{W: 0.1, H: 0.1}, 0.05)
	if !ok || math.Abs(got-3) > 0.09 {
		t.Errorf("circle: %.4f (%v), want 3 within 3 %%", got, ok)
	}
}

func TestStressFactorRange(t *testing.T) {
	for name, c := range map[string]struct{ w, h, r float64 }{
		"sharp corner":  {0.2, 0.1, 0.0099},
		"radius above":  {0.2, 0.1, 0.051},
		"long slot":     {1, 0.29, 0.1},
		"no height":     {1, 0, 0.1},
		"no radius":     {0.1, 0.1, 0},
		"not a number":  {math.NaN(), 0.1, 0.02},
		"below nothing": {0.1, 0.1, -0.02},
	} {
		if k, ok := StressFactor(unit.Size{W: unit.Length(c.w), H: unit.Length(c.h)}, unit.Length(c.r)); ok {
			t.Errorf("%s: %g, want none", name, k)
		}
	}
}

func TestStressCurveFalls(t *testing.T) {
	curve := StressCurve(unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}, 40)
	if len(curve) != 41 {
		t.Fatalf("%d points", len(curve))
	}
	if first, last := curve[0], curve[40]; first.Factor <= last.Factor || math.Abs(float64(last.Radius-4.5*unit.Inch/2)) > 1e-12 {
		t.Errorf("from %+v to %+v", first, last)
	}
}
