package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// ray is one direction u out of the pupil, made ready for many poses of the
// same aim. A point x of the pupil sees along u through the point
// x_xy - x_z s of the rink face, s = u_xy/u_z: the pupil's disc becomes an
// ellipse there, the front outline is the hole's own, the rear one the same
// moved by t s.
type ray struct {
	open   bool         // u leaves the front of the lens and goes into the rink
	slope  geom.Vec2    // s
	a, b   geom.Vec2    // the ellipse's axes
	area   float64      // of the ellipse
	shared geom.Outline // what both outlines leave open
	middle geom.Vec2    // the centre of shared
}

// ready prepares the direction u for the aim a. It leaves the ray closed when u
// does not go out of the lens's front into the rink.
func (r *ray) ready(c *Case, a *aim, u geom.Vec3) {
	r.open = false
	if !(u.Z > 0 && u.Dot(a.axis) > 0) {
		return
	}
	r.slope = geom.Vec2{X: u.X / u.Z, Y: u.Y / u.Z}
	rho := c.Pupil / 2
	r.a = a.right.XY().Sub(r.slope.Scale(a.right.Z)).Scale(rho)
	r.b = a.up.XY().Sub(r.slope.Scale(a.up.Z)).Scale(rho)
	r.area = geom.Ellipse{A: r.a, B: r.b}.Area()
	if !(r.area > 0) || math.IsInf(r.area, 0) {
		return
	}
	d := r.slope.Scale(c.Thick)
	r.shared = c.rect().Shared(d)
	r.middle = d.Scale(0.5)
	r.open = true
}

// rect returns the hole's outline.
func (c *Case) rect() geom.RoundRect {
	return geom.RoundRect{HalfW: c.Width / 2, HalfH: c.Height / 2, Radius: c.Corner}
}

// footprint returns the pupil's ellipse on the rink face, the pupil's centre at p.
func (r *ray) footprint(p geom.Vec3) geom.Ellipse {
	return geom.Ellipse{Centre: p.XY().Sub(r.slope.Scale(p.Z)), A: r.a, B: r.b}
}

// pass returns T for the pupil's centre at p, with the gradient of T (per
// metre) as the pose shifts along the pane. The pupil must lie behind the rink
// face.
func (r *ray) pass(c *Case, a *aim, p geom.Vec3) (float64, geom.Vec2) {
	if !r.open {
		return 0, geom.Vec2{}
	}
	e := r.footprint(p)
	half := c.Pupil / 2 * a.sin // the pupil's half extent along Z
	var area float64
	var slope geom.Vec2
	if p.Z+half <= -c.Thick {
		area, slope = r.shared.Overlap(e)
	} else {
		area, slope = r.straddle(c, a, p, e)
	}
	return min(1, area/r.area), slope.Scale(1 / r.area)
}

// straddle is pass for a pupil that reaches into the pane: the rear outline
// limits only the part behind the rear face, so that part and the rest are
// measured apart.
func (r *ray) straddle(c *Case, a *aim, p geom.Vec3, e geom.Ellipse) (float64, geom.Vec2) {
	front := c.rect().Outline()
	half := c.Pupil / 2 * a.sin
	if p.Z-half >= -c.Thick {
		return front.Overlap(e)
	}
	n, h := r.rearLine(c, a, p, e.Centre)
	before := front.Cut(n, h)
	behind := r.shared.Cut(n.Scale(-1), -h)
	a1, g1 := before.Overlap(e)
	a2, g2 := behind.Overlap(e)
	return a1 + a2, g1.Add(g2)
}

// rearLine returns the line n . q = h on the rink face below which the
// footprint's points come from pupil points in front of the rear face.
// On the pupil z = p_z + g . w, w in pupil radii, q = centre + M w.
func (r *ray) rearLine(c *Case, a *aim, p geom.Vec3, centre geom.Vec2) (geom.Vec2, float64) {
	rho := c.Pupil / 2
	gx, gy := rho*a.right.Z, rho*a.up.Z
	det := r.a.Cross(r.b)
	m := geom.Vec2{ // the gradient of z on the rink face
		X: (gx*r.b.Y - gy*r.a.Y) / det,
		Y: (gy*r.a.X - gx*r.b.X) / det,
	}
	// z >= -t  <=>  -m . q <= p_z + t - m . centre
	return m.Scale(-1), p.Z + c.Thick - m.Dot(centre)
}

// pull returns a direction along the pane that every shift which opens a
// closed ray has a part of, and false when no shift opens it.
func (r *ray) pull(c *Case, a *aim, p geom.Vec3) (geom.Vec2, bool) {
	if !r.open {
		return geom.Vec2{}, false
	}
	e := r.footprint(p)
	half := c.Pupil / 2 * a.sin
	var n geom.Vec2
	apart := false
	switch {
	case p.Z+half <= -c.Thick:
		if r.shared.Empty() {
			return geom.Vec2{}, false
		}
		n, apart = geom.Apart(e, &r.shared)
	case p.Z-half >= -c.Thick:
		front := c.rect().Outline()
		n, apart = geom.Apart(e, &front)
	default:
		line, h := r.rearLine(c, a, p, e.Centre)
		front := c.rect().Outline()
		before, behind := front.Cut(line, h), r.shared.Cut(line.Scale(-1), -h)
		if n, apart = geom.Apart(e, &before, &behind); !apart {
			n, apart = geom.Apart(e, &front)
		}
	}
	if apart {
		return n, true
	}
	d := r.middle.Sub(e.Centre) // they touch without sharing area: toward the middle
	return d, d.Len() > 0
}
