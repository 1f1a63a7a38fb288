package geom

import "math"

// RoundRect is a rectangle with rounded corners, centred on the origin, sides
// along the axes.
//
//	 3 ____2____ 1
//	  /         \      pieces in counter-clockwise order:
//	4 |    +    | 0    0 right, 1 upper right, 2 top, 3 upper left,
//	  \_________/      4 left, 5 lower left, 6 bottom, 7 lower right
//	 5     6     7
type RoundRect struct {
	HalfW, HalfH float64 // half the sides
	Radius       float64 // of the corners, 0 .. the smaller half side
}

// sharpest is the corner radius, as a share of the smaller half side, below
// which a corner counts as square: the area in question is below rounding.
const sharpest = 1e-9

// tidy drops a corner radius that is no more than rounding error.
func (r RoundRect) tidy() RoundRect {
	if r.Radius < sharpest*min(r.HalfW, r.HalfH) {
		r.Radius = 0
	}
	return r
}

// corners of the inner rectangle, about which the corner arcs turn, in the
// order of the arcs 1, 3, 5, 7.
func (r RoundRect) hub(i int) Vec2 {
	x, y := r.HalfW-r.Radius, r.HalfH-r.Radius
	switch i {
	case 1:
		return Vec2{x, y}
	case 3:
		return Vec2{-x, y}
	case 5:
		return Vec2{-x, -y}
	}
	return Vec2{x, -y}
}

// first returns where piece i of the rectangle starts.
func (r RoundRect) first(i int) Vec2 {
	x, y := r.HalfW-r.Radius, r.HalfH-r.Radius
	switch i {
	case 0:
		return Vec2{r.HalfW, -y}
	case 1:
		return Vec2{r.HalfW, y}
	case 2:
		return Vec2{x, r.HalfH}
	case 3:
		return Vec2{-x, r.HalfH}
	case 4:
		return Vec2{-r.HalfW, y}
	case 5:
		return Vec2{-r.HalfW, -y}
	case 6:
		return Vec2{-x, -r.HalfH}
	}
	return Vec2{x, -r.HalfH}
}

// Outline returns the rectangle's boundary.
func (r RoundRect) Outline() Outline {
	var o Outline
	r = r.tidy()
	for i := range 8 {
		r.add(&o, i, r.first(i), r.first((i+1)%8))
	}
	o.measure()
	return o
}

// add appends the part of the rectangle's piece i from a to b, unless it has
// no length.
func (r RoundRect) add(o *Outline, i int, a, b Vec2) {
	if a == b {
		return
	}
	if i%2 == 0 || r.Radius == 0 {
		o.line(a, false)
		return
	}
	o.arc(r.hub(i), a, b, r.Radius)
}

// locate returns the piece on which a point of the boundary lies.
func (r RoundRect) locate(p Vec2) int {
	beyondX := math.Abs(p.X) > r.HalfW-r.Radius
	beyondY := math.Abs(p.Y) > r.HalfH-r.Radius
	if beyondX == beyondY && r.Radius == 0 { // a square corner has no arc: the nearer wall
		beyondX = r.HalfW-math.Abs(p.X) < r.HalfH-math.Abs(p.Y)
		beyondY = !beyondX
	}
	switch {
	case beyondX && !beyondY && p.X > 0:
		return 0
	case beyondX && !beyondY:
		return 4
	case beyondY && !beyondX && p.Y > 0:
		return 2
	case beyondY && !beyondX:
		return 6
	case p.X > 0 && p.Y > 0:
		return 1
	case p.Y > 0:
		return 3
	case p.X < 0:
		return 5
	}
	return 7
}

// right returns the x of the boundary's right side at height y, |y| <= HalfH.
func (r RoundRect) right(y float64) float64 {
	over := math.Abs(y) - (r.HalfH - r.Radius)
	if over <= 0 {
		return r.HalfW
	}
	return r.HalfW - r.Radius + math.Sqrt(max(0, r.Radius*r.Radius-over*over))
}
