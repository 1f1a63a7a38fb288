package light

import (
	"cmp"
	"slices"

	"example.org/rinkpane/internal/measure/geom"
)

// flat is how far a reading may lie off its neighbours' line and still count
// as on it, in metres: a survey is paced out, not measured to the millimetre.
const flat = 1e-6

// hull returns the readings on the border of all, counter-clockwise, those on
// its straight edges included. Of readings in one line it goes there and back.
func hull(points []Point) []Point {
	sorted := slices.Clone(points)
	slices.SortFunc(sorted, func(a, b Point) int {
		return cmp.Or(cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.At.Y, b.At.Y))
	})
	if len(sorted) < 3 {
		return sorted
	}
	lower := chain(sorted)
	slices.Reverse(sorted)
	upper := chain(sorted)
	return append(lower[:len(lower)-1], upper[:len(upper)-1]...)
}

// chain walks one side of the border.
func chain(sorted []Point) []Point {
	var out []Point
	for _, p := range sorted {
		for len(out) >= 2 && turnsRight(out[len(out)-2].At, out[len(out)-1].At, p.At) {
			out = out[:len(out)-1]
		}
		out = append(out, p)
	}
	return out
}

// turnsRight reports whether b lies inside the line from a to c by more than flat.
func turnsRight(a, b, c geom.Vec2) bool {
	along := c.Sub(a)
	return along.Cross(b.Sub(a)) > flat*along.Len()
}

// border is where a place lies against the hull.
type border struct {
	inside bool
	lux    float64 // of the hull's nearest point, when not inside
	off    float64 // metres from the hull, when not inside
}

// against places q against a hull of two or more readings.
func against(hull []Point, q geom.Vec2) border {
	inside := len(hull) > 2
	best := border{off: -1}
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		edge := b.At.Sub(a.At)
		if edge.Cross(q.Sub(a.At)) <= flat*edge.Len() {
			inside = false
		}
		k := min(1, max(0, q.Sub(a.At).Dot(edge)/edge.Dot(edge)))
		off := q.Sub(a.At.Add(edge.Scale(k))).Len()
		if best.off < 0 || off < best.off {
			best = border{lux: (1-k)*float64(a.Lux) + k*float64(b.Lux), off: off}
		}
	}
	best.inside = inside
	return best
}
