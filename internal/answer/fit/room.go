package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// clears reports whether the lens clears the pane: the nose's centre at the
// shift at, the foremost point at depth zf. A nose wholly behind the rear face
// always does.
func (s *stance) clears(at geom.Vec2, zf float64) bool {
	if zf <= -s.c.Thick {
		return true
	}
	b := s.body(zf)
	deep, _ := s.overlap(&b, at)
	return deep <= 0
}

// room reports whether some shift clears the pane at a depth in the slab.
func (s *stance) room(zf float64) bool {
	_, ok := s.berth(zf)
	return ok
}

// berth returns a shift that clears the pane at a depth in the slab, and false
// when there is none.
func (s *stance) berth(zf float64) (geom.Vec2, bool) {
	if s.level {
		lo, hi, ok := s.spanX(zf)
		return geom.Vec2{X: clamp(s.home().X, lo, hi)}, ok
	}
	b := s.body(zf)
	// The shadow holds the foremost point, which must lie in the hole.
	hole := geom.Vec2{X: s.rect.HalfW, Y: s.rect.HalfH}
	p := boxPatch(s.home().Sub(hole), s.home().Add(hole))
	for range planeSteps {
		x, area, _ := p.centre()
		if p.n < 3 || area <= 0 {
			break
		}
		deep, n := s.overlap(&b, x)
		if deep <= 0 {
			return x, true
		}
		p.keep(n.Scale(-1), deep-n.Dot(x))
	}
	return geom.Vec2{}, false
}

// depthTolerance is how finely depths are found, in metres: far below what
// moves T by 1e-6.
const depthTolerance = 1e-10

// top returns the depth nearest the rink face at which some shift clears the
// pane. Drawing a lens back along its axis keeps it clear, so that every depth
// behind has room too. When the nose cannot enter at all it is the rear face.
func (s *stance) top() float64 {
	if s.front <= -s.c.Thick || s.room(s.front) {
		return s.front
	}
	return lastGood(-s.c.Thick, s.front, depthTolerance, s.room)
}

// lastGood returns the largest value from good, where ok holds or is taken to
// hold, to bad, where it does not, to within fine. Bad may lie below good.
func lastGood(good, bad, fine float64, ok func(x float64) bool) float64 {
	for math.Abs(bad-good) > fine {
		mid := good + (bad-good)/2
		if mid == good || mid == bad {
			break
		}
		if ok(mid) {
			good = mid
		} else {
			bad = mid
		}
	}
	return good
}

// gallop is lastGood for a good stretch that is likely short: it strides from
// good, each stride four times the last, before it halves.
func gallop(good, bad, fine float64, ok func(x float64) bool) float64 {
	for stride := math.Copysign(4*fine, bad-good); math.Abs(bad-good) > math.Abs(stride); stride *= 4 {
		next := good + stride
		if !ok(next) {
			bad = next
			break
		}
		good = next
	}
	return lastGood(good, bad, fine, ok)
}

// home returns the nose's centre at which the foremost point stands over the
// hole's centre; straight ahead, where the whole rim is foremost, the nose's
// centre itself does.
func (s *stance) home() geom.Vec2 {
	f := s.aim.fore.XY().Scale(-s.c.Nose / 2)
	if s.level {
		f.Y = 0
	}
	return f
}

// clamp returns x moved into lo..hi.
func clamp(x, lo, hi float64) float64 { return max(lo, min(hi, x)) }
