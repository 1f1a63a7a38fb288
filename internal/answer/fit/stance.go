package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// stance is a lens at one aim with its rays made ready: the pose search's
// subject. Its poses are the nose centre's shift along the pane and the depth
// zf of the nose's foremost point, zf <= 0.
type stance struct {
	c    Case
	aim  aim
	rect geom.RoundRect
	// level: the aim and the rays are the same above and below Y = 0, so that a
	// best pose stands at Y = 0 (the worst T is quasi-concave in the shift).
	level bool
	front float64 // depth of the foremost point before which the camera touches the rear face, at most 0
	n     int     // rays in use
	rays  [5]ray
}

// Corner numbers: the order of View.Corners.
const (
	lowerLeft = iota
	upperLeft
	lowerRight
	upperRight
)

// cornerSigns are the frame's corners in units of the half tangents.
var cornerSigns = [4][2]float64{{-1, -1}, {-1, 1}, {1, -1}, {1, 1}}

// newStance readies the case at an aim: the frame's centre alone, or its
// corners too. At level tilt the upper corners are the lower ones' mirror.
func (c *Case) newStance(s *stance, pan, tilt float64, corners bool) {
	s.c, s.aim, s.rect = *c, aimAt(pan, tilt), c.rect()
	s.level = tilt == 0
	s.front = min(0, c.foremost(&s.aim))
	s.rays[0].ready(c, &s.aim, s.aim.axis)
	s.n = 1
	if !corners {
		return
	}
	for _, sg := range cornerSigns {
		if s.level && sg[1] > 0 {
			continue
		}
		s.rays[s.n].ready(c, &s.aim, s.aim.toward(sg[0]*c.TanX, sg[1]*c.TanY))
		s.n++
	}
}

// nose returns the nose's centre for a shift and a depth of the foremost point.
func (s *stance) nose(at geom.Vec2, zf float64) geom.Vec3 {
	return geom.Vec3{X: at.X, Y: at.Y, Z: zf - s.c.Nose/2*s.aim.sin}
}

// pupil returns the pupil's centre for a shift and a depth.
func (s *stance) pupil(at geom.Vec2, zf float64) geom.Vec3 {
	return s.nose(at, zf).Sub(s.aim.axis.Scale(s.c.PupilDepth))
}

// behind reports whether the whole pupil stays behind the rear face even with
// the foremost point as far forward as the camera lets it. Then the rear outline limits all of it
// at every depth.
func (s *stance) behind() bool {
	half := s.c.Pupil / 2 * s.aim.sin
	return s.pupil(geom.Vec2{}, s.front).Z+half <= -s.c.Thick
}

// mark is what the pose search sees at one pose: the root of the worst T,
// which is concave in the shift where it is above 0 (Brunn and Minkowski), and
// a direction in which it rises: its gradient, or for a closed ray any vector
// that every opening shift has a part of.
type mark struct {
	root float64
	rise geom.Vec2
	ray  int  // the worst one
	dead bool // a ray that no shift opens
}

func (s *stance) mark(at geom.Vec2, zf float64) mark {
	p := s.pupil(at, zf)
	m := mark{root: math.Inf(1)}
	for i := range s.n {
		t, g := s.rays[i].pass(&s.c, &s.aim, p)
		if t < m.root {
			m.root, m.rise, m.ray = t, g, i
		}
	}
	if m.root <= 0 {
		var ok bool
		m.root = 0
		m.rise, ok = s.rays[m.ray].pull(&s.c, &s.aim, p)
		m.dead = !ok
		return m
	}
	m.root = math.Sqrt(m.root)
	m.rise = m.rise.Scale(0.5 / m.root)
	return m
}

// worst returns the smallest T over the rays in use at a pose.
func (s *stance) worst(at geom.Vec2, zf float64) float64 {
	p := s.pupil(at, zf)
	worst := 1.0
	for i := range s.n {
		t, _ := s.rays[i].pass(&s.c, &s.aim, p)
		worst = min(worst, t)
	}
	return worst
}

// box returns shifts outside which some ray is closed, at a depth; false when
// no shift opens all of them.
func (s *stance) box(zf float64) (lo, hi geom.Vec2, ok bool) {
	lo = geom.Vec2{X: math.Inf(-1), Y: math.Inf(-1)}
	hi = geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}
	p := s.pupil(geom.Vec2{}, zf)
	for i := range s.n {
		r := &s.rays[i]
		if !r.open {
			return lo, hi, false
		}
		e := r.footprint(p)
		far := e.Reach().Add(geom.Vec2{X: s.rect.HalfW, Y: s.rect.HalfH})
		// The hole's own outline bounds what is open, with or without the rear one.
		lo.X, hi.X = max(lo.X, -far.X-e.Centre.X), min(hi.X, far.X-e.Centre.X)
		lo.Y, hi.Y = max(lo.Y, -far.Y-e.Centre.Y), min(hi.Y, far.Y-e.Centre.Y)
	}
	return lo, hi, lo.X < hi.X && lo.Y < hi.Y
}
