package fit

import "example.org/rinkpane/internal/measure/geom"

// Transmission returns T(u), 0..1: the share of the pupil's area that both
// hole outlines leave free toward u (hole frame, any length), the lens standing
// in pose p behind the rink face. It is 0 for a u that does not go into the
// rink or does not leave the front of the lens. It allocates nothing.
func (c Case) Transmission(p Pose, u geom.Vec3) float64 {
	a := aimAt(p.Pan, p.Tilt)
	var r ray
	r.ready(&c, &a, u)
	t, _ := r.pass(&c, &a, p.pupil(&c, &a))
	return t
}

// pupil returns the centre of the entrance pupil.
func (p Pose) pupil(c *Case, a *aim) geom.Vec3 {
	return p.Nose.Sub(a.axis.Scale(c.PupilDepth))
}
