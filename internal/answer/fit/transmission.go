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

// Sees tells which places of the pupil, right and up of its middle in pupil radii, see toward u
// (hole frame) through the hole: what [Case.Transmission] is the share of.
func (c Case) Sees(p Pose, u geom.Vec3) func(right, up float64) bool {
	at := aimAt(p.Pan, p.Tilt)
	var r ray
	r.ready(&c, &at, u)
	middle := r.footprint(p.pupil(&c, &at)).Centre
	return func(right, up float64) bool {
		return r.open && r.shared.Contains(middle.Add(r.a.Scale(right)).Add(r.b.Scale(up)))
	}
}
