package sheet

import "math"

// turnedBox returns the upright box round r, given relative to a point and
// turned about it by an angle counter-clockwise as seen.
func turnedBox(about Point, r Rect, angle float64) Rect {
	b := emptyBounds()
	for _, p := range turnedCorners(about, r, angle) {
		b.add(p)
	}
	return b.rect()
}

// turnedCorners returns the corners of r, in order, turned likewise.
func turnedCorners(about Point, r Rect, angle float64) [4]Point {
	s, c := math.Sincos(angle)
	var out [4]Point
	for i, p := range [4]Point{{r.X, r.Y}, {r.X + r.W, r.Y}, {r.X + r.W, r.Y + r.H}, {r.X, r.Y + r.H}} {
		out[i] = Point{about.X + p.X*c + p.Y*s, about.Y - p.X*s + p.Y*c}
	}
	return out
}

// bounds gathers the least upright box round points.
type bounds struct{ x0, y0, x1, y1 float64 }

func emptyBounds() bounds {
	return bounds{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
}

func (b *bounds) add(p Point) {
	b.x0, b.y0 = min(b.x0, p.X), min(b.y0, p.Y)
	b.x1, b.y1 = max(b.x1, p.X), max(b.y1, p.Y)
}

func (b bounds) rect() Rect {
	if b.x1 < b.x0 {
		return Rect{}
	}
	return Rect{b.x0, b.y0, b.x1 - b.x0, b.y1 - b.y0}
}

// Clearest returns the first of some places along a line that is enough millimetres from
// every other, and the one farthest from them where none is.
func Clearest(places, others []float64, enough float64) (best float64) {
	most := -1.0
	for _, at := range places {
		near := enough
		for _, o := range others {
			near = min(near, math.Abs(at-o))
		}
		if near > most {
			best, most = at, near
		}
	}
	return best
}
