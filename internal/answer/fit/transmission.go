package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

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

// Sees reports whether a place of the pupil, a to its right and b up in pupil radii, sees toward
// u (hole frame) through the hole: what [Case.Transmission] is the share of.
func (c Case) Sees(p Pose, a, b float64, u geom.Vec3) bool {
	at := aimAt(p.Pan, p.Tilt)
	if !(u.Z > 0 && u.Dot(at.axis) > 0) {
		return false
	}
	rho, slope := c.Pupil/2, geom.Vec2{X: u.X / u.Z, Y: u.Y / u.Z}
	from := p.pupil(&c, &at).Add(at.right.Scale(a * rho)).Add(at.up.Scale(b * rho))
	front := from.XY().Sub(slope.Scale(from.Z))
	return c.open(front) && (from.Z >= -c.Thick || c.open(front.Sub(slope.Scale(c.Thick))))
}

// open reports whether a place of a face of the pane lies in the hole's outline.
func (c *Case) open(q geom.Vec2) bool {
	x, y := max(0, math.Abs(q.X)-c.Width/2+c.Corner), max(0, math.Abs(q.Y)-c.Height/2+c.Corner)
	return math.Abs(q.X) <= c.Width/2 && math.Abs(q.Y) <= c.Height/2 && math.Hypot(x, y) <= max(c.Corner, 1e-12)
}
