package sheet

import (
	"math"
	"slices"
)

// mostHatchLines bounds the lines of one hatch.
const mostHatchLines = 5000

// Hatch returns the parallel lines that fill an outline, for cut faces in
// sections: spacing in millimetres, direction in radians counter-clockwise as
// seen. Inside is by the even-odd rule, so that holes stay white. Curves count
// within 0.005 mm.
func Hatch(outline Path, angle, spacing float64) []Line {
	if !(spacing > 0) {
		return nil
	}
	s, c := math.Sincos(angle)
	// u runs along the hatch lines, v across them.
	turn := func(p Point) Point { return Point{p.X*c - p.Y*s, p.X*s + p.Y*c} }
	back := func(p Point) Point { return Point{p.X*c + p.Y*s, -p.X*s + p.Y*c} }
	var parts [][]Point
	b := emptyBounds()
	for _, part := range outline.flatten(flatTolerance) {
		pts := make([]Point, len(part.pts))
		for i, p := range part.pts {
			pts[i] = turn(p)
			b.add(pts[i])
		}
		parts = append(parts, pts)
	}
	box := b.rect()
	first := math.Ceil(box.Y/spacing) * spacing
	n := int(math.Floor((box.Y + box.H - first) / spacing))
	var out []Line
	for i := 0; i <= min(n, mostHatchLines); i++ {
		v := first + float64(i)*spacing
		us := crossings(parts, v)
		for k := 0; k+1 < len(us); k += 2 {
			if us[k+1]-us[k] > flatTolerance {
				out = append(out, Line{back(Pt(us[k], v)), back(Pt(us[k+1], v))})
			}
		}
	}
	return out
}

// crossings returns where the line at v crosses the outlines, in rising order.
func crossings(parts [][]Point, v float64) []float64 {
	var us []float64
	for _, pts := range parts {
		for i, a := range pts {
			b := pts[(i+1)%len(pts)]
			if (a.Y > v) != (b.Y > v) {
				us = append(us, a.X+(v-a.Y)*(b.X-a.X)/(b.Y-a.Y))
			}
		}
	}
	slices.Sort(us)
	return us
}

// Hatch fills an outline with hatch lines of a class.
func (g *Group) Hatch(class string, outline Path, angle, spacing float64) {
	for _, l := range Hatch(outline, angle, spacing) {
		g.Add(class, l)
	}
}
