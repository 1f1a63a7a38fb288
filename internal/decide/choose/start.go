package choose

import (
	"cmp"
	"context"
	"slices"
)

// round makes a set of a mix of sets: candidates by their share, then by what
// they would add alone, as far as the constraints let them in.
func (h *hunt) round(y []float64) {
	order := make([]int, h.n)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(y[b], y[a]) })
	if set, ok := h.fill(order); ok && h.q.Allows(set) {
		h.offer(set)
	}
}

// fill adds candidates in an order while the caps hold, the fixed ones first.
// ok is false when the fixed ones already break a cap.
func (h *hunt) fill(order []int) (full []int, ok bool) {
	q := h.q
	in := make([]bool, h.n)
	used := make([]int, len(q.Groups))
	of := h.groupsOf()
	take := func(i int) bool {
		if in[i] || len(full) >= q.Count {
			return in[i]
		}
		for _, g := range of[i] {
			if used[g] >= q.Groups[g].Most {
				return false
			}
		}
		for _, g := range of[i] {
			used[g]++
		}
		in[i] = true
		full = append(full, i)
		return true
	}
	for _, i := range q.In {
		if !take(i) {
			return nil, false
		}
	}
	for _, i := range order {
		if h.rootHi[i] > 0 {
			take(i)
		}
	}
	slices.Sort(full)
	return full, true
}

// groupsOf lists for each candidate the groups it belongs to.
func (h *hunt) groupsOf() [][]int {
	of := make([][]int, h.n)
	for g, group := range h.q.Groups {
		for _, i := range group.Members {
			of[i] = append(of[i], g)
		}
	}
	return of
}

// anchor finds a first good set: greedy, unless one was given, then swaps of
// one for one until none helps. Further searches, which start from what is
// known, swap only if the root does not settle them.
func (h *hunt) anchor(ctx context.Context) {
	if h.best == nil {
		h.greedy(ctx)
	}
	if h.best != nil && h.first {
		h.swap(ctx)
	}
	h.tell(h.value, h.bound(), 0)
}

// greedy adds whatever adds most, as long as the caps let it in.
func (h *hunt) greedy(ctx context.Context) {
	set, ok := h.fill(nil)
	if !ok {
		return
	}
	for len(set) < h.q.Count && ctx.Err() == nil {
		gains := h.solver.rank.gains(set, func(i int) bool { return h.rootHi[i] > 0 && h.fits(set, i) })
		best := -1
		for i, g := range gains {
			if g >= 0 && (best < 0 || g > gains[best]) {
				best = i
			}
		}
		if best < 0 || gains[best] == 0 && !h.q.Exact {
			break
		}
		set = append(set, best)
		slices.Sort(set)
	}
	if h.q.Allows(set) {
		h.offer(set)
	}
}

// fits reports whether a candidate may join a set that keeps the caps.
func (h *hunt) fits(set []int, i int) bool {
	if slices.Contains(set, i) {
		return false
	}
	for _, g := range h.q.Groups {
		if _, ok := slices.BinarySearch(g.Members, i); !ok {
			continue
		}
		n := 0
		for _, k := range set {
			if _, ok := slices.BinarySearch(g.Members, k); ok {
				n++
			}
		}
		if n >= g.Most {
			return false
		}
	}
	return true
}

// swap replaces one member by the best that may take its place, as long as the
// value grows.
func (h *hunt) swap(ctx context.Context) {
	for changed := true; changed && ctx.Err() == nil; {
		changed = false
		for k := 0; k < len(h.best) && ctx.Err() == nil; k++ {
			if slices.Contains(h.q.In, h.best[k]) {
				continue
			}
			rest := without(h.best, k)
			gains := h.solver.rank.gains(rest, func(i int) bool { return h.rootHi[i] > 0 && h.fits(rest, i) })
			to := h.best[k]
			for i, g := range gains {
				if g > gains[to]+Tolerance {
					to = i
				}
			}
			if to == h.best[k] {
				continue
			}
			next := append(rest, to)
			slices.Sort(next)
			before := h.value
			h.offer(next)
			changed = changed || h.value > before
		}
	}
}
