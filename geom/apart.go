package geom

import "math"

// Apart returns a direction in which an ellipse must move to come to touch the
// convex hull of some regions, when it lies outside it: n such that every shift
// d that brings them together has n . d > 0. It returns false when they touch
// or the regions are empty.
//
// In the disc's plane this is the direction to the hull's point nearest the
// origin, found by Frank and Wolfe's steps with the exact support points.
func Apart(e Ellipse, regions ...*Outline) (Vec2, bool) {
	l, ok := e.lens()
	var x Vec2
	some := false
	for _, o := range regions {
		if !o.Empty() {
			x, some = l.disc(o.pieces[0].start), true
		}
	}
	if !ok || !some {
		return Vec2{}, false
	}
	for range 64 {
		down := Vec2{-(l.xx*x.X + l.yx*x.Y), -(l.xy*x.X + l.yy*x.Y)} // minus x, taken back to the plane
		most, v := math.Inf(-1), Vec2{}
		for _, o := range regions {
			if o.Empty() {
				continue
			}
			if h, q := o.Support(down); h > most {
				most, v = h, l.disc(q)
			}
		}
		if r := x.Len(); x.Dot(v) >= r && r > 0 { // the whole hull lies beyond the tangent at x/r
			return down.Scale(-1), true
		}
		step := v.Sub(x)
		dd := step.Dot(step)
		if dd == 0 {
			break
		}
		t := -x.Dot(step) / dd
		if !(t > 0) {
			break
		}
		x = x.Add(step.Scale(min(t, 1)))
	}
	return Vec2{}, false
}
