package rink

import (
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// Landmark is a place on the boards of each corner.
type Landmark string

// The landmarks, from the end boards toward centre ice.
const (
	GoalLine     Landmark = "goal-line"     // where the goal line meets the boards
	CircleBottom Landmark = "circle-bottom" // abreast of the end-zone circle's edge nearest the goal line
	CircleTop    Landmark = "circle-top"    // abreast of the circle's edge farthest from it
	BlueLine     Landmark = "blue-line"     // at the book's distance from the end boards
)

// Landmarks lists the landmarks from the end boards toward centre ice.
func Landmarks() [4]Landmark { return [4]Landmark{GoalLine, CircleBottom, CircleTop, BlueLine} }

// Words names the landmark as people say it: "goal line".
func (l Landmark) Words() string { return strings.ReplaceAll(string(l), "-", " ") }

// fromEnd returns the landmark's distance from the end boards along the axis, in metres.
func (m Markings) fromEnd(l Landmark) (d unit.Length, ok bool) {
	spot := m.GoalLine + m.SpotFromGoal
	switch l {
	case GoalLine:
		return m.GoalLine, m.GoalLine > 0
	case CircleBottom:
		return spot - m.CircleRadius, m.CircleRadius > 0
	case CircleTop:
		return spot + m.CircleRadius, m.CircleRadius > 0
	case BlueLine:
		return m.BlueLine, m.BlueLine > 0
	}
	return 0, false
}

// Landmark returns the station in metres of a corner's landmark: on the
// straight boards or, near the ends, on the corner's arc. ok is false on a rink
// that lacks the marking, and for NoCorner.
func (r Rink) Landmark(c Corner, l Landmark) (s unit.Length, ok bool) {
	d, ok := r.dim.Markings.fromEnd(l)
	if !ok || c == NoCorner || c.String() == "" {
		return 0, false
	}
	way := unit.Length(r.frame().alongSide((r.dim.Length/2 - d).Metres()))
	half := r.Perimeter() / 2
	switch c {
	case BBench:
		return r.Wrap(way), true
	case BBox:
		return r.Wrap(half - way), true
	case ABox:
		return r.Wrap(half + way), true
	}
	return r.Wrap(2*half - way), true
}

// LandmarkPoint returns the landmark's point on the boards' rink face in metres,
// from the stated distances: cleaner than the point at its station by the last
// few digits. ok as in [Rink.Landmark].
func (r Rink) LandmarkPoint(c Corner, l Landmark) (p geom.Vec2, ok bool) {
	d, ok := r.dim.Markings.fromEnd(l)
	if !ok || c.String() == "" {
		return geom.Vec2{}, false
	}
	p.X = (r.dim.Length/2 - d).Metres()
	p.Y = r.HalfWidth(p.X)
	if c.End() == "A" {
		p.X = -p.X
	}
	if c == ABench || c == BBench {
		p.Y = -p.Y
	}
	return p, true
}

// alongSide returns the way along the boards from the red line to abreast of x
// metres from centre ice, 0 <= x <= L/2: a straight, then r asin((x-a)/r).
func (f frame) alongSide(x float64) float64 {
	if x <= f.a {
		return x
	}
	return f.a + f.r*math.Asin(min((x-f.a)/f.r, 1))
}

// NearestLandmark returns the landmark of the station's corner that is nearest
// along the boards, and the offset from it as [Rink.FromLandmark] takes it. ok is
// false between the blue lines and on a rink without markings.
func (r Rink) NearestLandmark(s unit.Length) (c Corner, nearest Landmark, offset unit.Length, ok bool) {
	c = r.Corner(s)
	for _, l := range Landmarks() {
		at, marked := r.Landmark(c, l)
		if !marked {
			continue
		}
		d := c.TowardCentre() * r.Apart(at, s)
		if !ok || max(d, -d) < max(offset, -offset) {
			nearest, offset, ok = l, d, true
		}
	}
	return c, nearest, offset, ok
}

// FromLandmark returns the station in [0, perimeter) at an offset from a
// corner's landmark: positive along the boards toward centre ice, negative
// ("back") toward the middle of the end boards. An offset of more than a quarter
// of the perimeter, which would leave the corner whatever its landmark, is refused.
func (r Rink) FromLandmark(c Corner, l Landmark, offset unit.Length) (unit.Length, error) {
	s, ok := r.Landmark(c, l)
	if !ok {
		if c.String() == "" {
			return 0, fmt.Errorf("no corner given; write A-bench, A-box, B-bench or B-box")
		}
		return 0, fmt.Errorf("this rink has no %s marking; give the station instead, or the marking's dimensions", l)
	}
	if most := r.Perimeter() / 4; !(offset >= -most && offset <= most) {
		return 0, fmt.Errorf("offset %s from the %s in %s: leaves the corner; keep within %s", show(offset), l, c, show(most))
	}
	return r.Wrap(s + c.TowardCentre()*offset), nil
}
