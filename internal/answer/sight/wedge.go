package sight

import (
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// Wedge is the outline in plan of the ice that a hole sees at one height, as
// rays from the eye: each from its nearest to its farthest seen point.
//
//	far  .--------------.
//	      \            /
//	       \          /
//	near    '--------'
//	     ======= o ======= boards
type Wedge struct {
	Near, Far []geom.Vec2 // metres in the rink's frame, ray by ray from left to right
}

// Polygon returns the wedge's outline, closed from its last point to its first.
func (w Wedge) Polygon() []geom.Vec2 {
	out := append([]geom.Vec2(nil), w.Far...)
	for i := len(w.Near) - 1; i >= 0; i-- {
		out = append(out, w.Near[i])
	}
	return out
}

// A wedge has rays no farther apart than rayStep, and one to each of
// farStations places round the boards, so that its far edge follows them where a
// ray skims along.
const (
	rayStep     = 2 * unit.Degree
	farStations = 180
)

// wedge traces the outline for the lens ends in a mask. Along a ray the aim
// flattens with the distance, so what is seen is one piece that ends at the far
// boards; so are the rays on which anything is seen.
func (s *sightline) wedge(z float64, lenses uint64) Wedge {
	left, right := s.side(-1, z, lenses), s.side(1, z, lenses)
	var w Wedge
	for _, angle := range s.rays(left, right) {
		near, far := s.ray(angle, z, lenses)
		w.Near, w.Far = append(w.Near, near), append(w.Far, far)
	}
	return w
}

// rays returns the angles of a wedge's rays, rising; none when the sides cross.
func (s *sightline) rays(left, right float64) []float64 {
	if right < left {
		return nil
	}
	n := int(math.Ceil((right-left)/rayStep.Radians())) + 1
	out := make([]float64, 0, n+farStations+1)
	for i := range n + 1 {
		out = append(out, left+(right-left)*float64(i)/float64(n))
	}
	for i := range farStations {
		u := s.eye.toward(s.arena.Rink.Point(s.arena.Rink.Perimeter()*unit.Length(i)/farStations), s.eye.Z)
		if angle := math.Atan2(u.X, u.Z); angle > left && angle < right {
			out = append(out, angle)
		}
	}
	slices.Sort(out)
	return out
}

// side returns the last angle to one side, in radians, at which the far boards'
// foot is seen; side -1 is toward falling stations. Where nothing is seen ahead
// the two sides cross.
func (s *sightline) side(sign, z float64, lenses uint64) float64 {
	sees := func(angle float64) bool {
		_, ok := s.farthest(sign*angle, z, lenses)
		return ok
	}
	if !sees(0) {
		return -sign
	}
	low, high := 0.0, math.Pi/2
	for high-low > 1e-6 {
		if mid := (low + high) / 2; sees(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return sign * low
}

// heading returns the direction in plan at an angle from straight ahead.
func (s *sightline) heading(angle float64) geom.Vec2 {
	sin, cos := math.Sincos(angle)
	return s.eye.In.Scale(cos).Add(s.eye.Along.Scale(sin))
}

// farthest returns the way along a ray to the point where it leaves the ice; ok
// says whether that is seen.
func (s *sightline) farthest(angle, z float64, lenses uint64) (way float64, ok bool) {
	dir := s.heading(angle)
	beyond := 4 * (s.walls.x + s.walls.y)
	from := s.eye.At.Add(dir.Scale(beyond))
	share := s.walls.entry(from, s.eye.At)
	way = beyond * (1 - share)
	return way, share < 1 && s.seen(s.eye.At.Add(dir.Scale(way)), z)&lenses != 0
}

// ray returns the nearest and farthest seen point at an angle within the sides.
func (s *sightline) ray(angle, z float64, lenses uint64) (near, far geom.Vec2) {
	dir := s.heading(angle)
	high, _ := s.farthest(angle, z, lenses)
	far = s.eye.At.Add(dir.Scale(high))
	low := s.walls.entry(s.eye.At, far) * high
	if s.seen(s.eye.At.Add(dir.Scale(low)), z)&lenses != 0 {
		return s.eye.At.Add(dir.Scale(low)), far
	}
	for high-low > stripEnd {
		if mid := (low + high) / 2; s.seen(s.eye.At.Add(dir.Scale(mid)), z)&lenses != 0 {
			high = mid
		} else {
			low = mid
		}
	}
	return s.eye.At.Add(dir.Scale(high)), far
}
