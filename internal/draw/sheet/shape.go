package sheet

import "math"

// Shape is something that can be drawn: [Line], [Polyline], [Circle], [Arc],
// [Path], [Text], [Image] or a [*Group]. All lengths are millimetres.
type Shape interface{ shape() }

// Point is a place on the sheet in millimetres: x to the right, y down.
type Point struct{ X, Y float64 }

// Pt returns the point (x, y), in millimetres.
func Pt(x, y float64) Point { return Point{x, y} }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Scale returns k p.
func (p Point) Scale(k float64) Point { return Point{k * p.X, k * p.Y} }

// Dist returns the distance from p to q in millimetres.
func (p Point) Dist(q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }

// Polar returns the point at a distance in millimetres from p in a direction in
// radians, counter-clockwise as seen, 0 to the right.
func (p Point) Polar(r, angle float64) Point {
	return Point{p.X + r*math.Cos(angle), p.Y - r*math.Sin(angle)}
}

// Rect is an upright rectangle: its top left corner and its size, in millimetres.
type Rect struct{ X, Y, W, H float64 }

// Inset returns the rectangle made smaller by m millimetres on every side.
func (r Rect) Inset(m float64) Rect { return Rect{r.X + m, r.Y + m, r.W - 2*m, r.H - 2*m} }

// Overlaps reports whether two rectangles share some area.
func (r Rect) Overlaps(o Rect) bool {
	return r.X < o.X+o.W && o.X < r.X+r.W && r.Y < o.Y+o.H && o.Y < r.Y+r.H
}

// Contains reports whether o lies in r, edges included.
func (r Rect) Contains(o Rect) bool {
	return o.X >= r.X && o.Y >= r.Y && o.X+o.W <= r.X+r.W && o.Y+o.H <= r.Y+r.H
}

// Line is a straight line between two points.
type Line struct{ A, B Point }

// Vertex is a corner of a polyline. Bulge says how the way to the next vertex
// bends: the tangent of a quarter of the arc's angle, positive when the arc turns
// counter-clockwise as seen, 0 for a straight line, 1 for a half circle (no unit).
type Vertex struct {
	Point
	Bulge float64 // ratio without unit
}

// Polyline is a chain of straight lines and true circular arcs.
// A closed one returns from its last vertex to its first.
type Polyline struct {
	Vertices []Vertex
	Closed   bool
}

// Circle is a whole circle: centre, and radius in millimetres.
type Circle struct {
	C Point
	R float64 // millimetres
}

// Arc is part of a circle with a radius in millimetres: from an angle over a sweep, both in radians,
// counter-clockwise as seen when positive, 0 to the right.
type Arc struct {
	C           Point
	R           float64
	From, Sweep float64
}

// Anchor is the part of a text's length that stands at its point.
type Anchor uint8

// The anchors along the text.
const (
	Start  Anchor = iota // the left end
	Middle               // the middle
	End                  // the right end
)

// VAlign is the part of a text's height that stands at its point.
type VAlign uint8

// The alignments across the text.
const (
	Baseline VAlign = iota // the foot of letters without tails
	Centre                 // half the capitals' height
	Top                    // the top of the capitals
)

// Text is one line of text.
type Text struct {
	At     Point
	S      string
	Size   float64 // type size (em) in millimetres; 0 takes the class's size
	Anchor Anchor
	VAlign VAlign
	Rotate float64 // radians counter-clockwise as seen, about At
}

// Group holds elements that belong together, moved and scaled as one.
type Group struct {
	Offset Point   // where the group's origin stands, in millimetres
	Scale  float64 // 0 counts as 1; line widths and text scale too
	Clip   *Rect   // nothing outside is shown; in the group's own frame
	Items  []*Element
}

// Add draws a shape in the group with a class and returns the element.
func (g *Group) Add(class string, s Shape) *Element {
	e := &Element{Shape: s, Class: class}
	g.Items = append(g.Items, e)
	return e
}

func (g *Group) factor() float64 {
	if g.Scale == 0 {
		return 1
	}
	return g.Scale
}

func (Line) shape()     {}
func (Polyline) shape() {}
func (Circle) shape()   {}
func (Arc) shape()      {}
func (Path) shape()     {}
func (Text) shape()     {}
func (Image) shape()    {}
func (*Group) shape()   {}
