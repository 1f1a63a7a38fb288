package seat

import (
	"cmp"
	"context"
	"math"
	"slices"

	"example.org/rinkpane/internal/decide/solve"
)

// descents is how often prices are moved; own choice, by measurement.
const (
	descents      = 120
	roundsToOffer = 10
)

// descend lowers the bound by moving prices toward where each seat is asked for by
// one: up where several would have it, down where nobody would (the subgradient
// method with Polyak's step; Held, Wolfe and Crowder 1974).
func (h *hunt) descend(ctx context.Context) {
	prices, asked := slices.Clone(h.prices), make([]int64, len(h.prices))
	toward := make([]float64, len(prices))
	pace := 1.0
	for round, idle := 0, 0; round < descents && !h.done() && ctx.Err() == nil; round++ {
		bound, spread := h.demand(prices, asked)
		if idle++; bound < h.bound {
			h.bound, idle = bound, 0
			copy(h.prices, prices)
		}
		if round%roundsToOffer == roundsToOffer-1 {
			h.trySeats()
		}
		if idle > 5 {
			pace, idle = pace/1.5, 0
		}
		if spread == 0 {
			return
		}
		var square float64
		for k := range toward {
			toward[k] = float64(asked[k]) + 0.7*toward[k]
			if prices[k] == 0 && toward[k] < 0 {
				toward[k] = 0
			}
			square += toward[k] * toward[k]
		}
		step := pace * float64(bound-h.value) / square
		for k := range prices {
			prices[k] = max(0, prices[k]+int64(math.Round(step*toward[k])))
		}
	}
}

// trySeats gives each seat to the first of those who would have it at the prices,
// whose ways stand in the trial, and mends it.
func (h *hunt) trySeats() {
	for p := range h.periods {
		clear(h.taken)
		for _, w := range h.trial {
			if k := w[p]; k != none && h.taken[k] {
				w[p] = none
			} else if k != none {
				h.taken[k] = true
			}
		}
	}
	h.offer()
	h.polish()
}

// demand writes by how many more than one each seat is asked for at prices; it
// returns the bound and the squares' sum of what can be moved.
func (h *hunt) demand(prices, asked []int64) (bound, spread int64) {
	for k, p := range prices {
		asked[k] = -1
		bound += p
	}
	for i := range h.points {
		bound += h.net(i, prices)
		for p, k := range h.ways.walk(h.trial[i]) {
			if k != none {
				asked[p*h.holes+int(k)]++
			}
		}
	}
	for k, n := range asked {
		if n < 0 && prices[k] == 0 {
			asked[k], n = 0, 0
		}
		spread += n * n
	}
	return bound, spread
}

// open is a way that prices leave open: its loss is what the best way of the same
// person has over it.
type open struct {
	who    int
	at     way
	points int64
	loss   int64
}

// How many ways the solver is given at once, and how often.
const (
	mostOpen   = 240
	mostRounds = 12
	mostSeen   = 4000 // ways of one person that are looked through
	mostNodes  = 2000 // parts of the solver's search
)

// settle gives the solver the ways whose loss is below the gap: no seating with any
// other is better than the best known (fixing by reduced costs). Where they are too
// many, it is given the least losses, whose prices narrow the gap.
func (h *hunt) settle(ctx context.Context) {
	for range mostRounds {
		if h.done() || ctx.Err() != nil {
			return
		}
		ways, every := h.open(ctx)
		gap := h.bound - h.value
		res := h.choose(ctx, ways)
		if every && res.Status == solve.Optimal {
			h.bound, h.proved = min(h.bound, h.value), BySearch
			return
		}
		if h.bound-h.value >= gap {
			return
		}
	}
}

// open lists the ways whose loss is below the gap, the least losses where they are
// too many; every says that it lists all.
func (h *hunt) open(ctx context.Context) (ways []open, every bool) {
	gap := h.bound - h.value
	every = true
	for i := range h.points {
		best := h.net(i, h.prices)
		seen := 0
		every = h.ways.within(best-gap, func(at way, left int64) bool {
			if seen++; seen > mostSeen || ctx.Err() != nil {
				return false
			}
			o := open{who: i, at: slices.Clone(at), loss: best - left, points: left}
			for p, k := range at {
				if k != none {
					o.points += h.prices[p*h.holes+int(k)]
				}
			}
			ways = append(ways, o)
			return true
		}) && every
	}
	if len(ways) <= mostOpen {
		return ways, every
	}
	slices.SortStableFunc(ways, func(a, b open) int { return cmp.Compare(a.loss, b.loss) })
	return ways[:mostOpen], false
}

// choose solves the choice among open ways, takes what it finds, and tries its prices.
func (h *hunt) choose(ctx context.Context, ways []open) solve.Result {
	p := solve.Program{Columns: len(ways), Rows: make([]solve.Row, len(h.prices)+len(h.points))}
	worth := make(solve.Linear, len(ways))
	for c, o := range ways {
		worth[c] = float64(o.points) / full
		p.Rows[len(h.prices)+o.who].Columns = append(p.Rows[len(h.prices)+o.who].Columns, c)
		for q, k := range o.at {
			if k != none {
				row := &p.Rows[q*h.holes+int(k)]
				row.Columns = append(row.Columns, c)
			}
		}
	}
	for r := range p.Rows {
		p.Rows[r].Most = 1
	}
	p.Worth = worth
	s, err := solve.New(p)
	if err != nil { // not for columns that exist and rows that ascend
		return solve.Result{Status: solve.Stopped}
	}
	res := s.Solve(ctx, mostNodes, nil)
	for i := range h.trial {
		for q := range h.trial[i] {
			h.trial[i][q] = none
		}
	}
	for _, c := range res.Set {
		copy(h.trial[ways[c].who], ways[c].at)
	}
	h.offer()
	prices := make([]int64, len(h.prices))
	for k := range prices {
		if len(res.Prices) > 0 {
			prices[k] = max(0, int64(math.Round(full*res.Prices[k])))
		}
	}
	if b := h.ceiling(prices); b < h.bound {
		h.bound, h.prices = b, prices
	}
	return res
}
