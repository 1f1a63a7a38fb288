package solve

import (
	"context"
	"slices"
)

// mixRounds is how often cuts are drawn for one mix; own choice. A mix that is not
// the best one yet still gives a true cut.
const mixRounds = 60

// Mix returns a cut on the best mix of columns that keeps the program's rows and
// takes of each column no more than its share:
//
//	max { worth(u) : rows, 0 <= u <= y } <= Base + sum of Slope_i y_i    every y in [0, 1]^n
//
// as near as rounding lets it be met at the given shares. It is the proved bound of
// the relaxation as a function of the columns' upper ends (hunt.proved): for fixed
// prices of the rows a column's rest above zero counts as often as its share. No
// column may be one that must be chosen.
func (s *Solver) Mix(shares []float64) Cut {
	h := newHunt(s, &s.program, nil)
	for i, y := range shares {
		h.lp.hi[i] = min(y, h.lp.hi[i])
	}
	u := make([]float64, h.n)
	h.value = 0
	for range mixRounds {
		if h.relax(context.Background()) != solved {
			break
		}
		for i := range u {
			u[i] = min(shares[i], max(0, h.lp.value(i)))
		}
		if h.draw(u, u) < Tolerance/2 {
			break
		}
		h.tidy()
	}
	h.relax(context.Background())
	s.pool = h.rows
	c := Cut{Base: h.proved(), Slope: slices.Clone(h.rest[:h.n])}
	for i, r := range c.Slope {
		c.Slope[i] = max(0, r)
		c.Base -= c.Slope[i] * h.lp.hi[i]
	}
	return c
}
