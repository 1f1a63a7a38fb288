package frame

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// How finely a pupil's shape is traced: directions about a place inside it, halvings of the
// way to its edge, and places across that are tried for one inside.
const (
	pupilPoints = 40
	pupilHalves = 12
	pupilTries  = 9
)

// PupilShape returns the outline of the part of the pupil that sees toward a place of the frame
// (-1..1, y up) through the hole and over the ledge: points right and up of the pupil's middle,
// in pupil radii, counter-clockwise; nil when nothing sees. It is the shape of out-of-focus
// discs there, a cat's eye where the hole cuts in. Holes and pupils are convex, so that the
// shape is traced from a place inside it.
func (s *Shot) PupilShape(x, y float64) []geom.Vec2 {
	u := s.ray(x, y)
	through, over := s.Case.Sees(s.View.Pose, u), s.ledge.sees(s.Case, s.View.Pose, u)
	sees := func(q geom.Vec2) bool {
		return q.Dot(q) <= 1 && (s.pane != nil || through(q.X, q.Y)) && over(q.X, q.Y)
	}
	middle, n := geom.Vec2{}, 0.0
	for j := range pupilTries {
		for i := range pupilTries {
			q := geom.Vec2{X: 2*(float64(i)+0.5)/pupilTries - 1, Y: 2*(float64(j)+0.5)/pupilTries - 1}
			if sees(q) {
				middle, n = middle.Add(q), n+1
			}
		}
	}
	if n == 0 {
		return nil
	}
	middle = middle.Scale(1 / n)
	out := make([]geom.Vec2, pupilPoints)
	for k := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / pupilPoints)
		way := geom.Vec2{X: cos, Y: sin}
		in, off := 0.0, 2.0
		for range pupilHalves {
			if mid := (in + off) / 2; sees(middle.Add(way.Scale(mid))) {
				in = mid
			} else {
				off = mid
			}
		}
		out[k] = middle.Add(way.Scale((in + off) / 2))
	}
	return out
}
