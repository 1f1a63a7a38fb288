package solve

import (
	"container/heap"
	"context"
	"math"
)

// How far cuts are drawn at one node before it is branched.
const (
	rootRounds = 200
	nodeRounds = 1
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
	var last outcome
	for round := 0; ; round++ {
		if last = h.relax(ctx); last == empty {
			return
		}
		bound = h.proved()
		if nd.branch == nil {
			h.keepPrices()
		}
		nd.bound = min(nd.bound, bound)
		if nd.bound <= h.value+Tolerance {
			return
		}
		h.read(y)
		set, integral := h.wholeSet(y)
		// Whole but for less than is told, and a cap is passed by as little: no set.
		integral = integral && h.q.Allows(set)
		if integral {
			h.offer(set)
			if nd.bound <= h.value+Tolerance {
				return
			}
		}
		if !integral && round == 0 {
			h.round(y)
		}
		if ctx.Err() != nil || nd.bound < h.enough {
			heap.Push(&h.open, nd)
			return
		}
		// Where the arithmetic left the relaxation unsolved, a cut would not
		// move its solution: the node is split, which ends at single sets.
		if last == unsolved || !h.sharpen(y, nd.bound, integral, nd.branch == nil, round, rounds) {
			break
		}
	}
	nd.branch = h.decide(bound, nd.branch)
	h.split(nd, y, last == solved)
}

// outcome is what solving a node's relaxation has shown.
type outcome int

const (
	solved   outcome = iota
	empty            // proved: the node holds no set
	unsolved         // rounding stood in the way; the prices still prove a bound
)

// relax solves the node's relaxation, a second time from a fresh tableau when
// the first calls it impossible and cannot prove it, or gives a solution that
// breaks the rows as stated.
func (h *hunt) relax(ctx context.Context) outcome {
	for range 2 {
		row, ok := h.lp.solve(ctx)
		switch {
		case ok && h.lp.sound():
			return solved
		case !ok && row >= 0 && h.impossible(row):
			return empty
		}
		if ctx.Err() != nil {
			break
		}
		h.lp.rebuild()
	}
	return unsolved
}

// sharpen draws cuts that the relaxation's solution y passes; false when no
// more are worth while. Cuts are first tried at a point between y and the
// middle of the solutions so far, where they say more about the choices that
// remain (in-out separation; Ben-Ameur and Neto 2007), then at y itself.
func (h *hunt) sharpen(y []float64, bound float64, integral, root bool, round, rounds int) bool {
	want := worthwhileNode * (bound - h.value)
	if root {
		want = worthwhileRoot * (bound - h.value)
	}
	if integral { // its value is to be met, within what rounding allows
		want, rounds = Tolerance/2, max(rounds, rootRounds)
	}
	if round >= rounds {
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
	cuts := h.q.Worth.Cuts(at)
	by := make([]float64, len(cuts))
	for k := range cuts {
		by[k] = max(0, h.lp.value(h.n+k)-cuts[k].At(y))
		over += by[k]
	}
	for k := range cuts {
		if by[k] > over/(4*float64(h.parts)) {
			h.addCut(cuts[k])
		}
	}
	return over
}

// read copies the columns' values, held inside [0, 1].
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
	if v := h.q.Worth.Of(set); v > h.value {
		h.best, h.value = append([]int{}, set...), v
	}
}

// offerDecided offers the one set of a node in which every column is decided.
func (h *hunt) offerDecided() {
	var set []int
	for i := range h.n {
		if h.lp.lo[i] > 0 {
			set = append(set, i)
		}
	}
	if h.q.Allows(set) {
		h.offer(set)
	}
}

// split makes two nodes of one: on the count of a row, or on a column,
// whichever is farthest from whole; rows first. A relaxation that is whole,
// or unsolved, names neither: then the first open column is decided.
func (h *hunt) split(nd node, y []float64, solved bool) {
	v, at := -1, 0.5
	if solved {
		v, at = h.farthest(y)
	}
	if v < 0 {
		v = h.firstOpen()
	}
	if v < 0 { // all decided: the boxes are the set
		h.offerDecided()
		return
	}
	below, above := branch{v: v, hi: math.Floor(at), parent: nd.branch}, branch{v: v, lo: math.Floor(at) + 1, hi: math.Inf(1), parent: nd.branch}
	if v >= h.n { // a row's count k is its slack at cap - k
		most := h.lp.rows[v-h.n-h.parts].b
		below = branch{v: v, lo: most - math.Floor(at), hi: math.Inf(1), parent: nd.branch}
		above = branch{v: v, hi: most - math.Floor(at) - 1, parent: nd.branch}
	}
	for _, b := range [...]branch{below, above} {
		h.serial++
		heap.Push(&h.open, node{bound: nd.bound, serial: h.serial, branch: &b})
	}
}

// farthest returns the row's slack or the column that is farthest from
// whole, and the count or share it has; -1 and a half when all are whole. The
// counts that decide what is spent come first. What the node's boxes have decided
// is passed by, however far rounding puts y from it: each split narrows both its
// nodes, so that splitting ends.
func (h *hunt) farthest(y []float64) (v int, at float64) {
	if v, at, _ = h.farthestCount(y, h.classes, len(h.members)); v >= 0 {
		return v, at
	}
	v, at, far := h.farthestCount(y, 0, h.classes)
	for i, x := range y {
		if f := apartFromWhole(x); f > 2*far && h.lp.lo[i] < h.lp.hi[i] {
			v, at, far = i, x, f/2
		}
	}
	return v, at
}

// farthestCount returns the slack of the count, of some of them, that is farthest
// from whole, the count, and how far it is.
func (h *hunt) farthestCount(y []float64, from, to int) (v int, at, far float64) {
	v, at, far = -1, 0.5, whole
	for r := from; r < to; r++ {
		slack, room := h.n+h.parts+r, h.lp.rows[r].b
		least, most := room-h.lp.hi[slack], room-h.lp.lo[slack]
		if least >= most {
			continue
		}
		sum := 0.0
		for _, i := range h.members[r] {
			sum += y[i]
		}
		if f := apartFromWhole(sum); f > far+splitTie {
			v, at, far = slack, min(max(sum, least), most-0.5), f
		}
	}
	return v, at, far
}

// firstOpen returns the first column that is not decided yet, or -1.
func (h *hunt) firstOpen() int {
	for i := range h.n {
		if h.lp.lo[i] < h.lp.hi[i] {
			return i
		}
	}
	return -1
}

// splitTie makes the earlier row win among equals.
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
	if len(h.rows) < manyCuts*h.parts {
		return
	}
	kept := h.lp.dropRows(func(r int) bool { return r >= h.firm && h.rows[r-h.firm].idle >= idleRounds })
	var rows []Cut
	for _, r := range kept {
		if r >= h.firm {
			rows = append(rows, h.rows[r-h.firm])
		}
	}
	h.rows = rows
}

const (
	manyCuts   = 10 // for each part
	idleRounds = 6
	// looseSlack is how far a cut must lie above the relaxation to be idle.
	looseSlack = 1e-7
)
