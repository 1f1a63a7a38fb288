package rink

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// Station returns the station in [0, perimeter) of the boards' point nearest
// to p (metres, on the ice or off it). Of two points equally near, the one on
// the long side; on the axis of the rink, the one on the bench side.
func (r Rink) Station(p geom.Vec2) unit.Length {
	f := r.frame()
	if p.X < 0 {
		return r.Wrap(unit.Length(f.station(p.Scale(-1)) + f.half()))
	}
	return r.Wrap(unit.Length(f.station(p)))
}

// station is Station for x >= 0.
func (f frame) station(p geom.Vec2) float64 {
	x, y := p.X, p.Y
	beyondX, beyondY := x > f.a, math.Abs(y) > f.b
	switch {
	case beyondX && beyondY && y < 0:
		return f.a + f.r*math.Atan2(x-f.a, -f.b-y)
	case beyondX && beyondY:
		return f.a + f.arc() + 2*f.b + f.r*math.Atan2(y-f.b, x-f.a)
	case beyondX, !beyondY && f.a+f.r-x < f.b+f.r-math.Abs(y):
		return f.a + f.arc() + f.b + y
	case y <= 0:
		return x
	}
	return 2*f.a + 2*f.arc() + 2*f.b - x
}

// Curved reports whether the boards at a station lie on a corner's arc.
func (r Rink) Curved(s unit.Length) bool {
	f := r.frame()
	t := math.Mod(r.Wrap(s).Metres(), f.half())
	return (t > f.a && t < f.a+f.arc()) ||
		(t > f.a+f.arc()+2*f.b && t < f.a+2*f.arc()+2*f.b)
}
