package seat

import (
	"context"
	"math"
	"slices"
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
	for _, who := range h.alike {
		bound += int64(len(who)) * h.net(who[0], prices)
		best := h.ways.walk(h.trial[who[0]])
		for _, i := range who {
			copy(h.trial[i], best)
		}
		for p, k := range best {
			if k != none {
				asked[p*h.holes+int(k)] += int64(len(who))
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
