// Package rink is the ice and its boards: a rounded rectangle with markings,
// and the stations, corners and landmarks along the boards.
package rink

import (
	"errors"

	"example.org/rinkpane/geom"
	"example.org/rinkpane/unit"
)

var errUnwritten = errors.New("rink: not written yet")

// Dimensions is the plan of a rink as written down, not yet checked.
// Markings that are zero are not painted.
type Dimensions struct {
	Length, Width, CornerRadius unit.Length
	Markings                    Markings
}

// Markings is where the paint lies. A rink without a goal line has no markings.
type Markings struct {
	GoalLine     unit.Length // from the end boards to the goal line (the book's figure)
	BlueLine     unit.Length // from the end boards to the blue line (the book's figure)
	CircleRadius unit.Length // end-zone face-off circle, outer radius
	SpotFromGoal unit.Length // end-zone spot, from the goal line toward centre ice
	SpotFromAxis unit.Length // end-zone spot, from the rink's long axis
	NeutralSpot  unit.Length // neutral spot, from the blue line's neutral-zone edge toward centre
	GoalWidth    unit.Length
	GoalHeight   unit.Length
	GoalDepth    unit.Length
	CreaseRadius unit.Length
	LineWidth    unit.Length // goal line
	BlueWidth    unit.Length // blue and red lines
	// BlueLineTo says to what part of the blue line the book's figure runs.
	BlueLineTo LineEdge
}

// LineEdge is a part of a painted line.
type LineEdge int

// The parts of the blue line that books measure to.
const (
	LineMiddle  LineEdge = iota // international book: to the line's middle
	LineFarEdge                 // North American book: to the neutral-zone edge
)

// Rink is a checked rink. Make one with New or Standard.
type Rink struct{ dim Dimensions }

// New checks the dimensions and returns the rink.
func New(d Dimensions) (Rink, error) { return Rink{}, errUnwritten }

// Standard returns one of the built-in rinks: "north-american" or "international".
func Standard(name string) (Rink, error) { return Rink{}, errUnwritten }

// Dimensions returns what the rink was made from.
func (r Rink) Dimensions() Dimensions { return r.dim }

// Marked reports whether the rink has painted markings.
func (r Rink) Marked() bool { return r.dim.Markings.GoalLine > 0 }

// Perimeter returns the length of the boards' rink face.
func (r Rink) Perimeter() unit.Length { return 0 }

// Area returns the ice area in square metres.
func (r Rink) Area() float64 { return 0 }

// Wrap returns the station in [0, perimeter).
func (r Rink) Wrap(s unit.Length) unit.Length { return 0 }

// Point returns the point of the boards' rink face at a station, in metres in the rink's frame.
func (r Rink) Point(s unit.Length) geom.Vec2 { return geom.Vec2{} }

// Normal returns the unit normal at a station, pointing into the rink.
func (r Rink) Normal(s unit.Length) geom.Vec2 { return geom.Vec2{} }

// Tangent returns the unit tangent at a station, toward rising station.
func (r Rink) Tangent(s unit.Length) geom.Vec2 { return geom.Vec2{} }

// Station returns the station of the boards' point nearest to p.
func (r Rink) Station(p geom.Vec2) unit.Length { return 0 }

// Contains reports whether p lies on the ice.
func (r Rink) Contains(p geom.Vec2) bool { return false }

// Curved reports whether the boards at a station lie on a corner's arc.
func (r Rink) Curved(s unit.Length) bool { return false }

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

// String returns the corner's name: "A-bench", "A-box", "B-bench", "B-box".
func (c Corner) String() string {
	return [...]string{"", "B-bench", "B-box", "A-box", "A-bench"}[c]
}

// ParseCorner reads a corner's name.
func ParseCorner(s string) (Corner, error) { return NoCorner, errUnwritten }

// Landmark is a place on the boards of each corner.
type Landmark string

// The landmarks, from the end boards toward centre ice.
const (
	GoalLine     Landmark = "goal-line"
	CircleBottom Landmark = "circle-bottom"
	CircleTop    Landmark = "circle-top"
	BlueLine     Landmark = "blue-line"
)

// Landmarks lists the landmarks from the end boards toward centre ice.
func Landmarks() [4]Landmark { return [4]Landmark{GoalLine, CircleBottom, CircleTop, BlueLine} }

// Corner returns the corner in which a station lies, NoCorner between the
// blue lines and on a rink without markings.
func (r Rink) Corner(s unit.Length) Corner { return NoCorner }

// Landmark returns the station of a corner's landmark; ok is false on a rink without markings.
func (r Rink) Landmark(c Corner, l Landmark) (s unit.Length, ok bool) { return 0, false }

// FromLandmark returns the station at an offset from a corner's landmark:
// positive along the boards toward centre ice, negative toward the middle of the end boards.
func (r Rink) FromLandmark(c Corner, l Landmark, offset unit.Length) (unit.Length, error) {
	return 0, errUnwritten
}
