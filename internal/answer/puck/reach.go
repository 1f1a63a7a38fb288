package puck

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Protrusion is how far something other than a puck gets through a hole.
type Protrusion struct {
	What   string // "stick blade", "elbow, padded" ...
	Passes bool   // it gets past the pane's far face at all
	// Past is how far it stands out behind the face it comes out of, head on.
	Past unit.Length
	// Limit is the angle from the normal at which it no longer passes; unknown when it never does, or has none.
	Limit  unit.Maybe[unit.Angle]
	Toward string // "stand" or "ice": the side it comes out on
}

// What reaches through, with sizes from memory: rule books' greatest stick
// (blade 3 in high, shaft 63 in), body sizes of a large man (P95) rounded up.
const (
	bladeHigh  = 3 * unit.Inch
	bladeThick = 40 * unit.Millimetre // with its curve, seen from the end
	shaftLong  = 63 * unit.Inch
	gripLong   = 600 * unit.Millimetre // both hands and a forearm stay on the ice's side

	elbowBare   = 45 * unit.Millimetre // radius of the tip
	elbowPadded = 70 * unit.Millimetre
	elbowHalf   = 30 * unit.Degree // of the bent arm, as a cone behind the tip

	handWide = 105 * unit.Millimetre // with the thumb
	handHigh = 50 * unit.Millimetre
	armLong  = 650 * unit.Millimetre // shoulder to grip
	armThick = 110 * unit.Millimetre // forearm; a hole that is smaller stops it there
	handLong = 200 * unit.Millimetre
)

// Through returns what a stick, an elbow and a hand can do at the opening.
// The stick is a bar of the blade's section; the elbow a cone with a round
// tip that goes in until its width meets the hole; the hand a bar with the
// forearm behind it. Source: own derivation, sizes from memory.
func Through(o Opening) []Protrusion {
	return []Protrusion{
		stick(o),
		elbow(o, "elbow, padded", elbowPadded),
		elbow(o, "elbow, bare", elbowBare),
		hand(o),
	}
}

// bar reports whether a bar of the section passes, upright or turned by a
// right angle, and the wider limit in the horizontal plane.
func (o Opening) bar(w, h unit.Length) (limit unit.Angle, ok bool) {
	for _, s := range []unit.Size{{W: w, H: h}, {W: h, H: w}} {
		if s.W < o.size.W && s.H < o.size.H {
			limit, ok = max(limit, o.limit(s.W)), true
		}
	}
	return limit, ok
}

func stick(o Opening) Protrusion {
	r := Protrusion{What: "stick blade", Toward: "stand"}
	if limit, ok := o.bar(bladeThick, bladeHigh); ok {
		r.Passes, r.Past, r.Limit = true, shaftLong-gripLong-o.thick, unit.Known(limit)
	}
	return r
}

// elbow goes in until the cone is as wide as the hole's shorter side:
//
//	tip radius a, cone half-angle e, hole half-width b:
//	b <= a cos e   depth = a - sqrt(a^2 - b^2)          (the round tip)
//	b >  a cos e   depth = a (1 - sin e) + (b - a cos e) / tan e
func elbow(o Opening, name string, tip unit.Length) Protrusion {
	a, b := tip.Metres(), min(o.size.W, o.size.H).Metres()/2
	s, c := math.Sincos(elbowHalf.Radians())
	depth := a*(1-s) + (b-a*c)*c/s
	if b <= a*c {
		depth = a - math.Sqrt(a*a-b*b)
	}
	past := unit.Length(depth) - o.thick
	return Protrusion{What: name, Toward: "stand", Passes: past > 0, Past: max(0, past)}
}

func hand(o Opening) Protrusion {
	r := Protrusion{What: "hand and arm", Toward: "ice"}
	limit, ok := o.bar(handWide, handHigh)
	if !ok {
		return r
	}
	long := armLong
	if min(o.size.W, o.size.H) < armThick {
		long = handLong
	}
	r.Passes, r.Past, r.Limit = true, long-o.thick, unit.Known(limit)
	return r
}
