package geom

import "math"

// apartSteps bounds the walk to the nearest point; few cases take ten.
const apartSteps = 40

// Apart returns a direction in which an ellipse must move to touch the
// convex hull of some regions, when it lies outside it: n such that every shift
// d that brings them together has n . d > 0. It returns false when the
// ellipse's centre lies in the hull or the regions are empty.
//
// In the disc's plane this is the direction to the hull's point nearest the
// origin, found with exact support points: of the triangle that the newest
// makes with the last two, the side nearest the origin is kept (the scheme of
// Gilbert, Johnson and Keerthi).
func Apart(e Ellipse, regions ...*Outline) (Vec2, bool) {
	l, ok := e.lens()
	var a Vec2
	some := false
	for _, o := range regions {
		if !o.Empty() {
			a, some = l.disc(o.pieces[0].start), true
		}
	}
	if !ok || !some {
		return Vec2{}, false
	}
	x, b := a, a
	for range apartSteps {
		r := x.Len()
		if r == 0 {
			return Vec2{}, false
		}
		v := l.lowest(x, regions)
		if gain := r - x.Dot(v)/r; x.Dot(v) >= r || gain <= 1e-12*r {
			break // the whole hull lies beyond the tangent at x/r, or x is its nearest point
		}
		xa, xb := nearestOn(a, v), nearestOn(b, v)
		inside := a.Cross(b)*b.Cross(v) > 0 && b.Cross(v)*v.Cross(a) > 0
		switch {
		case inside:
			return Vec2{}, false
		case xa.Len() <= xb.Len():
			x, b = xa, v
		default:
			x, a = xb, v
		}
	}
	return l.back(x), true
}

// lowest returns, in the disc's plane, the regions' point farthest against x.
func (l *lens) lowest(x Vec2, regions []*Outline) Vec2 {
	down := l.back(x).Scale(-1)
	most, at := math.Inf(-1), Vec2{}
	for _, o := range regions {
		if o.Empty() {
			continue
		}
		if h, q := o.Support(down); h > most {
			most, at = h, q
		}
	}
	return l.disc(at)
}

// back maps a normal of the disc's plane to the plane: M inverse transposed.
func (l *lens) back(w Vec2) Vec2 {
	return Vec2{l.xx*w.X + l.yx*w.Y, l.xy*w.X + l.yy*w.Y}
}

// nearestOn returns the point of the line from a to b nearest the origin.
func nearestOn(a, b Vec2) Vec2 {
	d := b.Sub(a)
	dd := d.Dot(d)
	if dd == 0 {
		return a
	}
	return a.Add(d.Scale(max(0, min(1, -a.Dot(d)/dd))))
}
