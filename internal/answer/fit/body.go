package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// body is the part of the lens that lies in the pane when its foremost point
// stands at depth zf, -t < zf <= 0: the endless cylinder from the nose back,
// cut by the rear face. It is convex; it clears the pane when its shadow on the
// rink face lies inside the hole's outline.
type body struct {
	aim    *aim
	radius float64 // of the nose
	noseZ  float64 // of the nose's centre
	rear   float64 // Z of the rear face, -t
	widest float64 // cosine of the nose rim's last angle from fore that is still in the slab
}

func (s *stance) body(zf float64) body {
	b := body{aim: &s.aim, radius: s.c.Nose / 2, rear: -s.c.Thick}
	b.noseZ = zf - b.radius*s.aim.sin
	b.widest = -1
	if low := b.rear - b.noseZ; low > -b.radius*s.aim.sin {
		b.widest = min(1, low/(b.radius*s.aim.sin))
	}
	return b
}

// reach returns how far the shadow reaches from the nose's centre in the
// direction n, |n| = 1 (own derivation). Where n leans to the axis the rim is
// foremost, if that rim point is in the slab; else the farthest point lies on
// the rear face, on the cylinder's ellipse there or where the rim crosses it.
func (b *body) reach(n geom.Vec2) float64 {
	a := b.aim
	na := n.Dot(a.axis.XY())
	if na >= 0 {
		across := math.Sqrt(max(0, 1-na*na))
		if across > 0 && b.noseZ-b.radius*na*a.cos/across >= b.rear {
			return b.radius * across
		}
	}
	lean := na / a.cos
	alpha := n.Dot(a.fore.XY()) - a.sin*lean
	beta := n.Dot(a.side.XY())
	swing := math.Sqrt(alpha*alpha + beta*beta)
	if alpha < b.widest*swing {
		swing = alpha*b.widest + math.Abs(beta)*math.Sqrt(max(0, 1-b.widest*b.widest))
	}
	return b.radius*swing - (b.noseZ-b.rear)*lean
}

// How finely the quarter turn of a corner's normals is looked through, and how
// finely its peaks are refined, in radians: the error in depth is of second order.
const (
	cornerSteps = 24
	cornerFine  = 1e-6
)

// worst returns the largest f over the normals of one corner, and that normal;
// sx and sy are the corner's signs.
func worst(sx, sy float64, f func(n geom.Vec2) float64) (float64, geom.Vec2) {
	normal := func(q float64) geom.Vec2 {
		sin, cos := math.Sincos(q)
		return geom.Vec2{X: sx * cos, Y: sy * sin}
	}
	at, v := peaks(0, math.Pi/2, cornerSteps, cornerFine, func(q float64) float64 { return f(normal(q)) })
	return v, normal(at)
}

// touch is how deep, in metres, a lens may seem to cut the pane and still only
// touches it: a nose exactly as wide as the hole leaves a search in the plane
// no area to look in, and rounding would decide whether it enters.
const touch = 1e-12

// overlap returns how deep the lens cuts into the pane, past a touch, when the
// nose's centre stands at c, in metres, and the outward normal there; at most 0
// when it clears the pane.
func (s *stance) overlap(b *body, c geom.Vec2) (float64, geom.Vec2) {
	deepest, at := math.Inf(-1), geom.Vec2{}
	take := func(v float64, n geom.Vec2) {
		if v > deepest {
			deepest, at = v, n
		}
	}
	hw, hh, r := s.rect.HalfW, s.rect.HalfH, s.rect.Radius
	var reach [4]float64
	for i, n := range [4]geom.Vec2{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		reach[i] = b.reach(n) + n.Dot(c)
		take(reach[i]-[4]float64{hw, hw, hh, hh}[i], n)
	}
	if r == 0 {
		return deepest - touch, at
	}
	for i, sx := range [2]float64{1, -1} {
		for j, sy := range [2]float64{1, -1} {
			if reach[i] <= hw-r || reach[2+j] <= hh-r {
				continue
			}
			take(worst(sx, sy, func(n geom.Vec2) float64 {
				return b.reach(n) + n.Dot(c) - (hw-r)*math.Abs(n.X) - (hh-r)*math.Abs(n.Y) - r
			}))
		}
	}
	return deepest - touch, at
}

// spanX returns the nose centre's lowest and highest X at level tilt, Y = 0,
// at which the lens clears the pane; false when there is none.
func (s *stance) spanX(zf float64) (lo, hi float64, ok bool) {
	b := s.body(zf)
	hw, hh, r := s.rect.HalfW, s.rect.HalfH, s.rect.Radius
	tall := b.reach(geom.Vec2{Y: 1})
	if tall > hh {
		return 0, 0, false
	}
	hi = hw - b.reach(geom.Vec2{X: 1})
	lo = -hw + b.reach(geom.Vec2{X: -1})
	if r > 0 && tall > hh-r {
		hi = min(hi, -s.cornerX(&b, 1))
		lo = max(lo, s.cornerX(&b, -1))
	}
	return lo, hi, lo <= hi
}

// cornerX returns the least shift, away from the side sx, at which the shadow
// clears that side's corners: over the corner's normals the largest of
// (reach - (hh - r) sin q - r) / cos q - (hw - r).
func (s *stance) cornerX(b *body, sx float64) float64 {
	hw, hh, r := s.rect.HalfW, s.rect.HalfH, s.rect.Radius
	v, _ := worst(sx, 1, func(n geom.Vec2) float64 {
		over := b.reach(n) - (hh-r)*n.Y - r
		if math.Abs(n.X) < 1e-12 {
			return math.Inf(-1) // the top wall's normal, which no shift along X changes
		}
		return over/math.Abs(n.X) - (hw - r)
	})
	return v
}
