package frame

import (
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/geom"
)

// A ledge is the front edge of the boards' top, level and parallel to the
// pane: y and z in the hole frame, metres.
type ledge struct {
	there bool
	y, z  float64
}

// free returns the share of the pupil that sees over the edge toward u (hole
// frame). The edge cuts the pupil's disc along a chord; with s the chord's
// distance from the centre over the radius, positive when the centre sees over,
// the share is 1/2 + (asin s + s sqrt(1-s^2)) / pi (segment of a circle).
func (l ledge) free(c fit.Case, p fit.Pose, u geom.Vec3) float64 {
	if !l.there || u.Z <= 0 {
		return 1
	}
	_, _, d := Axes(p.Pan, p.Tilt)
	over, across := l.over(p.Nose.Sub(d.Scale(c.PupilDepth)), u)
	rate := math.Sqrt(max(0, across.Dot(across)-across.Dot(d)*across.Dot(d)))
	if rate == 0 || c.Pupil == 0 {
		if over > 0 {
			return 1
		}
		return 0
	}
	s := max(-1, min(1, over/(rate*c.Pupil/2)))
	return 0.5 + (math.Asin(s)+s*math.Sqrt(1-s*s))/math.Pi
}

// sees tells which places of the pupil, right and up of its middle in pupil radii, see over the
// edge toward u: what free is the share of.
func (l ledge) sees(c fit.Case, p fit.Pose, u geom.Vec3) func(right, up float64) bool {
	if !l.there || u.Z <= 0 {
		return func(float64, float64) bool { return true }
	}
	r, v, d := Axes(p.Pan, p.Tilt)
	over, across := l.over(p.Nose.Sub(d.Scale(c.PupilDepth)), u)
	byRight, byUp := across.Dot(r)*c.Pupil/2, across.Dot(v)*c.Pupil/2
	return func(right, up float64) bool { return over+right*byRight+up*byUp >= 0 }
}

// over returns how far above the edge, metres, the ray from a place toward u passes it, and how
// that changes with the place.
func (l ledge) over(from, u geom.Vec3) (float64, geom.Vec3) {
	slope := u.Y / u.Z
	return from.Y + (l.z-from.Z)*slope - l.y, geom.Vec3{Y: 1, Z: -slope}
}

// Transmission returns the share of light that the hole, and the panel where
// there is one, let through toward a place of the frame (-1..1, y up).
func (s *Shot) Transmission(x, y float64) float64 {
	u := s.ray(x, y)
	if s.pane != nil {
		return s.panelPass(u)
	}
	return s.Case.Transmission(s.View.Pose, u) * s.panelPass(u)
}

// panelPass is the share that the panel lets through along a ray, 1 without one.
func (s *Shot) panelPass(u geom.Vec3) float64 {
	if s.panel == nil {
		return 1
	}
	pass, err := s.panel.Pass(incidence(u))
	if err != nil {
		return 0 // edge on: nothing passes
	}
	return pass.Transmission
}

// throughPanel takes the panel's loss off the view, so that light that passes
// means the same in numbers and in the picture.
func (s *Shot) throughPanel() {
	s.View.Centre *= s.panelPass(s.ray(0, 0))
	for i, at := range [4][2]float64{{-1, -1}, {-1, 1}, {1, -1}, {1, 1}} { // the order of [fit.View]
		s.View.Corners[i] *= s.panelPass(s.ray(at[0], at[1]))
	}
}

// LedgeFree returns the share of the pupil that sees over the boards' ledge
// toward a place of the frame (-1..1, y up).
func (s *Shot) LedgeFree(x, y float64) float64 {
	return s.ledge.free(s.Case, s.View.Pose, s.ray(x, y))
}

// ray is the direction of a place of the frame in the hole frame.
func (s *Shot) ray(x, y float64) geom.Vec3 {
	return toward(s.View.Pose, x*s.Case.TanX, y*s.Case.TanY)
}
