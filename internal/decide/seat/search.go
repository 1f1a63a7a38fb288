package seat

import (
	"context"
	"slices"
)

// Proved says how a seating was proved to be the best.
type Proved string

// The ways.
const (
	// ByPrices: at the prices of the seats nobody would rather have others, and no
	// seat with a price is empty. Whoever has the night can add it up again.
	ByPrices Proved = "prices"
	// BySearch: prices leave some ways open, and a search has closed them.
	BySearch Proved = "search"
	// NotProved: the context ended first; the bound holds.
	NotProved Proved = "not proved"
)

// found is the best seating of a laid night that is known, and what no seating passes.
type found struct {
	all          []way   // by person
	prices       []int64 // in points, by period * holes + hole
	value, bound int64   // in points
	proved       Proved
}

// hunt looks for the best seating of a laid night.
type hunt struct {
	*laid
	found
	match *match
	trial []way
	who   []int   // by hole, in one period
	rent  []int64 // by hole, in one period
	taken []bool  // by hole, in one period
}

// solve finds the best seating and proves it. Where nobody changes holes in the best
// seats of each period, or nothing is lost by it, the periods are assignments of
// their own and their prices prove the whole. Else prices are brought near what
// they should be, and the few ways that they leave open go to the solver.
func (l *laid) solve(ctx context.Context) found {
	h := &hunt{laid: l, match: newMatch(len(l.points), l.holes), trial: l.nobody(), who: make([]int, l.holes), rent: make([]int64, l.holes), taken: make([]bool, l.holes)}
	h.found = found{all: l.nobody(), prices: make([]int64, l.periods*l.holes), value: barred}
	h.apart()
	if !h.done() {
		h.together()
		h.descend(ctx)
		h.settle(ctx)
	}
	if h.proved == "" {
		h.proved = NotProved
		if h.done() {
			h.proved = ByPrices
		}
	}
	h.byNames(h.all)
	return h.found
}

// done reports whether the bound meets the value but for the rounding of prices, of
// which each is off by half a point at most.
func (h *hunt) done() bool {
	return h.bound-h.value <= int64(h.periods*(h.holes+len(h.points)))
}

func (l *laid) nobody() []way {
	seats := slices.Repeat(way{none}, l.periods*len(l.points))
	all := make([]way, len(l.points))
	for i := range all {
		all[i] = seats[i*l.periods : (i+1)*l.periods : (i+1)*l.periods]
	}
	return all
}

// offer takes the trial where it has more points.
func (h *hunt) offer() bool {
	v := h.total(h.trial)
	if v <= h.value {
		return false
	}
	h.value = v
	for i, w := range h.trial {
		copy(h.all[i], w)
	}
	return true
}

// period seats one period of the trial anew, as points say.
func (h *hunt) period(p int, points func(who, hole int) int64) {
	h.match.solve(points, h.who, h.rent)
	for _, w := range h.trial {
		w[p] = none
	}
	for k, i := range h.who {
		if i != none {
			h.trial[i][p] = int8(k)
		}
	}
}

// apart seats each period for itself, which bounds all, and mends what moves cost.
func (h *hunt) apart() {
	for p := range h.periods {
		h.period(p, func(i, k int) int64 { return h.points[i][p*h.holes+k] })
		copy(h.prices[p*h.holes:], h.rent)
	}
	h.bound = h.ceiling(h.prices)
	h.offer()
	h.polish()
}

// together seats all periods as one, and mends it.
func (h *hunt) together() {
	h.period(0, func(i, k int) (sum int64) {
		for p := range h.periods {
			sum += h.points[i][p*h.holes+k]
		}
		return max(sum, barred)
	})
	for _, w := range h.trial {
		for p := range w {
			w[p] = w[0]
		}
	}
	h.offer()
	h.polish()
}

// polish seats one period after another anew with the others as they are, until
// that gains nothing.
func (h *hunt) polish() {
	for better := true; better; {
		better = false
		for p := range h.periods {
			h.period(p, func(i, k int) int64 { return h.beside(i, p, int8(k)) })
			better = h.offer() || better
		}
	}
}

// beside is what a hole brings in a period, less the moves to and from it.
func (h *hunt) beside(i, p int, hole int8) int64 {
	x, w := h.points[i][p*h.holes+int(hole)], h.trial[i]
	if p > 0 && w[p-1] != none && w[p-1] != hole {
		x -= h.move[i]
	}
	if p+1 < h.periods && w[p+1] != none && w[p+1] != hole {
		x -= h.move[i]
	}
	return x
}
