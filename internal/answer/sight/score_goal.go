package sight

import (
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/play"
)

// goalBox is a goal: two posts and a crossbar at the goal line, and a box of
// net behind it, open toward the ice where it is played at.
//
//	  ________  crossbar   seen from above     post o------+
//	 /      /|                                      :      | net
//	+------+ |  net                     mouth -->   :      |
//	|      | /                                      :      |
//	|______|/                                  post o------+
type goalBox struct {
	play.Goal
	depth, half, high float64 // of the net; half the width; crossbar's height
}

// barRadius is half the diameter of posts and crossbar, metres ([rink.PostRadius]). Pipes
// are taken about the edges of the goal's clear width, so that a post's shadow lies half
// its diameter too far in: less than a tenth of a player's width.
const barRadius = 0.0302

func goalBoxes(l play.Layout) []goalBox {
	var out []goalBox
	for _, g := range l.Goals() {
		out = append(out, goalBox{g, l.GoalDepth, l.GoalHalf, l.GoalHeight})
	}
	return out
}

// hide lowers what is seen of head and trunk by this goal's net and crossbar,
// and casts the shadows of its posts. Net and bar work by the product rule:
// they are taken as independent of what else hides the subject.
func (g *goalBox) hide(b *block, e *Eye, s *subject, ux, uy, d float64, head, trunk *float64) {
	// The sieve: does the sight line pass the goal's round-about circle?
	cx, cy := g.Line.X+g.In.X*g.depth/2-e.At.X, g.Line.Y+g.In.Y*g.depth/2-e.At.Y
	a, c := cx*ux+cy*uy, cy*ux-cx*uy
	r := g.half + g.depth/2 + widestHalf
	if a < -r || a > d+r || c > r || c < -r {
		return
	}
	for _, y := range [2]float64{g.half, -g.half} {
		px, py := g.Line.X-y*g.In.Y-e.At.X, g.Line.Y+y*g.In.X-e.At.Y
		if a := px*ux + py*uy; a > 0 && a < d {
			b.shadows.cast(a, py*ux-px*uy, barRadius, g.high, e.Z, d)
		}
	}
	neck := s.height - headHigh
	low := trunkLow * s.height
	headMid, trunkMid := (neck+s.height)/2, (low+neck)/2
	*head *= g.net(e, s, headMid, b.judge.NetPass)
	*trunk *= g.net(e, s, trunkMid, b.judge.NetPass)
	if bar := g.bar(e, s, ux, uy); bar.ok {
		*head *= 1 - bar.covers(headHalf, neck, s.height)
		*trunk *= 1 - bar.covers(trunkHalf, low, neck)
	}
}

// net returns what is left of a sight line to a height on the subject's axis
// after the layers of net that it crosses.
func (g *goalBox) net(e *Eye, s *subject, z, pass float64) float64 {
	// In the goal's own frame: x from the mouth into the net.
	x0, y0 := g.Local(e.At)
	x1, y1 := g.Local(geom.Vec2{X: s.x, Y: s.y})
	z0, z1 := e.Z, z
	left := 1.0
	cross := func(t float64, inside bool) {
		if t > 0 && t < 1 && inside {
			left *= pass
		}
	}
	at := func(p, q, t float64) float64 { return p + (q-p)*t }
	within := func(x float64) bool { return x > 0 && x < g.depth }
	t := (g.depth - x0) / (x1 - x0) // the back
	cross(t, abs(at(y0, y1, t)) < g.half && at(z0, z1, t) < g.high)
	for _, y := range [2]float64{g.half, -g.half} { // the sides
		t = (y - y0) / (y1 - y0)
		cross(t, within(at(x0, x1, t)) && at(z0, z1, t) < g.high)
	}
	t = (g.high - z0) / (z1 - z0) // the top
	cross(t, within(at(x0, x1, t)) && abs(at(y0, y1, t)) < g.half)
	return left
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

// barShadow is the crossbar as the lens sees it: where along its length and
// how far off the sight line to the subject crosses it.
type barShadow struct {
	ok     bool
	mid    float64 // height on the subject's plane that the bar hides
	half   float64 // half the hidden height there
	u1, u2 float64 // sides of the bar on the subject's plane
}

// bar casts the crossbar onto the subject's plane. Where the sight line runs
// along the bar (within about a degree) it is left out.
func (g *goalBox) bar(e *Eye, s *subject, ux, uy float64) barShadow {
	const alongBar = 0.02
	in := ux*g.In.X + uy*g.In.Y
	if abs(in) < alongBar {
		return barShadow{}
	}
	past, along := g.Local(e.At)
	a := -past / in // along the sight line, where it crosses the goal line
	d := (s.x-e.At.X)*ux + (s.y-e.At.Y)*uy
	if a <= nearest || a >= d {
		return barShadow{}
	}
	y := along + a*(uy*g.In.X-ux*g.In.Y) // where on the bar
	k := d / a
	// A step along the bar moves in k sideways on the plane.
	e1, e2 := (-g.half-y)*in*k, (g.half-y)*in*k
	return barShadow{
		ok: true, mid: e.Z + (g.high-e.Z)*k, half: barRadius * k,
		u1: min(e1, e2), u2: max(e1, e2),
	}
}

// covers returns the share of a rectangle that the bar hides.
func (b barShadow) covers(half, low, high float64) float64 {
	w := min(half, b.u2) - max(-half, b.u1)
	h := min(high, b.mid+b.half) - max(low, b.mid-b.half)
	if w <= 0 || h <= 0 {
		return 0
	}
	return w * h / (2 * half * (high - low))
}
