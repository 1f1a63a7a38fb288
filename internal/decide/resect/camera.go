package resect

import (
	"math"

	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// The numbers that tell a camera, in the order in which the fit keeps them: metres,
// radians, and the logarithm of the focal length in pixels.
const (
	atStation = iota
	atHeight
	atBack // of the eye behind the hole's rink face, along the axis
	atPan
	atTilt
	atRoll
	atFocal
	numbers // how many
)

// glass is where holes can be: on the boards' curve, so far behind it.
type boards struct {
	rink rink.Rink
	back float64 // of the glass's rink face behind the boards', metres
}

// mount is the hole frame at a place on the glass.
func (b boards) mount(station, height float64) frame.Mount {
	s := unit.Length(station)
	n, t := b.rink.Normal(s), b.rink.Tangent(s)
	p := b.rink.Point(s).Sub(n.Scale(b.back))
	return frame.Mount{
		Origin: geom.Vec3{X: p.X, Y: p.Y, Z: height},
		Along:  geom.Vec3{X: t.X, Y: t.Y}, In: geom.Vec3{X: n.X, Y: n.Y},
	}
}

// lens is a camera that numbers tell.
type lens struct {
	frame.Camera
	focal float64 // pixels
}

func (b boards) lens(x []float64) lens {
	m := b.mount(x[atStation], x[atHeight])
	right, up, forward := frame.Axes(x[atPan], x[atTilt])
	sin, cos := math.Sincos(x[atRoll])
	right, up = right.Scale(cos).Add(up.Scale(sin)), up.Scale(cos).Sub(right.Scale(sin))
	return lens{frame.Camera{
		Eye:   m.Point(forward.Scale(-x[atBack])),
		Right: m.Direction(right), Up: m.Direction(up), Forward: m.Direction(forward),
	}, math.Exp(x[atFocal])}
}

// nearest is the depth in metres below which a place counts as this near: what lies at
// the eye or behind it is then far outside the frame.
const nearest = 0.05

// sees returns where a place lies in a frame, in pixels from its middle, y down.
func (l lens) sees(p geom.Vec3) (x, y float64) {
	v := l.View(p)
	depth := max(v.Z, nearest)
	return l.focal * v.X / depth, -l.focal * v.Y / depth
}

// attitude returns pan, tilt and roll of a camera at a mount from its right and its
// forward in the rink's frame.
func attitude(m frame.Mount, right, forward geom.Vec3) (pan, tilt, roll float64) {
	pan = math.Atan2(forward.Dot(m.Along), forward.Dot(m.In))
	tilt = math.Asin(max(-1, min(1, forward.Z)))
	level, up, _ := frame.Axes(pan, tilt)
	return pan, tilt, math.Atan2(right.Dot(m.Direction(up)), right.Dot(m.Direction(level)))
}
