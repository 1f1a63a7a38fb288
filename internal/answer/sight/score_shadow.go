package sight

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/play"
)

// The parts of a subject that a picture needs, as upright rectangles square to
// the sight line at the subject's distance: the head and the trunk. Each
// counts for half. Widths in metres; the trunk from 0.45 of the height up to
// the shoulders, the head above.
const (
	headHalf   = 0.12
	trunkHalf  = 0.25
	headHigh   = 0.27
	trunkLow   = 0.45
	widestHalf = trunkHalf
)

// A person in the way is two upright cylinders: the body up to the shoulders
// and the head. Radii in metres; the body's is the person's own.
const (
	headRadius = 0.14
	shoulder   = 0.82 // share of the height
)

// shadows are the outlines of what stands before a subject, cast from the lens
// onto the upright plane through the subject: each covers from side u1 to side
// u2 everything below v.
type shadows struct {
	n         int
	u1, u2, v [maxShadows]float64
	cut       [2*maxShadows + 2]float64
}

// maxShadows holds two for each of the other persons and the goals' posts.
const maxShadows = 2*play.People + 8

// cast adds the shadow of an upright cylinder of radius r and a top height,
// its axis a metres along the sight line and c to its left, from a lens at
// height z onto the plane at distance d. Exact at the sides; the top is that
// of the axis (the rim's nearer and farther parts average to it).
func (s *shadows) cast(a, c, r, top, z, d float64) {
	q := a*a + c*c - r*r
	if q <= 0 || s.n == maxShadows {
		return // the lens stands inside it: a body against the glass, met by open
	}
	// tan(x +- y) with tan x = c/a and tan y = r/sqrt(q).
	root := math.Sqrt(q)
	left, right := a*root-c*r, a*root+c*r
	if left <= 0 || right <= 0 {
		return
	}
	k := s.n
	s.u1[k] = d * (c*root - a*r) / right
	s.u2[k] = d * (c*root + a*r) / left
	s.v[k] = z + (top-z)*d/a
	s.n++
}

// left returns the share of the rectangle |u| <= half, low <= v <= high that
// is in no shadow and above the floor line. Exact for the shadows given: the
// rectangle is cut at every shadow's sides, and in each strip the highest
// shadow counts.
func (s *shadows) left(half, low, high, floor float64) float64 {
	base := max(low, floor)
	if base >= high {
		return 0
	}
	n := 0
	for k := range s.n {
		if s.u1[k] >= half || s.u2[k] <= -half || s.v[k] <= base {
			continue
		}
		for _, u := range [2]float64{s.u1[k], s.u2[k]} {
			if u > -half && u < half {
				j := n
				for ; j > 0 && s.cut[j-1] > u; j-- {
					s.cut[j] = s.cut[j-1]
				}
				s.cut[j] = u
				n++
			}
		}
	}
	s.cut[n] = half
	area, from := 0.0, -half
	for j := 0; j <= n; j++ {
		to := s.cut[j]
		if to > from {
			area += (to - from) * (high - s.highest((from+to)/2, base, high))
		}
		from = to
	}
	return area / (2 * half * (high - low))
}

// highest returns the top of the shadows at side u, within [base, high].
func (s *shadows) highest(u, base, high float64) float64 {
	for k := range s.n {
		if s.u1[k] < u && s.u2[k] > u && s.v[k] > base {
			base = s.v[k]
		}
	}
	return min(base, high)
}

// open returns the share of loaded moment i's subject that is seen.
func (b *block) open(v *view, i int, ux, uy, d float64) float64 {
	s := &b.subject[i]
	e := &v.eye
	sh := &b.shadows
	sh.n = 0
	row := (b.from + i) * play.People
	xs, ys := b.set.X[row:row+play.People], b.set.Y[row:row+play.People]
	reach := widestHalf / d
	for p := range xs {
		bx, by := float64(xs[p])-e.At.X, float64(ys[p])-e.At.Y
		a := bx*ux + by*uy
		if a <= 0 || a >= d || p == s.place {
			continue
		}
		c := by*ux - bx*uy
		r := b.radius[p]
		if w := r*sideways + reach*a; c > w || c < -w {
			continue
		}
		if a*a+c*c < (r+touching)*(r+touching) {
			return 0 // pressed against the glass before the lens
		}
		top := float64(b.set.Height[row+p])
		sh.cast(a, c, r, shoulder*top, e.Z, d)
		sh.cast(a, c, headRadius, top, e.Z, d)
	}
	head, trunk := 1.0, 1.0
	for k := range b.goals {
		b.goals[k].hide(b, e, s, ux, uy, d, &head, &trunk)
	}
	floor := b.floor(e, s)
	neck := s.height - headHigh
	if sh.n == 0 && floor < trunkLow*s.height {
		return (head + trunk) / 2
	}
	head *= sh.left(headHalf, neck, s.height, floor)
	trunk *= sh.left(trunkHalf, trunkLow*s.height, neck, floor)
	return (head + trunk) / 2
}

// floor returns the height at the subject below which the boards' edge hides
// everything: the line from the eye over the edge, carried on.
func (b *block) floor(e *Eye, s *subject) float64 {
	share := b.ledge.walls.entry(e.At, geom.Vec2{X: s.x, Y: s.y})
	if share == 0 {
		return math.Inf(-1) // flush with the boards
	}
	return e.Z - (e.Z-b.ledge.top)/share
}

const (
	// sideways widens the first sieve for the slant of a near body's tangents.
	sideways = 1.15
	// touching is how near the lens a body hides everything, metres.
	touching = 0.05
)
