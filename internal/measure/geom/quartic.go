package geom

// quartic is a polynomial of degree 4 on [0, 1] in Bernstein form. Its values
// lie between the least and the greatest coefficient, and it has no more roots
// than its coefficients change sign (Descartes' rule in this basis).
type quartic [5]float64

// variations counts the changes of sign; 0 counts as positive throughout.
func (q *quartic) variations() int {
	n := 0
	for i := range 4 {
		if (q[i] < 0) != (q[i+1] < 0) {
			n++
		}
	}
	return n
}

// at returns the value at t and the slope there.
func (q *quartic) at(t float64) (value, slope float64) {
	u := 1 - t
	// De Casteljau's scheme down to the last two points.
	a0, a1, a2, a3 := u*q[0]+t*q[1], u*q[1]+t*q[2], u*q[2]+t*q[3], u*q[3]+t*q[4]
	a0, a1, a2 = u*a0+t*a1, u*a1+t*a2, u*a2+t*a3
	a0, a1 = u*a0+t*a1, u*a1+t*a2
	return u*a0 + t*a1, 4 * (a1 - a0)
}

// split returns the polynomial's two halves, each on [0, 1] again.
func (q *quartic) split() (left, right quartic) {
	c := *q
	left[0], right[4] = c[0], c[4]
	for k := 1; k < 5; k++ {
		for i := 0; i < 5-k; i++ {
			c[i] = (c[i] + c[i+1]) / 2
		}
		left[k], right[4-k] = c[0], c[4-k]
	}
	return left, right
}

// bracketed returns where a polynomial whose ends differ in sign changes it:
// Newton's steps kept inside a shrinking bracket. A value of 0 is positive, so
// that a touch at one end is not taken for the crossing.
func (q *quartic) bracketed() float64 {
	lo, hi := 0.0, 1.0
	t := q[0] / (q[0] - q[4])
	if !(t > 0 && t < 1) {
		t = 0.5
	}
	for range 60 {
		v, s := q.at(t)
		if (v < 0) == (q[0] < 0) {
			lo = t
		} else {
			hi = t
		}
		next := t - v/s
		if !(next > lo && next < hi) {
			next = lo + (hi-lo)/2
		}
		if d := next - t; d < 1e-15 && d > -1e-15 {
			return next
		}
		t = next
	}
	return t
}

// maxDepth ends the search for two roots that lie closer together than 2^-24 of
// the arc: what they would cut off is below rounding.
const maxDepth = 24

// roots writes the roots in [0, 1] in rising order and returns how many. The
// count is even exactly when the ends have the same sign.
func (q *quartic) roots(out *[4]float64) int {
	n := 0
	q.hunt(0, 1, 0, out, &n)
	return n
}

func (q *quartic) hunt(lo, width float64, depth int, out *[4]float64, n *int) {
	differ := (q[0] < 0) != (q[4] < 0)
	switch v := q.variations(); {
	case v == 0, *n == len(out), depth == maxDepth && !differ:
		return
	case v == 1, depth == maxDepth:
		out[*n] = lo + width*q.bracketed()
		*n++
		return
	}
	left, right := q.split()
	left.hunt(lo, width/2, depth+1, out, n)
	right.hunt(lo+width/2, width/2, depth+1, out, n)
}
