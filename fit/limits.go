package fit

import (
	"math"

	"example.org/rinkpane/unit"
)

// The marks of the limits (design).
const (
	clearMark  = 0.95 // T at every frame corner
	usableMark = 0.5  // T at the frame's centre
)

// The range search (contract): from straight ahead in steps of at most 0.25
// deg to 89.9 deg, the step that fails halved to well below 0.01 deg.
const (
	rangeEnd  = 89.9 * math.Pi / 180
	rangeStep = 0.25 * math.Pi / 180
	rangeFine = 1e-6 * math.Pi / 180
)

// Limits returns how far the lens can pan at level tilt and tilt at zero pan.
func (c Case) Limits() Limits {
	turned := c.transposed()
	return Limits{Fits: c.Fits(), Pan: c.panLimits(), Tilt: turned.panLimits()}
}

func (c *Case) panLimits() AxisLimits {
	return AxisLimits{
		Body:   unbroken(c.bodyClears),
		Clear:  unbroken(c.clearTest()),
		Usable: unbroken(c.usable),
	}
}

// unbroken returns the end of the range from 0 in which ok holds; unknown when
// it fails at 0.
func unbroken(ok func(pan float64) bool) unit.Maybe[unit.Angle] {
	if !ok(0) {
		return unit.Maybe[unit.Angle]{}
	}
	good := 0.0
	for i := 1; ; i++ {
		next := math.Min(float64(i)*rangeStep, rangeEnd)
		if !ok(next) {
			return unit.Known(unit.Angle(bisect(good, next, ok)))
		}
		if good = next; next == rangeEnd {
			return unit.Known(unit.Angle(rangeEnd))
		}
	}
}

// bisect returns the last angle between good and bad at which ok holds.
func bisect(good, bad float64, ok func(float64) bool) float64 {
	for bad-good > rangeFine {
		if mid := good + (bad-good)/2; ok(mid) {
			good = mid
		} else {
			bad = mid
		}
	}
	return good
}

// bodyClears reports whether the lens, its foremost point at the rink face,
// clears the pane with some shift at this pan.
func (c *Case) bodyClears(pan float64) bool {
	s := stance{c: *c, aim: aimAt(pan, 0), rect: c.rect(), level: true}
	return s.room(0)
}

// clearTest returns the test for the clear mark. A pose that passed one pan is
// tried first at the next: when it keeps every T at the mark, so does the best.
func (c *Case) clearTest() func(pan float64) bool {
	var s stance
	var last stand
	free := c.Pivot == Free
	if _, fixed := c.Back.Get(); fixed {
		free = false
	}
	return func(pan float64) bool {
		c.newStance(&s, pan, 0, true)
		if free && pan > 0 {
			try := s.home().Add(last.at)
			if s.clears(try, last.zf) && s.worst(try, last.zf) >= clearMark {
				return true
			}
		}
		p := s.best()
		v := s.view(p, pan, 0)
		last = stand{at: p.at.Sub(s.home()), zf: p.zf}
		return v.WorstCorner() >= clearMark
	}
}

// usable reports whether the best T at the frame's centre reaches the usable
// mark at this pan.
func (c *Case) usable(pan float64) bool {
	a := aimAt(pan, 0)
	return c.centre(&a) >= usableMark
}
