package solve

import (
	"cmp"
	"context"
	"math"
	"slices"
)

// round makes a set of a mix of sets: columns by their share, then by what
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

// fill adds columns in an order while the rows allow more, the fixed ones first.
// ok is false when the fixed ones already break a row.
func (h *hunt) fill(order []int) (full []int, ok bool) {
	q := h.q
	in := make([]bool, h.n)
	used := make([]int, len(q.Rows))
	of := h.rowsOf()
	take := func(i int) bool {
		if in[i] {
			return true
		}
		for _, g := range of[i] {
			if used[g] >= q.Rows[g].Most {
				return false
			}
		}
		if !h.affords(full, i) {
			return false
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

// rowsOf lists for each column the rows it belongs to.
func (h *hunt) rowsOf() [][]int {
	of := make([][]int, h.n)
	for r, row := range h.q.Rows {
		for _, i := range row.Columns {
			of[i] = append(of[i], r)
		}
	}
	return of
}

// anchor finds a first good set: greedy, from what was given, then swaps of
// one for one until none helps. Further searches, which start from what is
// known, swap only if the root does not settle them.
func (h *hunt) anchor(ctx context.Context) {
	h.greedy(ctx)
	if h.best != nil && h.first {
		h.swap(ctx)
	}
	h.tell(h.value, h.bound(), 0)
}

// greedy begins with the start and adds whatever adds most, as long as the rows
// let it in.
func (h *hunt) greedy(ctx context.Context) {
	set, ok := h.fill(h.start)
	if !ok {
		return
	}
	for ctx.Err() == nil {
		gains := h.gains(set)
		best := 0
		for i, g := range gains {
			if g > gains[best] {
				best = i
			}
		}
		if len(gains) == 0 || math.IsInf(gains[best], -1) || gains[best] <= 0 && !h.short(set) {
			break
		}
		set = append(set, best)
		slices.Sort(set)
	}
	if h.q.Allows(set) {
		h.offer(set)
	}
}

// gains returns what each column that may join a set would add to its worth,
// minus infinity for the others.
func (h *hunt) gains(set []int) []float64 {
	return h.q.Worth.Gains(set, func(i int) bool { return h.rootHi[i] > 0 && h.fits(set, i) })
}

// short reports whether a row asks for more than a set has of it.
func (h *hunt) short(set []int) bool {
	return slices.ContainsFunc(h.q.Rows, func(r Row) bool { return r.Least > 0 && Shared(r.Columns, set) < r.Least })
}

// fits reports whether a column may join a set that keeps the rows.
func (h *hunt) fits(set []int, i int) bool {
	if slices.Contains(set, i) {
		return false
	}
	for _, g := range h.q.Rows {
		if _, ok := slices.BinarySearch(g.Columns, i); !ok {
			continue
		}
		if Shared(g.Columns, set) >= g.Most {
			return false
		}
	}
	return h.affords(set, i)
}

// affords reports whether the caps let a column join a set; one that saves always
// may.
func (h *hunt) affords(set []int, i int) bool {
	return !slices.ContainsFunc(h.q.Caps, func(c Cap) bool { return c.Cost[i] > 0 && c.Of(set)+c.Cost[i] > c.Most })
}

// swap climbs from the best set.
func (h *hunt) swap(ctx context.Context) {
	if set := h.climb(ctx, h.best); h.q.Allows(set) {
		h.offer(set)
	}
}

// climb replaces one member of a set by the best that may take its place, as long
// as the value grows.
func (h *hunt) climb(ctx context.Context, set []int) []int {
	value := h.q.Worth.Of(set)
	for changed := true; changed && ctx.Err() == nil; {
		changed = false
		for k := 0; k < len(set) && ctx.Err() == nil; k++ {
			if slices.Contains(h.q.In, set[k]) {
				continue
			}
			rest := slices.Concat(set[:k], set[k+1:])
			gains := h.gains(rest)
			to := set[k]
			for i, g := range gains {
				if g > gains[to]+Tolerance {
					to = i
				}
			}
			if to == set[k] {
				continue
			}
			next := append(rest, to)
			slices.Sort(next)
			if !h.q.Allows(next) { // a cap may need what the member saved
				continue
			}
			if v := h.q.Worth.Of(next); v > value {
				set, value, changed = next, v, true
			}
		}
	}
	return set
}

// shakeEvery is how many nodes pass between two shakes.
const shakeEvery = 8

// shake looks for a better set away from the best one: two of its members are left
// out, in turn, what adds most comes in their place, and from there it is climbed.
// A long search begins with a set that swaps alone do not better.
func (h *hunt) shake(ctx context.Context) {
	n := len(h.best)
	if n < 3 {
		return
	}
	turn := h.count / shakeEvery
	a := turn % n
	b := (a + 1 + turn/n%(n-1)) % n
	out := []int{h.best[a], h.best[b]}
	set := slices.DeleteFunc(slices.Clone(h.best), func(i int) bool { return slices.Contains(out, i) && !slices.Contains(h.q.In, i) })
	for len(set) < n && ctx.Err() == nil {
		gains := h.gains(set)
		best := -1
		for i, g := range gains {
			if !slices.Contains(out, i) && g > 0 && (best < 0 || g > gains[best]) {
				best = i
			}
		}
		if best < 0 {
			break
		}
		set = append(set, best)
		slices.Sort(set)
	}
	if set = h.climb(ctx, set); h.q.Allows(set) {
		h.offer(set)
	}
}
