package sheet

import "math"

// The arrowhead of dimensions and leaders: length, and half its opening angle
// (together about 30 degrees, ISO 129-1 annex A; from memory).
const (
	arrowLength = 2.4                // mm
	arrowHalf   = 15 * math.Pi / 180 // radians
)

// arrow adds a filled arrowhead with its tip at a point, pointing in a
// direction (radians).
func (g *Group) arrow(tip Point, direction float64) {
	l := arrowLength / math.Cos(arrowHalf)
	back := direction + math.Pi
	g.Add("dim-arrow", Polygon(tip, tip.Polar(l, back-arrowHalf), tip.Polar(l, back+arrowHalf)))
}

// direction returns the direction from p to q in radians, counter-clockwise as seen.
func direction(p, q Point) float64 { return math.Atan2(p.Y-q.Y, q.X-p.X) }
