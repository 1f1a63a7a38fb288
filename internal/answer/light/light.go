// Package light answers which shutter, stop and ISO the light on this rink's
// ice asks for, as seen from each hole.
//
// The model: a survey of lux readings is interpolated over the ice, the ice is
// cut into zones in which pictures happen, and each zone's light is solved for
// the exposure that is asked for.
//
//	.------------+----+----+------------.
//	| corner     |    |    |   corner   |    an end zone holds two corners and
//	|------.     | neutral |     .------|    the slot before the net; the zones
//	| slot |     |    |    |     | slot |    overlap on purpose
//	|------'     |    |    |     '------|
//	| corner     |    |    |   corner   |
//	'------------+----+----+------------'
//
// Between the readings the light is interpolated by natural neighbours: by the
// weights of Laplace (Belikov and Semenov 1997, Hiyoshi and Sugihara 1999),
// which return each reading at its place and any even slope exactly. Outside
// the readings' convex hull the light of the hull's nearest point is taken, and
// the share of a zone that rests on this is said.
//
// Faces are upright and get less than a flat meter: their light is of readings
// taken upright, else a stated share of the flat ones. Limits: faces under helmets
// are darker still; light that
// a show or a broadcast adds is not in the survey; the hole itself is open and
// loses nothing, a low window's panel does (see package optics).
package light

import (
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// Point is one reading: a place on the ice and its light.
type Point struct {
	At  geom.Vec2 // rink frame, metres
	Lux unit.Illuminance
}
