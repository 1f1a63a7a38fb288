package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// traceRays is how many directions of a quarter plane an [Outline] is traced
// in, its two ends included.
const traceRays = 65

// Outline is the traced limit of usable aims: all directions of the axis,
// connected with straight ahead, in which T >= 0.5 at the frame's centre, the
// pose chosen for the centre alone and the camera clear of the pane. It is symmetric about pan = 0 and tilt = 0.
//
// It lives in the plane of slopes s = (u_x/u_z, u_y/u_z), where it is
// star-shaped about straight ahead. Between traced rays 1/|s| is interpolated
// over the slope direction (1-k, k), which is exact where the limit is a
// straight line; the zero value contains nothing.
type Outline struct {
	inverse [traceRays]float64 // 1 / (|s_x| + |s_y|) at the limit, for k = i/(traceRays-1)
	traced  bool
}

// Trace traces the limit of usable aims, right to 0.002 deg on its rays.
func (c Case) Trace() *Outline {
	o := new(Outline)
	if c.usableMargin(0) < 0 {
		return o
	}
	o.traced = true
	for i := range traceRays {
		k := float64(i) / (traceRays - 1)
		l := math.Hypot(1-k, k)
		theta := c.traceRay((1-k)/l, k/l)
		o.inverse[i] = l / math.Tan(theta)
	}
	return o
}

// traceRay returns the angle from straight ahead at which the limit is met in
// the direction (cos, sin) across the pane. T falls all the way.
func (c *Case) traceRay(cos, sin float64) float64 {
	over := func(theta float64) float64 {
		st, ct := math.Sincos(theta)
		return c.usableAt(aimAt(math.Atan2(cos*st, ct), math.Asin(sin*st)))
	}
	end := over(rangeEnd)
	if end >= 0 {
		return rangeEnd
	}
	return narrow(0, rangeEnd, over(0), end, traceFine, over)
}

// traceFine is how finely a ray of an outline is traced.
const traceFine = 0.002 * math.Pi / 180

// Contains reports whether an aim lies inside the outline; both angles within
// +-90 deg.
func (o *Outline) Contains(pan, tilt unit.Angle) bool {
	sp, cp := math.Sincos(pan.Radians())
	st, ct := math.Sincos(tilt.Radians())
	return o.ContainsDirection(geom.Vec3{X: sp * ct, Y: st, Z: cp * ct})
}

// ContainsDirection is Contains for a direction in the hole frame, of any length.
func (o *Outline) ContainsDirection(u geom.Vec3) bool {
	if !o.traced || !(u.Z > 0) {
		return false
	}
	x, y := math.Abs(u.X), math.Abs(u.Y)
	sum := x + y
	if sum == 0 {
		return true
	}
	k := y / sum * (traceRays - 1)
	i := min(int(k), traceRays-2)
	f := k - float64(i)
	return sum*(o.inverse[i]*(1-f)+o.inverse[i+1]*f) <= u.Z
}
