package geom

import "math"

// maxPieces bounds an [Outline]: two rounded rectangles share at most 4 lines
// and 6 arcs (each outline keeps one unbroken run of its 8 pieces), and a cut
// by a half-plane adds one line.
const maxPieces = 16

// piece is one part of an outline, from its start to the next piece's start:
// a line, or a circular arc of at most a quarter turn, counter-clockwise.
type piece struct {
	start Vec2
	arc   bool
	own   bool // a side made by [Outline.Cut], not one of the outline that was cut

	centre Vec2    // of the arc
	radius float64 // of the arc
	corner Vec2    // where the arc's end tangents meet
	weight float64 // cosine of half the arc's angle: the weight of corner in the rational form
	bulge  float64 // area between the chord and the arc
}

// Outline is the boundary of a convex region: lines and circular arcs,
// counter-clockwise. It is a plain value of fixed size, so that clipping
// allocates nothing. The zero value is the empty region.
type Outline struct {
	n      int
	area   float64
	pieces [maxPieces]piece
}

// Empty reports whether the region has no area at all.
func (o *Outline) Empty() bool { return o.n < 2 }

// line appends a line that starts at a and ends where the next piece starts.
func (o *Outline) line(a Vec2, own bool) {
	if o.n < maxPieces {
		o.pieces[o.n] = piece{start: a, own: own}
		o.n++
	}
}

// arc appends the arc about centre from a to b, counter-clockwise and at most
// a quarter turn (beyond rounding).
func (o *Outline) arc(centre, a, b Vec2, radius float64) {
	if o.n == maxPieces {
		return
	}
	ea, eb := a.Sub(centre).Scale(1/radius), b.Sub(centre).Scale(1/radius)
	cos := ea.Dot(eb)
	turn := math.Atan2(ea.Cross(eb), cos)
	o.pieces[o.n] = piece{
		start: a, arc: true, centre: centre, radius: radius,
		corner: centre.Add(ea.Add(eb).Scale(radius / (1 + cos))),
		weight: math.Sqrt(max(0, (1+cos)/2)),
		bulge:  segment(radius, turn),
	}
	o.n++
}

// segment returns the area between an arc and its chord, R^2 (q - sin q) / 2.
func segment(radius, turn float64) float64 {
	if turn < 1e-3 { // q - sin q loses its digits: its series, good to 1e-15 of itself here
		q2 := turn * turn
		return radius * radius * turn * q2 / 12 * (1 - q2/20)
	}
	return radius * radius * (turn - math.Sin(turn)) / 2
}

// end returns where piece i ends.
func (o *Outline) end(i int) Vec2 {
	if i+1 < o.n {
		return o.pieces[i+1].start
	}
	return o.pieces[0].start
}

// Area returns the region's area.
func (o *Outline) Area() float64 { return o.area }

// measure sets the region's area once its pieces are complete.
func (o *Outline) measure() {
	if o.Empty() {
		o.area = 0
		return
	}
	var twice, bulges float64
	for i := range o.n {
		twice += o.pieces[i].start.Cross(o.end(i))
		bulges += o.pieces[i].bulge
	}
	o.area = max(0, twice/2+bulges)
}

// lastDigits is the share of a coordinate that rounding leaves uncertain.
const lastDigits = 1e-15

// Contains reports whether p lies in the region, boundary included as far as
// rounding allows.
func (o *Outline) Contains(p Vec2) bool {
	if o.Empty() {
		return false
	}
	for i := range o.n {
		pc := &o.pieces[i]
		way := p.Sub(pc.start)
		// The ends are right to their last digits, which says little about a
		// short piece's direction.
		digits := lastDigits * (math.Abs(p.X) + math.Abs(p.Y) + math.Abs(pc.start.X) + math.Abs(pc.start.Y))
		if o.end(i).Sub(pc.start).Cross(way) >= -digits*(math.Abs(way.X)+math.Abs(way.Y)) {
			continue
		}
		if !pc.arc || p.Sub(pc.centre).Len() > pc.radius {
			return false
		}
	}
	return true
}

// Support returns the largest n . q over the region's points q, and such a
// point. n need not have length 1. The region must not be empty.
func (o *Outline) Support(n Vec2) (float64, Vec2) {
	best, at := math.Inf(-1), Vec2{}
	unit := n.Unit()
	for i := range o.n {
		pc := &o.pieces[i]
		if v := n.Dot(pc.start); v > best {
			best, at = v, pc.start
		}
		if !pc.arc {
			continue
		}
		tip := pc.centre.Add(unit.Scale(pc.radius))
		if b := o.end(i); b.Sub(pc.start).Cross(tip.Sub(pc.start)) < 0 { // on the arc's side of its chord
			if v := n.Dot(tip); v > best {
				best, at = v, tip
			}
		}
	}
	return best, at
}
