package rink

import (
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
)

// Corner is one of the four corners: each runs from the middle of the end
// boards to the blue line on that side.
type Corner int

// The corners, in station order from the bench-side end of the red line.
const (
	NoCorner Corner = iota
	BBench
	BBox
	ABox
	ABench
)

// Corners lists the four corners in station order.
func Corners() [4]Corner { return [4]Corner{BBench, BBox, ABox, ABench} }

var cornerNames = [...]string{"", "B-bench", "B-box", "A-box", "A-bench"}

// String returns the corner's name: "A-bench", "A-box", "B-bench", "B-box",
// "" for NoCorner.
func (c Corner) String() string {
	if c < 0 || int(c) >= len(cornerNames) {
		return ""
	}
	return cornerNames[c]
}

// End returns the end of the rink, "A" or "B", at which the corner lies.
func (c Corner) End() string {
	switch c {
	case BBench, BBox:
		return "B"
	case ABox, ABench:
		return "A"
	}
	return ""
}

// TowardCentre returns +1 in a corner where rising stations lead toward centre
// ice, -1 where they lead toward the middle of the end boards (no unit).
func (c Corner) TowardCentre() unit.Length {
	if c == BBench || c == ABox {
		return -1
	}
	return 1
}

// ParseCorner reads a corner's name.
func ParseCorner(s string) (Corner, error) {
	for _, c := range Corners() {
		if s == c.String() {
			return c, nil
		}
	}
	return NoCorner, fmt.Errorf("corner %q: unknown; write A-bench, A-box, B-bench or B-box", s)
}

// blueSlack lets a place computed from the blue line's landmark count as in its corner, in metres.
const blueSlack unit.Length = 1e-9

// Corner returns the corner in which a station lies, ends included; the middle
// of the end boards counts to the corner after it. NoCorner between the blue
// lines and on a rink without a blue line.
func (r Rink) Corner(s unit.Length) Corner {
	blue, ok := r.Landmark(BBench, BlueLine)
	if !ok {
		return NoCorner
	}
	half := r.Perimeter() / 2
	s = r.Wrap(s)
	end := 0 // corners passed on the way to this half
	if s >= half {
		s, end = s-half, 2
	}
	switch {
	case s < blue-blueSlack || s > half-blue+blueSlack:
		return NoCorner
	case s < half/2:
		return Corners()[end]
	}
	return Corners()[end+1]
}
