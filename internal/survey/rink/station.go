package rink

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// Wrap returns the same place's station in [0, perimeter), in metres.
func (r Rink) Wrap(s unit.Length) unit.Length {
	per := r.Perimeter()
	if s >= 0 && s < per {
		return s
	}
	s = unit.Length(math.Mod(float64(s), float64(per)))
	if s < 0 {
		s += per
	}
	if s >= per { // -1e-20 + per rounds to per
		return 0
	}
	return s
}

// Apart returns the shorter way along the boards from station a to station b,
// positive toward rising stations.
func (r Rink) Apart(a, b unit.Length) unit.Length {
	return unit.Length(math.Remainder(float64(b-a), float64(r.Perimeter())))
}

// Point returns the point of the boards' rink face at a station, in metres in
// the rink's frame. Any finite station is wrapped first.
func (r Rink) Point(s unit.Length) geom.Vec2 {
	p, _ := r.at(s)
	return p
}

// Normal returns the unit normal at a station, pointing into the rink. Where a
// straight meets an arc both agree; at a corner of radius 0 it is the later side's.
func (r Rink) Normal(s unit.Length) geom.Vec2 {
	_, n := r.at(s)
	return n
}

// Tangent returns the unit tangent at a station, toward rising station.
func (r Rink) Tangent(s unit.Length) geom.Vec2 {
	_, n := r.at(s)
	return geom.Vec2{X: n.Y, Y: -n.X}
}

// at returns point and inward normal. The half toward end A is the other one
// turned by half a turn.
func (r Rink) at(station unit.Length) (p, n geom.Vec2) {
	f, s := r.frame(), r.Wrap(station).Metres()
	if h := f.half(); s >= h {
		p, n = f.bHalf(s - h)
		return p.Scale(-1), n.Scale(-1)
	}
	return f.bHalf(s)
}

// bHalf walks from the red line at the benches round end B to the red line at
// the boxes; s is in [0, half).
func (f frame) bHalf(s float64) (p, n geom.Vec2) {
	if s < f.a {
		return geom.Vec2{X: s, Y: -f.b - f.r}, geom.Vec2{Y: 1}
	}
	s -= f.a
	if q := f.arc(); s < q {
		sin, cos := math.Sincos(s / f.r)
		return geom.Vec2{X: f.a + f.r*sin, Y: -f.b - f.r*cos}, geom.Vec2{X: -sin, Y: cos}
	}
	s -= f.arc()
	if s < 2*f.b {
		return geom.Vec2{X: f.a + f.r, Y: s - f.b}, geom.Vec2{X: -1}
	}
	s -= 2 * f.b
	if q := f.arc(); s < q {
		sin, cos := math.Sincos(s / f.r)
		return geom.Vec2{X: f.a + f.r*cos, Y: f.b + f.r*sin}, geom.Vec2{X: -cos, Y: -sin}
	}
	s -= f.arc()
	return geom.Vec2{X: f.a - s, Y: f.b + f.r}, geom.Vec2{Y: -1}
}

// Contains reports whether p (metres) lies on the ice, the boards' line included.
func (r Rink) Contains(p geom.Vec2) bool {
	f := r.frame()
	dx, dy := math.Abs(p.X)-f.a, math.Abs(p.Y)-f.b
	if dx > 0 && dy > 0 {
		return dx*dx+dy*dy <= f.r*f.r
	}
	return dx <= f.r && dy <= f.r
}
