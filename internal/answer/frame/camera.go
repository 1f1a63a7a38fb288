package frame

import (
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Mount is a hole frame placed in the rink's frame: metres, unit vectors.
type Mount struct {
	Origin geom.Vec3 // the hole's centre on the pane's rink face
	Along  geom.Vec3 // X of the hole frame: along the boards toward rising station
	In     geom.Vec3 // Z of the hole frame: into the rink
}

// MountOf returns the mount of an opening, which says what was assumed of how far
// it stands back from the boards' rink face.
func MountOf(a arena.Arena, o arena.Opening) Mount {
	station := o.Hole.Station
	n, t := a.Rink.Normal(station), a.Rink.Tangent(station)
	p := a.Rink.Point(station).Sub(n.Scale(o.Setback.Value.Metres()))
	return Mount{
		Origin: geom.Vec3{X: p.X, Y: p.Y, Z: o.Hole.Height.Metres()},
		Along:  geom.Vec3{X: t.X, Y: t.Y},
		In:     geom.Vec3{X: n.X, Y: n.Y},
	}
}

// Direction turns a vector of the hole frame into the rink's frame.
func (m Mount) Direction(v geom.Vec3) geom.Vec3 {
	return m.Along.Scale(v.X).Add(m.In.Scale(v.Z)).Add(geom.Vec3{Z: v.Y})
}

// Point turns a point of the hole frame (metres) into the rink's frame.
func (m Mount) Point(v geom.Vec3) geom.Vec3 { return m.Origin.Add(m.Direction(v)) }

// Aim is where a camera points from a mount.
type Aim struct {
	Pan, Tilt unit.Angle  // positive pan toward rising station, positive tilt up
	Distance  unit.Length // from the hole's centre to the target
}

// AimAt returns the aim from the hole's centre at a point of the rink (metres).
func (m Mount) AimAt(target geom.Vec3) Aim {
	v := target.Sub(m.Origin)
	x, z := v.Dot(m.Along), v.Dot(m.In)
	return Aim{
		Pan:      unit.Angle(math.Atan2(x, z)),
		Tilt:     unit.Angle(math.Atan2(v.Z, math.Hypot(x, z))),
		Distance: unit.Length(v.Len()),
	}
}

// Axes returns the camera's right, up and forward in the hole frame: pan
// first, then tilt, no roll: a left-handed frame.
func Axes(pan, tilt float64) (right, up, forward geom.Vec3) {
	sa, ca := math.Sincos(pan)
	sb, cb := math.Sincos(tilt)
	return geom.Vec3{X: ca, Z: -sa},
		geom.Vec3{X: -sa * sb, Y: cb, Z: -ca * sb},
		geom.Vec3{X: sa * cb, Y: sb, Z: ca * cb}
}

// Camera is a camera in the rink's frame: metres and unit vectors.
type Camera struct {
	Eye                geom.Vec3 // centre of the entrance pupil
	Right, Up, Forward geom.Vec3
	TanX, TanY         float64 // tangents of half the frame's width and height, without unit
}

// newCamera places the camera of a pose on a mount.
func newCamera(m Mount, c fit.Case, p fit.Pose) Camera {
	r, u, f := Axes(p.Pan, p.Tilt)
	return Camera{
		Eye:   m.Point(p.Nose.Sub(f.Scale(c.PupilDepth))),
		Right: m.Direction(r), Up: m.Direction(u), Forward: m.Direction(f),
		TanX: c.TanX, TanY: c.TanY,
	}
}

// View returns a point of the rink in the camera's own frame: right, up and
// forward of the eye, metres.
func (c Camera) View(p geom.Vec3) geom.Vec3 {
	v := p.Sub(c.Eye)
	return geom.Vec3{X: v.Dot(c.Right), Y: v.Dot(c.Up), Z: v.Dot(c.Forward)}
}

// Project returns where a point of the rink lies in the frame: x and y from -1
// (left, bottom) to 1 (right, top), and its depth along the axis in metres.
// ok is false for a point that is not in front of the eye.
func (c Camera) Project(p geom.Vec3) (x, y, depth float64, ok bool) {
	v := c.View(p)
	if v.Z <= 0 {
		return 0, 0, v.Z, false
	}
	return v.X / v.Z / c.TanX, v.Y / v.Z / c.TanY, v.Z, true
}

// ray returns the direction, in the rink's frame, toward a place of the frame.
func (c Camera) ray(x, y float64) geom.Vec3 {
	return c.Forward.Add(c.Right.Scale(x * c.TanX)).Add(c.Up.Scale(y * c.TanY))
}

// Direction returns the direction of an aim in the hole frame, a unit vector.
func (a Aim) Direction() geom.Vec3 {
	_, _, forward := Axes(a.Pan.Radians(), a.Tilt.Radians())
	return forward
}
