package fit

import (
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// TestNoseAsWideAsTheHole: a nose that fills the hole from wall to wall enters
// it as one slimmer by a millionth of a millionth does, at any scale. Such a
// lens, aimed off the axes by hardly anything, was held behind the rink face
// before, the farther the larger the scene.
func TestNoseAsWideAsTheHole(t *testing.T) {
	const nose, pan, tilt = 0.09375, unit.Angle(5.272371611351828e-243), unit.Angle(-2.9056001125127295e-06)
	for _, scale := range []float64{1, 2, 8, 16} {
		c := Case{
			Width: nose * scale, Height: 0.12071565303178203 * scale, Corner: 2.195534e-19 * scale, Thick: 0.02924035184466492 * scale,
			Nose: nose * scale, Pupil: nose * scale, PupilDepth: 0.09614880592562258 * scale,
			TanX: 0.30078125, TanY: 0.45897488233458716,
		}
		slim := c
		slim.Nose *= 1 - 1e-12
		slim.Pupil *= 1 - 1e-12
		v, w := c.At(pan, tilt), slim.At(pan, tilt)
		if a, b := v.WorstCorner(), w.WorstCorner(); !near(a, b, 3*tie) || !near(v.Pose.Nose.Z, w.Pose.Nose.Z, 1e-8*scale) {
			t.Errorf("scale %g: worst T %.9g at %+v, slimmer %.9g at %+v", scale, a, v.Pose.Nose, b, w.Pose.Nose)
		}
	}
}
