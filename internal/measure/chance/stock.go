package chance

import (
	"fmt"
	"math"
)

// Demand is how much of one kind of part a season asks for.
type Demand struct {
	Mean   float64 // of the Poisson count of parts lost, a pure number
	Weight int     // of one spare, in whole steps of a mass or of money; 1 at least
}

// MostStock is the largest sum of weights, in steps, that Stock weighs against
// one another; beyond it, give coarser steps.
const MostStock = 2_000_000

// Stock returns how many spares of each kind to keep so that all kinds together
// last with the certainty, at the least weight in all:
//
//	least sum w_k s_k   such that   product P(K_k <= s_k) >= certainty
//
// with independent Poisson counts K_k, and the certainty that is reached. Among
// stocks of equal weight it takes the surest. It is exact in the whole weights:
// each kind alone has to reach the certainty, which bounds it from below, and
// every kind at certainty^(1/n) is a stock, which bounds the weight from above;
// between the two all sums of weights are gone through. Own derivation.
func Stock(certainty float64, kinds []Demand) (spares []int, reached float64, err error) {
	least, room := make([]int, len(kinds)), 0
	share := math.Pow(certainty, 1/float64(len(kinds)))
	for k, d := range kinds {
		if d.Weight < 1 {
			return nil, 0, fmt.Errorf("weight %d: %w, give 1 or more", d.Weight, ErrRange)
		}
		if least[k], err = PoissonQuantile(certainty, d.Mean); err != nil {
			return nil, 0, err
		}
		most, err := PoissonQuantile(min(share, math.Nextafter(1, 0)), d.Mean)
		if err != nil {
			return nil, 0, err
		}
		room += (most - least[k]) * d.Weight
	}
	if room*len(kinds) > 50*MostStock || room > MostStock {
		return nil, 0, fmt.Errorf("a stock of %d steps of weight: %w, give coarser steps", room, ErrRange)
	}
	best := make([]float64, room+1) // log of the product for extra weights of exactly w
	for w := range best[1:] {
		best[w+1] = math.Inf(-1)
	}
	extra := make([][]int32, len(kinds))
	for k, d := range kinds {
		best, extra[k] = d.add(best, least[k])
	}
	const rounding = 1e-12
	for w, p := range best {
		if p < math.Log(certainty)-rounding {
			continue
		}
		spares = make([]int, len(kinds))
		for k := len(kinds) - 1; k >= 0; k-- {
			e := int(extra[k][w])
			spares[k] = least[k] + e
			w -= e * kinds[k].Weight
		}
		return spares, math.Exp(p), nil
	}
	return nil, 0, fmt.Errorf("certainty %g: %w", certainty, ErrRange) // certainty 0 and no kinds end above
}

// add returns the best products with one kind more, and how many beyond its
// least each weight takes of it.
func (d Demand) add(before []float64, least int) (after []float64, extra []int32) {
	after, extra = make([]float64, len(before)), make([]int32, len(before))
	logs := []float64{}
	for e := 0; e*d.Weight < len(before); e++ {
		logs = append(logs, math.Log(PoissonCDF(least+e, d.Mean)))
		if logs[e] == 0 {
			break // no surer with more
		}
	}
	for w := range after {
		after[w] = math.Inf(-1)
		for e := 0; e < len(logs) && e*d.Weight <= w; e++ {
			if p := before[w-e*d.Weight] + logs[e]; p > after[w] {
				after[w], extra[w] = p, int32(e)
			}
		}
	}
	return after, extra
}
