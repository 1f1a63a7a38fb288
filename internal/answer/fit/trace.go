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
func (c Case) Trace() *Outline { return trace(1, traceFine, c.usableAt) }

// TraceWhole traces the limit of aims at which the whole frame keeps half of its
// light: T >= 0.5 at its centre and all four corners in one pose, the camera clear
// of the pane. Right to 0.05 deg on every eighth ray, and on the safe side: see wholeAt.
func (c Case) TraceWhole() *Outline { return trace(wholeEvery, wholeFine, c.wholeAt) }

// How finely the limits are traced.
const (
	traceFine  = 0.002 * math.Pi / 180
	wholeFine  = 0.05 * math.Pi / 180
	wholeEvery = 8
)

// trace traces where a margin that falls all the way ends, on every so many-th ray.
func trace(every int, fine float64, margin func(aim) float64) *Outline {
	o := new(Outline)
	if margin(aimAt(0, 0)) < 0 {
		return o
	}
	o.traced = true
	for i := 0; i < traceRays; i += every {
		k := float64(i) / (traceRays - 1)
		l := math.Hypot(1-k, k)
		o.inverse[i] = l / math.Tan(traceRay((1-k)/l, k/l, fine, margin))
		for j := 1; i > 0 && j < every; j++ {
			f := float64(j) / float64(every)
			o.inverse[i-j] = o.inverse[i]*(1-f) + o.inverse[i-every]*f
		}
	}
	return o
}

// traceRay returns the angle from straight ahead at which the limit is met in
// the direction (cos, sin) across the pane.
func traceRay(cos, sin, fine float64, margin func(aim) float64) float64 {
	over := func(theta float64) float64 {
		st, ct := math.Sincos(theta)
		return margin(aimAt(math.Atan2(cos*st, ct), math.Asin(sin*st)))
	}
	end := over(rangeEnd)
	if end >= 0 {
		return rangeEnd
	}
	return narrow(0, rangeEnd, over(0), end, fine, over)
}

// wholeAt returns the margin of an aim over the usable mark at the frame's centre
// and corners together. It tries the best shift at the foremost depth, at the rear
// face and half way between: a better pose between them is not looked for.
func (c *Case) wholeAt(a aim) float64 {
	if play := c.mouth(&a); play < 0 {
		return play
	}
	var s stance
	c.newStance(&s, math.Atan2(a.axis.X, a.axis.Z), math.Asin(a.axis.Y), true)
	if _, fixed := c.Back.Get(); fixed || c.Pivot == Centre {
		return s.best().t - usableMark
	}
	top, best := s.top(), 0.0
	for _, zf := range []float64{top, (top - c.Thick) / 2, -c.Thick} {
		if p, ok := s.atDepth(zf); ok {
			best = max(best, p.t)
		}
		if best >= usableMark {
			break
		}
	}
	return best - usableMark
}

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
