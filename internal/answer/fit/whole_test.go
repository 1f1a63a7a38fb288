package fit

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// Where the whole frame's limit is traced, the best pose of all keeps half of the
// light at the centre and every corner inside it, and no longer does two degrees
// outside it; it lies within the limit of the centre alone.
func TestWholeFrameEndsBeforeTheCentre(t *testing.T) {
	met := 0
	for _, tan := range []float64{0.09, 0.257, 0.36} {
		c := fifty()
		c.TanX, c.TanY, c.Camera = tan, tan*2/3, unit.Maybe[Camera]{}
		centre, whole := c.Trace(), c.TraceWhole()
		for _, way := range [][2]float64{{1, 0}, {0.8, 0.6}, {0, 1}} {
			at := func(q float64) (pan, tilt unit.Angle) {
				s, co := math.Sincos(q)
				return unit.Angle(math.Atan2(way[0]*s, co)), unit.Angle(math.Asin(way[1] * s))
			}
			end := 0.0
			for q := 0.0; q < rangeEnd; q += 0.002 {
				pan, tilt := at(q)
				if !whole.Contains(pan, tilt) {
					break
				}
				if end = q; !centre.Contains(pan, tilt) {
					t.Fatalf("tan %g: %.2f deg lies in the whole frame's limit and not in the centre's", tan, q*180/math.Pi)
				}
			}
			least := func(q float64) float64 {
				v := c.At(at(q))
				return min(v.Centre, v.WorstCorner())
			}
			if in, out := least(end-0.01), least(end+0.035); in < 0.49 || out > 0.5 {
				t.Errorf("tan %g toward %v, limit %.2f deg: T %.3f inside, %.3f two degrees outside", tan, way, end*180/math.Pi, in, out)
			}
			met++
		}
	}
	if met != 9 {
		t.Errorf("%d limits", met)
	}
}
