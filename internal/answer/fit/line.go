package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// settled is how near the root of the worst T must come to its proved upper
// bound before a search ends.
const settled = 1e-10

// lineSteps bounds a search along X; typical ones take six.
const lineSteps = 100

// narrowest is the width, in metres, at which a search along X gives up: what
// a ray opens within it is far below rounding.
const narrowest = 1e-12

// firstStride is the first step from the guess, as a share of the range.
const firstStride = 1.0 / 32

// post is one end of the bracket in a search along X.
type post struct {
	x     float64
	v, d  float64 // value and slope there
	ray   int     // the worst one there
	seen  bool    // looked at
	known bool    // looked at, and every ray open there
}

// bracket holds a best shift between two posts.
type bracket struct {
	l, h   post
	stride float64
	same   int // looks in a row that moved the same post, below 0 the high one
}

// bestX returns the shift along X, between lo and hi at Y = 0, with the
// largest worst T at a depth, and that T. The root of the worst T is concave
// there: the tangents at two points bound it from above, and the search ends
// when the bound is met.
func (s *stance) bestX(zf, lo, hi, guess float64) (x, t float64) {
	b := bracket{l: post{x: lo}, h: post{x: hi}, stride: (hi - lo) * firstStride}
	x = clamp(guess, lo, hi)
	at, best := x, -1.0
	for range lineSteps {
		m := s.mark(geom.Vec2{X: x}, zf)
		if m.root > best {
			at, best = x, m.root
		}
		if m.dead || m.rise.X == 0 || m.root >= 1 {
			break
		}
		b.look(post{x: x, v: m.root, d: m.rise.X, ray: m.ray, seen: true, known: m.root > 0})
		next, bound := b.next(x)
		if bound-best < settled || b.l.x >= b.h.x || b.h.x-b.l.x <= narrowest {
			break
		}
		x = next
	}
	return at, best * max(0, best)
}

// look moves the post on whose side the best does not lie.
func (b *bracket) look(p post) {
	if p.d > 0 {
		b.l, b.same = p, max(b.same, 0)+1
	} else {
		b.h, b.same = p, min(b.same, 0)-1
	}
}

// next returns where to look after x, and an upper bound on the value.
func (b *bracket) next(x float64) (next, bound float64) {
	l, h := &b.l, &b.h
	mid := l.x + (h.x-l.x)/2
	switch {
	case l.known && h.known:
		meet := l.x + (h.v-l.v-h.d*(h.x-l.x))/(l.d-h.d)
		bound = l.v + l.d*(meet-l.x)
		next = meet
		if l.ray == h.ray { // one smooth hill: the secant on its slopes
			next = l.x + (h.x-l.x)*l.d/(l.d-h.d)
		}
		return b.fetch(next, x, mid), bound
	case l.known && !h.seen:
		b.stride *= 2
		return min(l.x+b.stride, h.x), math.Inf(1)
	case h.known && !l.seen:
		b.stride *= 2
		return max(h.x-b.stride, l.x), math.Inf(1)
	}
	return mid, math.Inf(1)
}

// fetch oversteps or halves when one post does not move, so that both close in.
func (b *bracket) fetch(next, last, mid float64) float64 {
	switch {
	case b.same > 3 || b.same < -3:
		next = mid
	case b.same > 1 || b.same < -1:
		next += (next - last) / 2
	}
	if !(next > b.l.x && next < b.h.x) {
		return mid
	}
	return next
}
