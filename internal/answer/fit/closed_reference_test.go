package fit

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// root returns the first angle at which f rises through 0, hunted in fine
// steps from 0 to 89 deg; it shares nothing with the package's own search.
func root(f func(q float64) float64) float64 {
	const step = 1e-4
	q := 0.0
	for f(q) <= 0 && q < 89*math.Pi/180 {
		q += step
	}
	lo, hi := q-step, q
	for range 60 {
		if mid := (lo + hi) / 2; f(mid) <= 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// TestBodyLimitClosedForm: D cos q + t tan q = W while D sin q <= t, then
// t (tan q + cot q) = W (contract, fine print). The hole is tall and its
// corners are far, so that the plane problem holds.
func TestBodyLimitClosedForm(t *testing.T) {
	for _, d := range []float64{0.004, 0.03, 0.0712, 0.089, 0.12, 0.1395} {
		for _, thick := range []float64{0.006, 0.0127, 0.02, 0.08} {
			const w = 0.1397
			c := Case{Width: w, Height: 1, Corner: 0.01, Thick: thick, Nose: d, Pupil: d / 2, TanX: 0.1, TanY: 0.1}
			want := root(func(q float64) float64 {
				if d*math.Sin(q) <= thick {
					return d*math.Cos(q) + thick*math.Tan(q) - w
				}
				return thick*(math.Tan(q)+1/math.Tan(q)) - w
			})
			got, ok := c.Limits().Pan.Body.Get()
			if !ok || math.Abs(got.Radians()-want) > 1e-6 {
				t.Errorf("D %g t %g: body limit %.6f deg, closed form %.6f", d, thick, got.Degrees(), want/math.Pi*180)
			}
		}
	}
}

// TestLimitingCase: with the pupil as wide as the nose and at it, a flat view
// and a tall hole, the largest pan without any loss solves
// t tan q + D cos q + D sin q tan(q + a) = W (design).
func TestLimitingCase(t *testing.T) {
	const d, w, thick = 0.07, 0.14, 0.0127
	for _, half := range []float64{0.001, 0.01, 0.05, 0.1, 0.2, 0.3, 0.5} {
		c := Case{Width: w, Height: 0.5, Thick: thick, Nose: d, Pupil: d, TanX: math.Tan(half), TanY: 1e-9}
		want := root(func(q float64) float64 {
			return thick*math.Tan(q) + d*math.Cos(q) + d*math.Sin(q)*math.Tan(q+half) - w
		})
		worst := func(pan float64) float64 {
			v := c.At(unit.Angle(pan), 0)
			return min(v.Centre, v.WorstCorner())
		}
		// Past the limit the loss grows like the 3/2 power of the angle.
		if in := worst(want - 1e-5); in < 1-2*tie {
			t.Errorf("half view %g: T %.9f just inside the lossless limit", half, in)
		}
		if out := worst(want + 2e-3); out > 1-1e-5 {
			t.Errorf("half view %g: T %.9f past the lossless limit", half, out)
		}
	}
}
