package sight

import (
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/arena"
)

// Eye is where a hole looks from: its centre on the pane's rink face, in the
// rink's frame, metres and unit vectors.
type Eye struct {
	At    geom.Vec2 // in plan
	Z     float64   // above the ice, metres
	Along geom.Vec2 // toward rising station, the camera's right
	In    geom.Vec2 // into the rink, square to the pane
}

// EyeOf returns the eye of an opening, which stands back from the boards' rink
// face by its setback.
func EyeOf(a arena.Arena, o arena.Opening) Eye {
	at := o.Hole.Station
	in := a.Rink.Normal(at)
	return Eye{
		At: a.Rink.Point(at).Sub(in.Scale(o.Setback.Value.Metres())), Z: o.Hole.Height.Metres(),
		Along: a.Rink.Tangent(at), In: in,
	}
}

// toward returns the direction in the hole frame from the eye to a point of the
// rink at height z, metres; not of unit length.
func (e Eye) toward(p geom.Vec2, z float64) geom.Vec3 {
	d := p.Sub(e.At)
	return geom.Vec3{X: d.Dot(e.Along), Y: z - e.Z, Z: d.Dot(e.In)}
}
