package geom

import "math"

// Overlap returns the area that an ellipse and the region share, and the
// gradient of that area as the ellipse's centre moves. It is exact up to
// rounding: no arc is replaced by chords. It allocates nothing.
//
// The ellipse becomes the unit disc, the outline's lines lines and its arcs
// elliptic arcs. Along the outline the parts inside the disc add half the
// integral of w x dw; from each point where the outline leaves the disc to the
// next where it enters, the circle's arc adds half its angle. The gradient is
// minus the integral of the outer normal along the outline's inner parts,
// which is their chords turned a quarter; parts marked own move with the
// ellipse and count for nothing there. Own derivation from Green's theorem.
func (o *Outline) Overlap(e Ellipse) (area float64, gradient Vec2) {
	l, ok := e.lens()
	if !ok || o.Empty() {
		return 0, Vec2{}
	}
	w := walk{o: o, lens: &l}
	first := l.corner(o.pieces[0].start)
	from := first
	for i := range o.n {
		to := first
		if i+1 < o.n {
			to = l.corner(o.pieces[i+1].start)
		}
		if p := &o.pieces[i]; p.arc {
			w.alongArc(p, from, to)
		} else {
			w.alongLine(p.own, from, to)
		}
		from = to
	}
	return w.close(e)
}

// holds reports whether the region holds the ellipse's inner half, and so far
// more of it than doubt.
func (w *walk) holds(e Ellipse) bool {
	for _, v := range [4]Vec2{e.A, e.B, e.A.Scale(-1), e.B.Scale(-1)} {
		if !w.o.Contains(e.Centre.Add(v.Scale(0.5))) {
			return false
		}
	}
	return true
}

// walk gathers what one turn along the outline finds in the disc's plane.
type walk struct {
	o     *Outline
	lens  *lens
	twice float64 // twice the area gathered
	chord Vec2    // sum of the chords of the outline's own inner parts

	crossed, pending    bool // some crossing met; the last one left the disc
	firstEntry, lastOut Vec2
	entryDue            bool // the first crossing entered: its arc closes the turn
	inside              bool // some part lies inside
}

// part adds an inner part of the outline from a to b.
func (w *walk) part(a, b Vec2, own bool) {
	w.inside = true
	w.twice += a.Cross(b)
	if !own {
		w.chord.X += b.X - a.X
		w.chord.Y += b.Y - a.Y
	}
}

// enter records that the outline comes into the disc at p.
func (w *walk) enter(p Vec2) {
	switch {
	case w.pending:
		w.twice += turn(w.lastOut, p)
		w.pending = false
	case !w.crossed:
		w.firstEntry, w.entryDue = p, true
	}
	w.crossed = true
}

// leave records that the outline goes out of the disc at p.
func (w *walk) leave(p Vec2) {
	w.lastOut, w.pending, w.crossed = p, true, true
}

// Where an outline grazes the circle, rounding moves the crossings by about
// the root of the last digit. A step backward on the circle of less than
// backward radians is such rounding and not almost a whole turn; bites with a
// chord below twice that, whose depth is far below rounding, are left out so
// that none of them is taken for it.
const (
	backward = 1e-7
	bite     = 2 * backward
)

// turn returns the counter-clockwise angle from a to b, from a step backward to 2 pi.
func turn(a, b Vec2) float64 {
	q := math.Atan2(a.Cross(b), a.Dot(b))
	if q > -backward {
		return q
	}
	return q + 2*math.Pi
}

// alongLine follows a line from a to b.
func (w *walk) alongLine(own bool, a, b corner) {
	if a.over < 0 && b.over < 0 {
		w.part(a.at, b.at, own)
		return
	}
	dx, dy := b.at.X-a.at.X, b.at.Y-a.at.Y
	dd := dx*dx + dy*dy
	ad := a.at.X*dx + a.at.Y*dy
	outside := a.over >= 0 && b.over >= 0
	if outside && (ad >= 0 || -ad >= dd) {
		return
	}
	disc := ad*ad - dd*a.over
	if outside && 4*disc <= bite*bite*dd {
		return
	}
	root := math.Sqrt(max(0, disc))
	p, q := a.at, b.at
	if a.over >= 0 {
		t := (-ad - root) / dd
		p = Vec2{a.at.X + t*dx, a.at.Y + t*dy}
		w.enter(p)
	}
	if b.over >= 0 {
		t := (-ad + root) / dd
		q = Vec2{a.at.X + t*dx, a.at.Y + t*dy}
	}
	w.part(p, q, own)
	if b.over >= 0 {
		w.leave(q)
	}
}

// doubt is how far from nothing, or past the whole disc, twice the area must be
// for a whole turn of the circle to be in question: far above rounding.
const doubt = 1e-5

// close adds the last arc of the circle, or settles a turn without crossings.
func (w *walk) close(e Ellipse) (float64, Vec2) {
	if w.crossed {
		if w.pending && w.entryDue {
			w.twice += turn(w.lastOut, w.firstEntry)
		}
		// Where the outline touches the circle from outside, a piece cut off a
		// corner may be taken for a step backward, and the other way round.
		switch {
		case w.twice < doubt && w.holds(e):
			w.twice += 2 * math.Pi
		case w.twice > 2*math.Pi+doubt:
			w.twice -= 2 * math.Pi
		}
	} else if !w.inside && w.o.Contains(e.Centre) {
		w.twice = 2 * math.Pi
	}
	g := w.lens.plane(w.chord)
	// A sliver thinner than rounding may seem crossed by one line only: no more
	// than its own area is shared.
	return max(0, min(w.twice*w.lens.det/2, w.o.area)), Vec2{-g.Y, g.X}
}
