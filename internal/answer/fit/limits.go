package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/unit"
)

// The marks of the limits (design).
const (
	clearMark  = 0.95 // T at every frame corner
	usableMark = 0.5  // T at the frame's centre
)

// The range search (contract): from straight ahead in steps of at most 0.25
// deg to 89.9 deg, the step that fails narrowed to well below 0.01 deg.
const (
	rangeEnd  = 89.9 * math.Pi / 180
	rangeStep = 0.25 * math.Pi / 180
	rangeFine = 1e-6 * math.Pi / 180
)

// Limits returns how far the lens can pan at level tilt and tilt at zero pan.
func (c Case) Limits() Limits {
	turned := c.transposed()
	l := Limits{Fits: c.Fits()}
	cores.Each(2, func(i int) {
		if i == 0 {
			l.Pan = c.panLimits()
		} else {
			l.Tilt = turned.panLimits()
		}
	})
	return l
}

func (c *Case) panLimits() AxisLimits {
	return AxisLimits{
		Body:   unbroken(c.bodyMargin),
		Camera: c.panCamera(),
		Clear:  unbroken(c.clearMargin()),
		Usable: c.panUsable(),
	}
}

func (c *Case) panUsable() unit.Maybe[unit.Angle] { return unbroken(c.usableMargin) }

// unbroken returns the end of the range from 0 in which a margin stays at
// least 0; unknown when it is below at 0.
func unbroken(margin func(pan float64) float64) unit.Maybe[unit.Angle] {
	good, fgood := 0.0, margin(0)
	if fgood < 0 {
		return unit.Maybe[unit.Angle]{}
	}
	for i := 1; ; i++ {
		next := min(float64(i)*rangeStep, rangeEnd)
		f := margin(next)
		if f < 0 {
			return unit.Known(unit.Angle(narrow(good, next, fgood, f, rangeFine, margin)))
		}
		if good, fgood = next, f; next == rangeEnd {
			return unit.Known(unit.Angle(rangeEnd))
		}
	}
}

// narrow returns the last angle between good and bad, to within fine, at which
// the margin is at least 0: false position in the Illinois form, every third
// step halved.
func narrow(good, bad, fgood, fbad, fine float64, margin func(float64) float64) float64 {
	side := 0
	for i := 1; bad-good > fine; i++ {
		mid := good + (bad-good)*fgood/(fgood-fbad)
		// Kept off the ends, so that both of them close in.
		mid = clamp(mid, good+fine/2, bad-fine/2)
		if i%3 == 0 || !(mid > good && mid < bad) {
			mid = good + (bad-good)/2
		}
		f := margin(mid)
		if f >= 0 {
			if good, fgood = mid, f; side > 0 {
				fbad /= 2
			}
			side = 1
			continue
		}
		if bad, fbad = mid, f; side < 0 {
			fgood /= 2
		}
		side = -1
	}
	return good
}

// bodyMargin returns the play, in metres along X, that a lens with its foremost
// point at the rink face has in the pane at this pan; below 0 when it cuts it.
func (c *Case) bodyMargin(pan float64) float64 {
	s := stance{c: *c, aim: aimAt(pan, 0), rect: c.rect(), level: true}
	if lo, hi, ok := s.spanX(0); ok || lo > hi {
		return hi - lo
	}
	return -1
}

// clearMargin returns the margin of the clear mark. The pose that passed one
// pan, and then the best shift at its depth, are tried first at the next: when
// they keep every T at the mark, so does the best pose of all.
func (c *Case) clearMargin() func(pan float64) float64 {
	var s stance
	var last stand
	_, fixed := c.Back.Get()
	free := c.Pivot == Free && !fixed
	return func(pan float64) float64 {
		c.newStance(&s, pan, 0, true)
		if play := c.mouth(&s.aim); play < 0 {
			return play
		}
		if free && pan > 0 {
			last.zf = min(last.zf, s.front)
			try := s.home().Add(last.at)
			if t := s.worst(try, last.zf); t >= clearMark && s.clears(try, last.zf) {
				return t - clearMark
			}
			if p, ok := s.atDepth(last.zf); ok && p.t >= clearMark {
				last.at = p.at.Sub(s.home())
				return p.t - clearMark
			}
		}
		p := s.best()
		v := s.view(p, pan, 0)
		last = stand{at: p.at.Sub(s.home()), zf: p.zf}
		return v.WorstCorner() - clearMark
	}
}

// usableMargin returns the margin of a pan over the usable mark.
func (c *Case) usableMargin(pan float64) float64 { return c.usableAt(aimAt(pan, 0)) }

// usableAt returns the margin of an aim over the usable mark: of the best T at
// the frame's centre, or the camera's play where that is short.
func (c *Case) usableAt(a aim) float64 { return min(c.centre(&a)-usableMark, c.mouth(&a)) }
