package geom

// Apart returns a direction in which an ellipse must move to come to touch the
// region, when they share no area: n such that every shift d that brings them
// together has n . d > 0. It returns false when it finds none, as they touch.
//
// In the disc's plane this is the direction to the region's point nearest the
// origin, found by Frank and Wolfe's steps with the exact support points.
func (o *Outline) Apart(e Ellipse) (Vec2, bool) {
	l, ok := e.lens()
	if !ok || o.Empty() {
		return Vec2{}, false
	}
	x := l.disc(o.pieces[0].start)
	for range 64 {
		down := Vec2{-(l.xx*x.X + l.yx*x.Y), -(l.xy*x.X + l.yy*x.Y)} // minus x, taken back to the plane
		_, q := o.Support(down)
		v := l.disc(q)
		if r := x.Len(); x.Dot(v) >= r && r > 0 { // the whole region lies beyond the tangent at x/r
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
