package sight

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// Blind is the strip of ice along the near boards that a hole does not see, at
// puck height: widths in metres from the boards' rink face, square to the boards.
//
//	 ice        seen
//	------------------------   <- Ahead
//	  blind strip               = not seen: too steep for the lens, or behind the ledge
//	========================   boards' rink face
//	       o hole
type Blind struct {
	Ahead float64 // straight ahead of the hole, metres
	// Mean is the mean width over the boards within [StripSide] either way of the
	// hole, metres; where nothing is seen up to [StripMost] that width counts.
	Mean float64
	// Ledge is the part of Ahead that the boards hide from an eye at the hole's
	// centre, whatever the lens, metres: d (b - z) / (h - b) for straight boards,
	// with the setback d, the boards' height b, the hole's h, the puck's z. It is
	// infinite for a hole that is no higher than the boards.
	Ledge float64
}

// What the blind strip is taken over. Own choice.
const (
	StripSide = 5 * unit.Metre // along the boards, either way of the hole
	StripMost = 10 * unit.Metre
)

const (
	stripStations = 51   // along the boards
	stripStep     = 0.1  // metres between places asked on the way in
	stripEnd      = 1e-4 // metres: how well the strip's edge is found
)

// blind measures the blind strip of the lenses in a mask.
func (s *sightline) blind(lenses uint64) Blind {
	z := PuckHeight.Metres()
	b := Blind{Ahead: s.width(s.hole.Station, z, lenses), Ledge: s.ledgeWidth(z)}
	for i := range stripStations {
		off := StripSide * unit.Length(2*float64(i)/(stripStations-1)-1)
		b.Mean += s.width(s.hole.Station+off, z, lenses) / stripStations
	}
	return b
}

// width walks from the boards at a station square into the ice until a lens of
// the mask sees the place, and returns the way.
func (s *sightline) width(station unit.Length, z float64, lenses uint64) float64 {
	from, in := s.arena.Rink.Point(station), s.arena.Rink.Normal(station)
	sees := func(way float64) bool {
		return s.seen(from.Add(in.Scale(way)), z)&lenses != 0
	}
	most := math.Min(StripMost.Metres(), 2*s.walls.y)
	return firstSeen(most, sees)
}

// firstSeen returns the least way at which sees holds, most when it never does.
func firstSeen(most float64, sees func(way float64) bool) float64 {
	if sees(0) {
		return 0
	}
	low := 0.0
	for low < most {
		high := math.Min(low+stripStep, most)
		if sees(high) {
			return halve(low, high, sees)
		}
		low = high
	}
	return most
}

// halve narrows the step between not seen (low) and seen (high).
func halve(low, high float64, sees func(float64) bool) float64 {
	for high-low > stripEnd {
		if mid := (low + high) / 2; sees(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// ledgeWidth is the width that the boards alone hide, straight ahead.
func (s *sightline) ledgeWidth(z float64) float64 {
	e := s.eye
	if e.Z <= s.ledge.top {
		return math.Inf(1)
	}
	ahead := func(way float64) geom.Vec2 { return s.arena.Rink.Point(s.hole.Station).Add(e.In.Scale(way)) }
	return firstSeen(2*s.walls.x, func(way float64) bool { return !s.ledge.hides(e, ahead(way), z) })
}
