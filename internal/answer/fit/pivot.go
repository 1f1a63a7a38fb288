package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// onAxis returns the nose's centre, along the pane, of a lens whose axis goes
// through the hole frame's origin, its foremost point at depth zf.
func (s *stance) onAxis(zf float64) geom.Vec2 {
	back := (s.c.Nose/2*s.aim.sin - zf) / s.aim.cos // from the origin to the nose's centre
	return s.aim.axis.XY().Scale(-back)
}

// axisSteps is how many depths along the axis are looked at before the best is
// refined; they grow with the distance.
const axisSteps = 60

// bestOnAxis searches the depth of a fixed camera. Drawing the lens back along
// its axis keeps it clear, and on that half line the root of the worst T is
// concave where it is above 0.
func (s *stance) bestOnAxis() stand {
	clears := func(zf float64) bool { return s.clears(s.onAxis(zf), zf) }
	top := s.front
	if !clears(top) {
		top = lastGood(-s.c.Thick, top, depthTolerance, clears)
	}
	look := func(zf float64) float64 { return s.worst(s.onAxis(zf), zf) }
	best, bestT := top, look(top)
	span := s.axisSpan()
	place := func(i int) float64 { // denser near the pane
		f := float64(i) / axisSteps
		return top - span*f*f
	}
	near := 0
	for i := 1; i <= axisSteps && bestT < 1; i++ {
		if t := look(place(i)); t > bestT {
			best, bestT, near = place(i), t, i
		}
	}
	if bestT > 0 && bestT < 1 {
		hi := top
		if near > 0 {
			hi = place(near - 1)
		}
		if zf, t := peak(place(near+1), hi, depthTolerance, look); t > bestT {
			best, bestT = zf, t
		}
	}
	if look(top) >= bestT-tie {
		best = top
	} else {
		best = gallop(best, top, tieDepth, func(zf float64) bool { return look(zf) >= bestT-tie })
	}
	return s.at(s.onAxis(best), best)
}

// axisSpan returns a distance along Z behind which every T falls: where the
// footprints of all rays have moved past the middle of what is open to them,
// k (s_u - s_axis) = t s_u / 2, with the pupil's own depth to spare.
func (s *stance) axisSpan() float64 {
	span := 2*s.c.Thick + s.c.PupilDepth + s.c.Nose
	axis := s.rays[0].slope
	for i := 1; i < s.n; i++ {
		d := s.rays[i].slope.Sub(axis)
		if l := d.Dot(d); l > 0 {
			span = max(span, 2*s.c.Thick*math.Abs(s.rays[i].slope.Dot(d))/l)
		}
	}
	return span
}
