package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// stand is a pose of a stance with its worst T.
type stand struct {
	at geom.Vec2 // the nose's centre along the pane
	zf float64   // depth of the foremost point
	t  float64
}

// tie is the difference of T within which two poses count as equal (contract).
const tie = 1e-6

// loose returns the best shift at a depth, the pane left out of account.
func (s *stance) loose(zf float64) stand {
	if !s.level {
		at, t, _ := s.bestXY(zf, false)
		return stand{at, zf, t}
	}
	lo, hi, ok := s.box(zf)
	if !ok {
		return stand{zf: zf}
	}
	x, t := s.bestX(zf, lo.X, hi.X, s.guess(zf))
	return stand{geom.Vec2{X: x}, zf, t}
}

// tight returns the best shift at a depth in the slab among those that clear
// the pane; false when none does.
func (s *stance) tight(zf float64) (stand, bool) {
	if !s.level {
		at, t, ok := s.bestXY(zf, true)
		return stand{at, zf, t}, ok
	}
	lo, hi, ok := s.spanX(zf)
	if !ok {
		return stand{}, false
	}
	blo, bhi, open := s.box(zf)
	if l, h := max(lo, blo.X), min(hi, bhi.X); open && l <= h {
		x, t := s.bestX(zf, l, h, s.guess(zf))
		return stand{geom.Vec2{X: x}, zf, t}, true
	}
	return stand{geom.Vec2{X: clamp(s.home().X, lo, hi)}, zf, 0}, true
}

// atDepth is tight in the slab and loose behind it.
func (s *stance) atDepth(zf float64) (stand, bool) {
	if zf > -s.c.Thick {
		return s.tight(zf)
	}
	return s.loose(zf), true
}

// guess returns a likely shift at level tilt: half way between the shifts that
// centre the outer footprints on what the hole leaves open to them.
func (s *stance) guess(zf float64) float64 {
	p := s.pupil(geom.Vec2{}, zf)
	lo, hi := math.Inf(1), math.Inf(-1)
	for i := range s.n {
		r := &s.rays[i]
		x := r.middle.X - r.footprint(p).Centre.X
		lo, hi = min(lo, x), max(hi, x)
	}
	return (lo + hi) / 2
}

// best returns the pose with the largest worst T under the case's rules, ties
// settled: nearest the rink face, then nearest the hole's centre, both by the
// foremost point.
func (s *stance) best() stand {
	if back, ok := s.c.Back.Get(); ok {
		zf := min(-s.c.Thick-back, s.front)
		if s.c.Pivot == Centre {
			at := s.onAxis(zf)
			return stand{at, zf, s.worst(at, zf)}
		}
		p := s.loose(zf)
		return s.nearest(p, p.t-tie)
	}
	if s.c.Pivot == Centre {
		return s.bestOnAxis()
	}
	return s.bestFree()
}

// bestFree searches shift and depth.
//
// Where the whole pupil lies behind the rear face, moving it straight toward
// the middle of the hole's prism lowers no T(u): seen along u both the
// footprint and what is open are symmetric about their centres, and their
// overlap is log-concave in the pose. So no pose behind the rear face beats
// the best one at it, and when the best shift at the rink face, or as near to it
// as the camera lets the nose, clears the pane, nothing beats that. Otherwise the depths between are searched, and the
// pose at the rear face, where the pane no longer bounds the shift, stands
// against them.
func (s *stance) bestFree() stand {
	var found stand
	if s.behind() {
		found = s.loose(s.front)
		if found.t > tie && s.clears(found.at, s.front) {
			return s.nearest(found, found.t-tie)
		}
		if found.t <= tie { // nothing opens every ray: all poses are equal
			return s.equal()
		}
		if face, ok := s.atDepth(s.front); ok && face.t >= found.t-settled {
			return s.nearest(face, face.t-tie)
		}
	}
	top := s.top()
	rear := s.loose(min(-s.c.Thick, s.front))
	found = s.scan(top)
	if rear.t > found.t {
		found = rear
	}
	if found.t <= tie {
		return s.equal()
	}
	return s.nearest(s.forward(found, top), found.t-tie)
}

// How many depths in the slab are looked at, and how finely the peaks among
// them are refined, as a share of the range's root: the pane frees the shift
// like the root of the distance from the rear face, so that depths are
// bunched toward it.
const (
	scanSteps = 32
	scanFine  = 1e-7
)

// scan returns the best pose with the foremost point between the rear face and top.
func (s *stance) scan(top float64) stand {
	best := stand{t: -1}
	span := top + s.c.Thick
	if span <= depthTolerance {
		return best
	}
	peaks(scanFine, 1, scanSteps, scanFine, func(f float64) float64 {
		p, ok := s.tight(top - span*(1-f*f))
		if !ok {
			return -1
		}
		if p.t > best.t {
			best = p
		}
		return p.t
	})
	return best
}

// tieDepth is how finely the depth of equal poses is found, in metres; T
// changes by some 1e-7 over it, a tenth of a tie.
const tieDepth = 1e-8

// forward moves a best pose as near to the rink face as ties allow.
func (s *stance) forward(best stand, top float64) stand {
	good := best
	equal := func(zf float64) bool {
		p, ok := s.tight(zf)
		if ok && p.t >= best.t-tie {
			good = p
			return true
		}
		return false
	}
	if best.zf >= top || equal(top) {
		return good
	}
	gallop(best.zf, top, tieDepth, equal)
	return good
}

// equal returns the pose when all poses are equal.
func (s *stance) equal() stand {
	zf := s.top()
	if zf > -s.c.Thick {
		if at, ok := s.berth(zf); ok {
			return s.nearest(stand{at: at, zf: zf}, 0)
		}
	}
	return s.at(s.home(), min(-s.c.Thick, s.front))
}
