package solve

import "math"

// proved returns an upper bound on every set in the present node that rests on
// weak duality alone: for any prices pi of the rows,
//
//	cost.x <= sum pi_r b_r + sum over variables of max over its box of (cost - pi.A) x.
//
// It uses the prices that the simplex ended with but none of its other
// numbers, so that rounding in the tableau can weaken the bound, never break
// it. A row with pi < 0 is taken at its other end, b - room.
//
// It leaves cost - pi.A in h.rest for [hunt.decide].
func (h *hunt) proved() float64 {
	lp := h.lp
	rest := h.rest
	clear(rest)
	for k := range h.parts {
		rest[h.n+k] = 1 // the trace of cost on columns is left out
	}
	var sum float64
	for r, row := range lp.rows {
		pi := lp.price(r)
		if pi == 0 {
			continue
		}
		if pi > 0 {
			sum += pi * (row.b - lp.lo[lp.n+r])
		} else {
			sum += pi * (row.b - lp.hi[lp.n+r])
		}
		axpy(rest, -pi, row.a)
	}
	for v, c := range rest {
		if c > 0 {
			sum += c * lp.hi[v]
		} else {
			sum += c * lp.lo[v]
		}
	}
	return sum
}

// keepPrices notes what the root's relaxation would pay for one more of each row.
func (h *hunt) keepPrices() {
	h.prices = make([]float64, len(h.stated))
	for r, at := range h.stated {
		if at >= 0 {
			h.prices[r] = h.lp.price(at)
		}
	}
}

// decide fixes the columns that a bound just proved decides: choosing one
// whose rest is below zero lowers the bound by as much, and so does leaving one
// whose rest is above; where that falls to the best value found, no better set
// of the node does it. It returns the node's branch with these added.
func (h *hunt) decide(bound float64, b *branch) *branch {
	for i := range h.n {
		if h.lp.lo[i] == h.lp.hi[i] {
			continue
		}
		switch c := h.rest[i]; {
		case c < 0 && bound+c <= h.value+Tolerance:
			b = &branch{v: i, parent: b}
		case c > 0 && bound-c <= h.value+Tolerance:
			b = &branch{v: i, lo: 1, hi: 1, parent: b}
		}
	}
	return b
}

// impossible reports whether tableau row r proves that the node holds no set:
// the row is a sum of stated rows, rho.(A x + s) = rho.b, whose left side
// cannot reach its right side within the boxes. Only the stated numbers count.
func (h *hunt) impossible(r int) bool {
	lp := h.lp
	sum := make([]float64, lp.n)
	var goal, least, most float64
	reach := func(c, lo, hi float64) {
		if c > 0 {
			least, most = least+c*lo, most+c*hi
		} else {
			least, most = least+c*hi, most+c*lo
		}
	}
	for k, row := range lp.rows {
		var rho float64
		switch w := lp.where[lp.n+k]; {
		case w >= 0:
			rho = lp.t[r][w]
		case -1-w == r:
			rho = 1
		}
		if rho == 0 {
			continue
		}
		axpy(sum, rho, row.a)
		goal += rho * row.b
		reach(rho, lp.lo[lp.n+k], lp.hi[lp.n+k])
	}
	for v, c := range sum {
		reach(c, lp.lo[v], lp.hi[v])
	}
	const sure = 1e-9
	slack := sure * (1 + math.Abs(goal))
	return least > goal+slack || most < goal-slack
}
