package geom

import "math"

// Shared returns the region that r shares with r moved by d: what a tunnel of
// outline r leaves open toward a slanting direction.
//
// The boundaries of a convex region and its translate cross in two points X
// and d - X, so the shared region's boundary is one unbroken run of r's
// boundary between them and the same run turned half about d/2. Own derivation.
func (r RoundRect) Shared(d Vec2) Outline {
	if d == (Vec2{}) {
		return r.Outline()
	}
	r = r.tidy()
	low, ok := r.crossing(math.Abs(d.X), math.Abs(d.Y))
	if !ok {
		return Outline{}
	}
	high := Vec2{math.Abs(d.X), math.Abs(d.Y)}.Sub(low)
	flipX, flipY := d.X < 0, d.Y < 0
	if flipX {
		low.X, high.X = -low.X, -high.X
	}
	if flipY {
		low.Y, high.Y = -low.Y, -high.Y
	}
	if flipX != flipY { // one mirror turns counter-clockwise into clockwise
		low, high = high, low
	}
	var o Outline
	if !r.run(&o, low, high) {
		return Outline{}
	}
	half := o.n
	for i := range half {
		p := o.pieces[i]
		p.start = d.Sub(p.start)
		p.centre = d.Sub(p.centre)
		p.corner = d.Sub(p.corner)
		if o.n < maxPieces {
			o.pieces[o.n] = p
			o.n++
		}
	}
	o.measure()
	return o
}

// run appends r's boundary from a counter-clockwise to b, both on it.
func (r RoundRect) run(o *Outline, a, b Vec2) bool {
	i, last := r.locate(a), r.locate(b)
	if i == last {
		hub := r.hub(i | 1)
		if i%2 == 0 {
			hub = Vec2{}
		}
		if a.Sub(hub).Cross(b.Sub(hub)) <= 0 {
			return false // only rounding is left of the region
		}
	}
	for ; i != last; i = (i + 1) % 8 {
		next := r.first((i + 1) % 8)
		r.add(o, i, a, next)
		a = next
	}
	r.add(o, i, a, b)
	return true
}

// crossing returns the lower right point in which the boundaries of r and of r
// moved by (dx, dy), both at least 0, cross.
//
// At height y the moved region's lower edge starts at y = dy - HalfH; from
// there up, r's right side enters the moved region through its bottom wall,
// its lower right arc or its left side.
func (r RoundRect) crossing(dx, dy float64) (Vec2, bool) {
	if dx >= 2*r.HalfW || dy >= 2*r.HalfH {
		return Vec2{}, false
	}
	y := dy - r.HalfH
	x := r.right(y)
	inner := r.HalfW - r.Radius
	switch {
	case x-dx > inner:
		if p, ok := r.throughArc(dx, dy); ok {
			return p, true
		}
		top := min(y+r.Radius, r.HalfH)
		y = fall(y, top, func(y float64) float64 { return r.right(y) - r.right(y-dy) - dx })
	case x-dx < -inner:
		if 2*r.right(dy/2) <= dx {
			return Vec2{}, false
		}
		y = fall(y, dy/2, func(y float64) float64 { return dx - r.right(y) - r.right(y-dy) })
	}
	return Vec2{r.right(y), y}, true
}

// throughArc is crossing in closed form, for the usual cases in which r's lower
// right arc or right wall meets the moved region's lower right arc.
func (r RoundRect) throughArc(dx, dy float64) (Vec2, bool) {
	low := r.HalfH - r.Radius
	// Wall: the arc reaches x = HalfW at HalfW - dx of its own region.
	if rise := r.Radius - dx; rise >= 0 {
		if y := dy - low - math.Sqrt(r.Radius*r.Radius-rise*rise); y >= -low && y <= low {
			return Vec2{r.HalfW, y}, true
		}
	}
	// Arcs: two equal circles cross on the bisector of their centres.
	dd := dx*dx + dy*dy
	h2 := r.Radius*r.Radius - dd/4
	if h2 <= 0 {
		return Vec2{}, false
	}
	k := math.Sqrt(h2 / dd)
	p := Vec2{dx/2 + k*dy, dy/2 - k*dx} // from the lower right hub
	if p.X < dx || p.Y > 0 {
		return Vec2{}, false
	}
	return p.Add(r.hub(7)), true
}

// fall returns a root of f, positive at a and at most 0 at b, to the last
// digits: false position in the Illinois form, halved now and then.
func fall(a, b float64, f func(float64) float64) float64 {
	fa, fb := f(a), f(b)
	side := 0
	for i := 0; i < 100 && fb < 0 && math.Abs(b-a) > 1e-16; i++ {
		m := b - fb*(b-a)/(fb-fa)
		if i%4 == 3 || !(m > min(a, b) && m < max(a, b)) {
			m = a + (b-a)/2
		}
		fm := f(m)
		if fm > 0 {
			a, fa = m, fm
			if side > 0 {
				fb /= 2
			}
			side = 1
			continue
		}
		b, fb = m, fm
		if side < 0 {
			fa /= 2
		}
		side = -1
	}
	return b
}
