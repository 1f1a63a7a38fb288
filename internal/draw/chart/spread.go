package chart

import "slices"

// slot is a label's wish for a place on a line: its middle and how much room it
// takes to each side, in millimetres.
type slot struct{ want, half float64 }

// spread moves labels along a line so that they keep at least a gap between
// them and stay within lo to hi, in the order of their wishes, with the least
// sum of squared moves. It returns their middles in the order given. When the
// line is too short for all, they are packed with equal overlaps.
//
// Without the limits this is isotonic regression: with c the room taken by those
// before a label, the values want - c must not fall; pools of neighbours that
// would fall take their mean (pool adjacent violators).
func spread(slots []slot, gap, lo, hi float64) []float64 {
	n := len(slots)
	if n == 0 {
		return nil
	}
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case slots[a].want < slots[b].want:
			return -1
		case slots[a].want > slots[b].want:
			return 1
		}
		return 0
	})
	room := 0.0
	for _, s := range slots {
		room += 2 * s.half
	}
	if n > 1 && room+float64(n-1)*gap > hi-lo {
		gap = (hi - lo - room) / float64(n-1)
	}
	before := offsets(slots, order, gap)
	last := order[n-1]
	low := lo + slots[order[0]].half
	high := hi - slots[last].half - before[n-1]
	out := make([]float64, n)
	for k, v := range pooled(slots, order, before) {
		out[order[k]] = min(max(v, low), max(high, low)) + before[k]
	}
	return out
}

// offsets returns how far each label's middle must at least stand from the first's.
func offsets(slots []slot, order []int, gap float64) []float64 {
	before := make([]float64, len(order))
	for k := 1; k < len(order); k++ {
		before[k] = before[k-1] + slots[order[k-1]].half + gap + slots[order[k]].half
	}
	return before
}

// pooled returns the rising sequence nearest to want - before.
func pooled(slots []slot, order []int, before []float64) []float64 {
	type pool struct {
		sum float64
		n   int
	}
	var pools []pool
	for k, i := range order {
		pools = append(pools, pool{slots[i].want - before[k], 1})
		for len(pools) > 1 {
			a, b := pools[len(pools)-2], pools[len(pools)-1]
			if a.sum/float64(a.n) <= b.sum/float64(b.n) {
				break
			}
			pools = append(pools[:len(pools)-2], pool{a.sum + b.sum, a.n + b.n})
		}
	}
	out := make([]float64, 0, len(order))
	for _, p := range pools {
		for range p.n {
			out = append(out, p.sum/float64(p.n))
		}
	}
	return out
}
