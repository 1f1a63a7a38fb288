package fit

import "example.org/rinkpane/internal/measure/geom"

// nearest moves a best pose, at its depth, to the one with a worst T of at
// least least whose foremost point is nearest the hole's centre. Such poses
// form a convex set.
func (s *stance) nearest(best stand, least float64) stand {
	home := s.home()
	if s.equalTo(home, best.zf, least) {
		return s.at(home, best.zf)
	}
	if s.level {
		return s.nearestX(best, home.X, least)
	}
	return s.nearestXY(best, home, least)
}

// at returns the pose at a shift and depth with its worst T.
func (s *stance) at(at geom.Vec2, zf float64) stand {
	return stand{at: at, zf: zf, t: s.worst(at, zf)}
}

// equalTo reports whether a pose clears the pane and keeps a worst T of at least least.
func (s *stance) equalTo(at geom.Vec2, zf, least float64) bool {
	return s.clears(at, zf) && s.worst(at, zf) >= least
}

// shiftTolerance is how finely the shift of equal poses is found, in metres; T
// changes by some 1e-7 over it, a tenth of a tie.
const shiftTolerance = 1e-8

// nearestX searches between the best shift and home.
func (s *stance) nearestX(best stand, home, least float64) stand {
	ok := func(x float64) bool { return s.equalTo(geom.Vec2{X: x}, best.zf, least) }
	find := gallop
	if best.t > 1-tie { // a plateau without loss is wide
		find = lastGood
	}
	return s.at(geom.Vec2{X: find(best.at.X, home, shiftTolerance, ok)}, best.zf)
}

// nearestXY cuts the plane about the equal poses: along a wall that the lens
// cuts, along the gradient where T is too low, else toward home.
func (s *stance) nearestXY(best stand, home geom.Vec2, least float64) stand {
	reach := geom.Vec2{X: s.c.Width + s.c.Nose, Y: s.c.Height + s.c.Nose}
	far := home.Sub(best.at).Len()
	reach = reach.Add(geom.Vec2{X: far, Y: far})
	p := boxPatch(best.at.Sub(reach), best.at.Add(reach))
	toHome := home.Sub(best.at)
	p.keep(toHome, toHome.Dot(best.at)) // nothing on the far side of best is nearer
	inSlab := best.zf > -s.c.Thick
	var b body
	if inSlab {
		b = s.body(best.zf)
	}
	found, dist := best.at, far
	for range planeSteps {
		x, area, size := p.centre()
		if p.n < 3 || area <= 0 || size < shiftTolerance {
			break
		}
		if inSlab {
			if deep, n := s.overlap(&b, x); deep > 0 {
				p.keep(n.Scale(-1), deep-n.Dot(x))
				continue
			}
		}
		if m := s.mark(x, best.zf); m.root*m.root < least {
			if m.dead || m.rise.Len() == 0 {
				break
			}
			p.keep(m.rise, m.rise.Dot(x))
			continue
		}
		toward := home.Sub(x)
		if d := toward.Len(); d < dist {
			found, dist = x, d
		}
		p.keep(toward, toward.Dot(x))
	}
	return s.at(found, best.zf)
}
