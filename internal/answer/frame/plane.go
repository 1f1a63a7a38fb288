package frame

import (
	"image/color"
	"math"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/geom"
)

// DepthOfField returns the limits between which things look sharp, along the
// axis from the lens, for the circle of confusion that suits the sensor.
func (s *Shot) DepthOfField() (optics.Depth, error) {
	return optics.DepthOfField(s.Focal, s.Stop, s.coc, s.Focus)
}

// The lines on the ice where the plane of focus and the limits of depth of
// field meet it, drawn when [Request].Planes asks for them.
const (
	planeThick = 2.4 / 1200 // of the picture's longer side
	dashLong   = 0.6        // metres on the ice
	dashGap    = 0.5
)

var (
	focusPaint = color.NRGBA{214, 64, 178, 255}
	limitPaint = color.NRGBA{214, 64, 178, 170}
)

// planes draws the lines on the ice.
func (st stage) planes(s *Shot) []shape {
	if !s.Planes {
		return nil
	}
	var out []shape
	st.planeLine(&out, s, s.Focus.Metres(), focusPaint, 0)
	d, err := s.DepthOfField()
	if err != nil {
		return out
	}
	st.planeLine(&out, s, d.Near.Metres(), limitPaint, dashGap)
	if !d.Infinite() {
		st.planeLine(&out, s, d.Far.Metres(), limitPaint, dashGap)
	}
	return out
}

// planeLine draws where the plane at a depth along the axis meets the ice,
// dashed with gaps of so many metres; 0 for a whole line.
func (st stage) planeLine(to *[]shape, s *Shot, depth float64, paint color.NRGBA, gap float64) {
	c := st.cam
	n := c.Forward.XY()
	flat := n.Dot(n)
	if flat == 0 {
		return // looks straight down
	}
	// A point P of the ice lies in the plane when (P - eye) . forward = depth.
	foot := c.Eye.XY().Add(n.Scale((depth + c.Eye.Z*c.Forward.Z) / flat))
	along := geom.Vec2{X: -n.Y, Y: n.X}.Scale(1 / math.Sqrt(flat))
	from, end := chord(s.Arena.Rink.Outline(24), foot, along)
	piece := end - from
	if gap > 0 {
		piece = dashLong
	}
	at := func(t float64) geom.Vec3 {
		p := foot.Add(along.Scale(t))
		return geom.Vec3{X: p.X, Y: p.Y}
	}
	for t := from; t < end-dashLong/1e3; t += piece + gap {
		st.line(to, at(t), at(min(end, t+piece)), paint)
	}
}

// chord returns between which multiples of a direction a line through p runs
// inside a convex outline given counter-clockwise; from >= end for nowhere.
func chord(outline []geom.Vec2, p, along geom.Vec2) (from, end float64) {
	from, end = math.Inf(-1), math.Inf(1)
	for i, a := range outline {
		e := outline[(i+1)%len(outline)].Sub(a)
		inside, rate := e.Cross(p.Sub(a)), e.Cross(along)
		switch {
		case rate > 0:
			from = max(from, -inside/rate)
		case rate < 0:
			end = min(end, -inside/rate)
		case inside < 0:
			return 0, 0
		}
	}
	return from, end
}

// line draws a straight line of the rink, as thick everywhere on the screen.
func (st stage) line(to *[]shape, a, b geom.Vec3, paint color.NRGBA) {
	p, q := st.cam.View(a), st.cam.View(b)
	for _, side := range st.cam.sides() {
		dp, dq := side.depth(p), side.depth(q)
		switch {
		case dp < 0 && dq < 0:
			return
		case dp < 0:
			p = p.Add(q.Sub(p).Scale(dp / (dp - dq)))
		case dq < 0:
			q = q.Add(p.Sub(q).Scale(dq / (dq - dp)))
		}
	}
	at := func(v geom.Vec3) geom.Vec2 { return st.screen.place(v.X/v.Z/st.cam.TanX, v.Y/v.Z/st.cam.TanY) }
	u, v := at(p), at(q)
	d := v.Sub(u)
	if d.Len() == 0 {
		return
	}
	half := geom.Vec2{X: -d.Y, Y: d.X}.Scale(planeThick * max(st.screen.w, st.screen.h) / 2 / d.Len())
	*to = append(*to, newShape([]geom.Vec2{u.Add(half), v.Add(half), v.Sub(half), u.Sub(half)}, paint))
}
