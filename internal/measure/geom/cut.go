package geom

import "math"

// Cut returns the part of the region where n . q <= h. The new boundary line
// is marked own: it moves with the ellipse in [Outline.Overlap].
func (o *Outline) Cut(n Vec2, h float64) Outline {
	var cut Outline
	for i := range o.n {
		p := &o.pieces[i]
		a, b := p.start, o.end(i)
		if p.arc {
			cut.cutArc(p, a, b, n, h)
		} else {
			cut.cutLine(p, a, b, n, h)
		}
	}
	cut.measure()
	return cut
}

// cutLine appends the part of a line that the half-plane leaves; where the
// region goes out of the half-plane it starts the closing line.
func (o *Outline) cutLine(p *piece, a, b, n Vec2, h float64) {
	fa, fb := n.Dot(a)-h, n.Dot(b)-h
	if fa > 0 && fb > 0 {
		return
	}
	cross := func() Vec2 { return a.Add(b.Sub(a).Scale(fa / (fa - fb))) }
	if fa > 0 {
		a = cross()
		o.line(a, p.own)
		return
	}
	o.line(a, p.own)
	if fb > 0 {
		o.line(cross(), true)
	}
}

// cutArc is cutLine for an arc, which the half-plane's edge may meet twice.
func (o *Outline) cutArc(p *piece, a, b, n Vec2, h float64) {
	length := n.Len()
	far := (h - n.Dot(p.centre)) / length // of the edge from the arc's centre
	unit := n.Scale(1 / length)
	fa, fb := n.Dot(a) <= h, n.Dot(b) <= h
	half := math.Sqrt(max(0, p.radius*p.radius-far*far))
	foot := p.centre.Add(unit.Scale(far))
	along := Vec2{-unit.Y, unit.X}.Scale(half)
	out, in := foot.Sub(along), foot.Add(along) // counter-clockwise the arc goes out at the first, in at the second
	switch {
	case fa && fb:
		if half == 0 || !between(a, out, b) || !between(a, in, b) {
			o.arc(p.centre, a, b, p.radius)
			return
		}
		o.arc(p.centre, a, out, p.radius)
		o.line(out, true)
		o.arc(p.centre, in, b, p.radius)
	case fa:
		o.arc(p.centre, a, out, p.radius)
		o.line(out, true)
	case fb:
		o.arc(p.centre, in, b, p.radius)
	case half > 0 && between(a, in, b) && between(a, out, b): // only its middle
		o.arc(p.centre, in, out, p.radius)
		o.line(out, true)
	}
}

// between reports whether p, on the circle of the arc from a to b, lies on that arc.
func between(a, p, b Vec2) bool { return b.Sub(a).Cross(p.Sub(a)) < 0 }
