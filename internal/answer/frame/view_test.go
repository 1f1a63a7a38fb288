package frame

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/unit"
)

// litShare is the mean T over the middle half of the frame in a pose.
func litShare(c fit.Case, p fit.Pose) float64 {
	sum, n := 0.0, 0
	for x := -0.5; x <= 0.5; x += 0.1 {
		for y := -0.5; y <= 0.5; y += 0.1 {
			sum, n = sum+c.Transmission(p, toward(p, x*c.TanX, y*c.TanY)), n+1
		}
	}
	return sum / float64(n)
}

// TestPoseOfAFrameWithADarkCorner: with a wide lens turned far aside, no pose
// lights every corner. The picture's pose then lights more of the frame's middle
// half, where the subject is, than the one that fit settles on when all poses
// are equal to it, and never less.
func TestPoseOfAFrameWithADarkCorner(t *testing.T) {
	better, dark := 0, 0
	for _, focal := range []float64{14, 16, 20, 24} {
		for pan := -60.0; pan <= 60; pan += 15 {
			s := shot(t, func(q *Request) {
				q.Use.Focal = unit.Length(focal / 1000)
				q.Lens.FocalMin = q.Use.Focal
				q.Turn = unit.Known(Aim{Pan: unit.Angle(pan * math.Pi / 180), Distance: 12})
			})
			fits := s.Case.At(s.Aim.Pan, s.Aim.Tilt)
			if s.Served == 1 {
				if s.View != fits {
					t.Errorf("%g mm, pan %g: every corner has light, but the pose is not fit's", focal, pan)
				}
				continue
			}
			dark++
			mine, theirs := litShare(s.Case, s.View.Pose), litShare(s.Case, fits.Pose)
			if mine < theirs-0.05 {
				t.Errorf("%g mm, pan %g: the pose lights %.2f of the middle, fit's lights %.2f", focal, pan, mine, theirs)
			}
			if mine > theirs+0.02 {
				better++
			}
		}
	}
	if dark < 5 || better < 3 {
		t.Errorf("only %d frames with a dark corner, %d of them lit better", dark, better)
	}
}
