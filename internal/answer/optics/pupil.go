package optics

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// PupilDepth returns how far the entrance pupil must lie behind a front glass
// of clear diameter front, in metres, so that the glass just passes a beam of
// the pupil's diameter at the field's corner:
//
//	(front - pupil) / (2 tan a),  a half the diagonal angle of view
//
// Below 0 it counts as 0. a must lie above 0 and below 90 degrees; outside, 0.
// Own derivation; the true depth depends on the lens's design.
func PupilDepth(front, pupil unit.Length, a unit.Angle) unit.Length {
	if !(a > 0 && a < 90*unit.Degree) {
		return 0
	}
	return max(0, (front-pupil)/unit.Length(2*math.Tan(float64(a))))
}
