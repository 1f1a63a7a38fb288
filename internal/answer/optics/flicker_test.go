package optics

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"example.org/rinkpane/internal/measure/unit"
)

// Lamps flicker at twice the mains, 100 or 120 Hz (camera makers' support
// pages): the shortest safe times are 1/100 and 1/120 s.
func TestFlickerSafe(t *testing.T) {
	for mains, first := range map[float64]unit.Shutter{50: 1.0 / 100, 60: 1.0 / 120} {
		safe, err := FlickerSafe(mains)
		if err != nil || len(safe) != safeCycles {
			t.Fatal(safe, err)
		}
		if safe[0] != first {
			t.Errorf("%v Hz: shortest %v, want %v", mains, safe[0], first)
		}
		for _, s := range safe {
			r, err := Ripple(s, mains, 1)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "ripple of a safe time", r, 0, 1e-12)
		}
	}
	if _, err := FlickerSafe(55); err == nil {
		t.Error("55 Hz taken")
	}
}

// Ripple against the light gathered from the best and the worst moment, by quadrature.
func TestRippleByQuadrature(t *testing.T) {
	for _, exposure := range []float64{1.0 / 1000, 1.0 / 500, 1.0 / 160, 1.0 / 75} {
		const mains, depth = 50.0, 0.4
		gathered := func(start float64) float64 {
			return quad.Fixed(func(x float64) float64 { return 1 + depth*math.Cos(2*math.Pi*2*mains*x) }, start, start+exposure, 60, nil, 0)
		}
		lo, hi := math.Inf(1), 0.0
		for i := range 20000 {
			g := gathered(float64(i) / 20000 / (2 * mains))
			lo, hi = min(lo, g), max(hi, g)
		}
		got, err := Ripple(unit.Shutter(exposure), mains, depth)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "ripple", got, math.Log2(hi/lo), 1e-6)
	}
}
