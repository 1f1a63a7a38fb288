package geom

import "math"

// alongArc follows an arc from a to b, both in the disc's plane. In rational
// form the arc is N(t)/D(t) with N = (a, weight corner, b) and
// D = (1, weight, 1) in Bernstein form, so that |N|^2 - D^2 is a quartic whose
// sign says which side of the unit circle the arc is on.
func (w *walk) alongArc(p *piece, from, to corner) {
	c := w.lens.disc(p.corner)
	a, b := from.at, to.at
	h := p.weight
	q := quartic{
		from.over,
		h * (a.X*c.X + a.Y*c.Y - 1),
		(a.X*b.X + a.Y*b.Y - 1 + 2*h*h*(c.X*c.X+c.Y*c.Y-1)) * (1.0 / 3),
		h * (b.X*c.X + b.Y*c.Y - 1),
		to.over,
	}
	if q[0] >= 0 && q[1] >= 0 && q[2] >= 0 && q[3] >= 0 && q[4] >= 0 {
		return
	}
	if q[0] < 0 && q[1] <= 0 && q[2] <= 0 && q[3] <= 0 && q[4] < 0 {
		w.whole(p, a, b)
		return
	}
	var roots [4]float64
	var cross [4]Vec2
	n := q.roots(&roots)
	for i, t := range roots[:n] {
		cross[i] = rational(a, c, b, h, t)
	}
	n = dropBites(&cross, n, q[0] >= 0)
	in, start := q[0] < 0, a
	for _, at := range cross[:n] {
		if in {
			w.piece(p, start, at)
			w.leave(at)
		} else {
			w.enter(at)
		}
		in, start = !in, at
	}
	switch {
	case in && n == 0:
		w.whole(p, a, b)
	case in:
		w.piece(p, start, b)
	}
}

// dropBites removes from n crossings each pair, an entry and the exit after it,
// that cuts off too little; it returns how many are left. The first
// crossing is an entry when outside is set.
func dropBites(cross *[4]Vec2, n int, outside bool) int {
	i := 0
	if !outside {
		i = 1
	}
	for i+1 < n {
		if cross[i+1].Sub(cross[i]).Len() >= bite {
			i += 2
			continue
		}
		copy(cross[i:], cross[i+2:n])
		n -= 2
	}
	return n
}

// rational returns the arc's point at t.
func rational(a, c, b Vec2, h, t float64) Vec2 {
	u := 1 - t
	wa, wc, wb := u*u, 2*t*u*h, t*t
	d := wa + wc + wb
	return Vec2{(wa*a.X + wc*c.X + wb*b.X) / d, (wa*a.Y + wc*c.Y + wb*b.Y) / d}
}

// whole adds an arc that lies inside from end to end.
func (w *walk) whole(p *piece, a, b Vec2) {
	w.part(a, b, p.own)
	w.twice += 2 * p.bulge / w.lens.det
}

// piece adds the part of an arc from a to b.
func (w *walk) piece(p *piece, a, b Vec2) {
	w.part(a, b, p.own)
	half := w.lens.plane(b.Sub(a)).Len() / (2 * p.radius)
	w.twice += 2 * segment(p.radius, 2*math.Asin(min(1, half))) / w.lens.det
}
