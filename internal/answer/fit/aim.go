package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// aim is where the axis points, with the camera's own directions.
type aim struct {
	axis, right, up geom.Vec3
	fore            geom.Vec3 // unit vector in the nose disc toward its foremost point; zero straight ahead
	side            geom.Vec3 // unit vector in the nose disc, parallel to the pane, square to fore
	cos, sin        float64   // of the angle between the axis and the hole's normal
}

// aimAt returns the aim at pan and tilt, in radians: pan first, then tilt, no
// roll, so that the camera's right stays level.
func aimAt(pan, tilt float64) aim {
	sp, cp := math.Sincos(pan)
	st, ct := math.Sincos(tilt)
	a := aim{
		axis:  geom.Vec3{X: sp * ct, Y: st, Z: cp * ct},
		right: geom.Vec3{X: cp, Z: -sp},
		up:    geom.Vec3{X: -sp * st, Y: ct, Z: -cp * st},
		cos:   cp * ct,
	}
	a.sin = math.Hypot(a.axis.X, a.axis.Y)
	a.side = geom.Vec3{Y: 1}
	if a.sin > 0 {
		a.fore = geom.Vec3{X: -a.axis.X * a.cos / a.sin, Y: -a.axis.Y * a.cos / a.sin, Z: a.sin}
		a.side = geom.Vec3{X: -a.axis.Y / a.sin, Y: a.axis.X / a.sin}
	}
	return a
}

// toward returns the direction to a frame point, x and y in tangents from the axis.
func (a *aim) toward(x, y float64) geom.Vec3 {
	return a.axis.Add(a.right.Scale(x)).Add(a.up.Scale(y))
}
