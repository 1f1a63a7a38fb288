package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// planeSteps bounds a search in the plane: each cut through the centre of
// gravity leaves at most 1 - 1/e of the area (Grunbaum), so that this many
// shrink it by 1e-30 and more.
const planeSteps = 150

// patch is a convex polygon of shifts that may still hold the best one.
type patch struct {
	n int
	p [planeSteps + 8]geom.Vec2
}

func boxPatch(lo, hi geom.Vec2) patch {
	var p patch
	p.n = 4
	p.p[0], p.p[1], p.p[2], p.p[3] = lo, geom.Vec2{X: hi.X, Y: lo.Y}, hi, geom.Vec2{X: lo.X, Y: hi.Y}
	return p
}

// centre returns the patch's centre of gravity, its area and its diameter's upper bound.
func (p *patch) centre() (at geom.Vec2, area, size float64) {
	o := p.p[0]
	var sum geom.Vec2
	lo, hi := o, o
	for i := 1; i < p.n; i++ {
		q := p.p[i]
		lo.X, lo.Y = min(lo.X, q.X), min(lo.Y, q.Y)
		hi.X, hi.Y = max(hi.X, q.X), max(hi.Y, q.Y)
		if i+1 < p.n {
			a, b := q.Sub(o), p.p[i+1].Sub(o)
			w := a.Cross(b)
			area += w / 2
			sum = sum.Add(a.Add(b).Scale(w / 6))
		}
	}
	if area <= 0 {
		return lo.Add(hi).Scale(0.5), 0, hi.Sub(lo).Len()
	}
	return o.Add(sum.Scale(1 / area)), area, hi.Sub(lo).Len()
}

// keep leaves of the patch the half-plane n . q >= h.
func (p *patch) keep(n geom.Vec2, h float64) {
	var out patch
	for i := range p.n {
		a, b := p.p[i], p.p[(i+1)%p.n]
		fa, fb := n.Dot(a)-h, n.Dot(b)-h
		if fa >= 0 && out.n < len(out.p) {
			out.p[out.n] = a
			out.n++
		}
		if (fa >= 0) != (fb >= 0) && out.n < len(out.p) {
			out.p[out.n] = a.Add(b.Sub(a).Scale(fa / (fa - fb)))
			out.n++
		}
	}
	*p = out
}

// bound returns the largest value that a tangent at x, value v and slope d,
// takes on the patch.
func (p *patch) bound(x geom.Vec2, v float64, d geom.Vec2) float64 {
	most := math.Inf(-1)
	for i := range p.n {
		most = max(most, v+d.Dot(p.p[i].Sub(x)))
	}
	return most
}

// bestXY returns the shift with the largest worst T at a depth, and that T.
// With bound set the lens must clear the pane; false when it nowhere does.
// Each look cuts the patch along the gradient (the root of the worst T is
// concave where the lens is allowed) or along the wall that the lens cuts.
func (s *stance) bestXY(zf float64, bounded bool) (at geom.Vec2, t float64, ok bool) {
	lo, hi, some := s.box(zf)
	if !some {
		return geom.Vec2{}, 0, false
	}
	p := boxPatch(lo, hi)
	b := s.body(zf)
	best := -1.0
	for range planeSteps {
		x, area, size := p.centre()
		if p.n < 3 || area <= 0 || size < 1e-11 {
			break
		}
		if bounded {
			if deep, n := s.overlap(&b, x); deep > 0 {
				p.keep(n.Scale(-1), deep-n.Dot(x))
				continue
			}
		}
		m := s.mark(x, zf)
		if m.root > best {
			at, best, ok = x, m.root, true
		}
		if m.dead || m.root >= 1 || m.rise.Len() == 0 {
			break
		}
		p.keep(m.rise, m.rise.Dot(x))
		if m.root > 0 && p.bound(x, m.root, m.rise)-best < settled {
			break
		}
	}
	return at, best * max(0, best), ok
}
