package choose

import (
	"container/heap"
	"context"
	"math"
)

// How far cuts are drawn at one node before it is branched.
const (
	rootRounds = 200
	nodeRounds = 4
	// worthwhile is the share of the gap that a round of cuts must promise, at
	// the root and elsewhere.
	worthwhileRoot = 0.02
	worthwhileNode = 0.1
	// whole is how near to 0 or 1 counts as decided.
	whole = 1e-6
)

// look works one node: bounds it, and finds a set in it, proves that it holds
// none better, or splits it.
func (h *hunt) look(ctx context.Context, nd node) {
	if !h.narrow(nd.branch) {
		return
	}
	rounds := nodeRounds
	if nd.branch == nil {
		rounds = rootRounds
	}
	y := make([]float64, h.n)
	var bound float64
	for round := 0; ; round++ {
		if !h.relax() {
			return
		}
		bound = h.proved()
		nd.bound = min(nd.bound, bound)
		if nd.bound <= h.value+Tolerance {
			return
		}
		h.read(y)
		set, integral := h.wholeSet(y)
		if integral && h.q.Allows(set) {
			h.offer(set)
			if nd.bound <= h.value+Tolerance {
				return
			}
		}
		if !integral && round == 0 {
			h.round(y)
		}
		if ctx.Err() != nil {
			heap.Push(&h.open, nd)
			return
		}
		if !h.sharpen(y, nd.bound, integral, nd.branch == nil, round >= rounds) {
			break
		}
	}
	nd.branch = h.decide(bound, nd.branch)
	h.split(nd, y)
}

// relax solves the node's relaxation; false proves that the node holds no set.
func (h *hunt) relax() bool {
	row, ok := h.lp.solve()
	if ok {
		return true
	}
	if h.impossible(row) {
		return false
	}
	h.lp.rebuild()
	row, ok = h.lp.solve()
	return ok || !h.impossible(row)
}

// sharpen draws cuts that the relaxation's solution y passes; false when no
// more are worth while. Cuts are first tried at a point between y and the
// middle of the solutions so far, where they say more about the choices that
// remain (in-out separation; Ben-Ameur and Neto 2007), then at y itself.
func (h *hunt) sharpen(y []float64, bound float64, integral, root, enough bool) bool {
	want := worthwhileNode * (bound - h.value)
	if root {
		want = worthwhileRoot * (bound - h.value)
	}
	if integral {
		want = Tolerance / 2
	} else if enough {
		return false
	}
	if !integral {
		for i := range h.core {
			h.core[i] = (h.core[i] + y[i]) / 2
			h.mid[i] = (h.core[i] + y[i]) / 2
		}
		if h.draw(y, h.mid) >= want {
			h.tidy()
			return true
		}
	}
	over := h.draw(y, y)
	h.tidy()
	return over >= want
}

// draw draws the cuts that are met at a point and that y passes; it returns by
// how much y passed them in all.
func (h *hunt) draw(y, at []float64) (over float64) {
	cuts, _ := h.solver.rank.cutsAt(at)
	var by [parts]float64
	for k := range cuts {
		by[k] = max(0, h.lp.value(h.n+k)-cuts[k].at(y))
		over += by[k]
	}
	for k := range cuts {
		if by[k] > over/(4*parts) {
			h.addCut(cuts[k])
		}
	}
	return over
}

// read copies the candidates' values, held inside [0, 1].
func (h *hunt) read(y []float64) {
	for i := range y {
		y[i] = min(1, max(0, h.lp.value(i)))
	}
}

// wholeSet returns the set that y is, if it is one.
func (h *hunt) wholeSet(y []float64) (set []int, ok bool) {
	for i, v := range y {
		switch {
		case v > 1-whole:
			set = append(set, i)
			y[i] = 1
		case v > whole:
			return nil, false
		default:
			y[i] = 0
		}
	}
	return set, true
}

// offer takes a set that keeps the constraints if it is better than the best.
func (h *hunt) offer(set []int) {
	if v := h.solver.rank.value(set); v > h.value {
		h.best, h.value = append([]int{}, set...), v
	}
}

// split makes two nodes of one: on the count of a group, or on a candidate,
// whichever is farthest from whole; groups first.
func (h *hunt) split(nd node, y []float64) {
	v, at, far := -1, 0.0, whole
	for r, members := range h.members {
		sum := 0.0
		for _, i := range members {
			sum += y[i]
		}
		if f := apartFromWhole(sum); f > far+splitTie {
			v, at, far = h.n+parts+r, sum, f
		}
	}
	for i, x := range y {
		if f := apartFromWhole(x); f > 2*far {
			v, at, far = i, x, f/2
		}
	}
	if v < 0 { // whole, but not allowed or not met: take any open candidate
		for i := range y {
			if h.lp.lo[i] < h.lp.hi[i] {
				v, at = i, 0.5
				break
			}
		}
		if v < 0 {
			return
		}
	}
	below, above := branch{v: v, hi: math.Floor(at), parent: nd.branch}, branch{v: v, lo: math.Floor(at) + 1, hi: math.Inf(1), parent: nd.branch}
	if v >= h.n { // a group's count k is its slack at cap - k
		most := h.lp.rows[v-h.n-parts].b
		below = branch{v: v, lo: most - math.Floor(at), hi: math.Inf(1), parent: nd.branch}
		above = branch{v: v, hi: most - math.Floor(at) - 1, parent: nd.branch}
	}
	for _, b := range [...]branch{below, above} {
		h.serial++
		heap.Push(&h.open, node{bound: nd.bound, serial: h.serial, branch: &b})
	}
}

// splitTie makes the earlier group win among equals.
const splitTie = 1e-6

func apartFromWhole(x float64) float64 { return math.Abs(x - math.Round(x)) }

// tidy drops cuts that have not been tight for some rounds when there are many;
// what was learnt is drawn again if needed.
func (h *hunt) tidy() {
	for k := range h.rows {
		h.rows[k].idle++
		if h.lp.value(h.lp.n+h.firm+k) < looseSlack {
			h.rows[k].idle = 0
		}
	}
	if len(h.rows) < manyCuts {
		return
	}
	kept := h.lp.dropRows(func(r int) bool { return r >= h.firm && h.rows[r-h.firm].idle >= idleRounds })
	var rows []cut
	for _, r := range kept {
		if r >= h.firm {
			rows = append(rows, h.rows[r-h.firm])
		}
	}
	h.rows = rows
}

const (
	manyCuts   = 10 * parts
	idleRounds = 6
	// looseSlack is how far a cut must lie above the relaxation to be idle.
	looseSlack = 1e-7
)
