package solve

import (
	"container/heap"
	"context"
	"math"
)

// hunt is one search: branch and bound over the linear relaxation.
//
// The relaxation has a variable y_i in [0, 1] for each column and theta_k
// for each part of the worth; it maximises the sum of the thetas under the
// rows and the cuts drawn so far (see [Cut]). Cuts are drawn at each
// solution until they meet the value there; a solution that is not whole is
// branched on the count of a row or a single column.
type hunt struct {
	solver *Solver
	q      *Program
	tell   Progress
	n      int // columns
	parts  int // of the worth

	lp     *simplex
	firm   int       // stated rows, which stay
	stated []int     // where each of the program's rows stands among them, -1 for one that cannot bind
	prices []float64 // of the program's rows, see Result
	rows   []Cut     // of the other rows
	rootLo []float64
	rootHi []float64
	moved  []int // variables whose boxes a branch has changed

	start   []int // a set to begin with
	best    []int
	value   float64
	open    nodes
	count   int       // nodes looked at
	serial  int       // nodes made
	drawn   int       // cuts drawn
	members [][]int   // of each row on whose count may be branched
	classes int       // the first of them that counts columns of one cost
	rest    []float64 // see proved
	core    []float64 // the middle of the solutions so far
	mid     []float64
	most    int     // nodes to look at, 0 for no limit
	enough  float64 // no set below it is looked for
	first   bool    // not a further search, which starts from what is known
	torn    bool    // a column both must and may not be chosen, or a row asks for more than it has
}

// node is a part of the search: the relaxation with some boxes made smaller.
type node struct {
	bound  float64
	serial int
	branch *branch
}

// branch narrows one variable or slack.
type branch struct {
	v      int
	lo, hi float64
	parent *branch
}

// nodes is a heap, highest bound first; equal bounds: the newest, so that the
// search dives.
type nodes []node

func (h nodes) Len() int { return len(h) }
func (h nodes) Less(i, j int) bool {
	if h[i].bound != h[j].bound {
		return h[i].bound > h[j].bound
	}
	return h[i].serial > h[j].serial
}
func (h nodes) Swap(i, j int) { h[i], h[j] = h[j], h[i] }

// Push and Pop make nodes a heap of package container/heap.
func (h *nodes) Push(x any) { *h = append(*h, x.(node)) }

// Pop removes the last node.
func (h *nodes) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}

func newHunt(s *Solver, q *Program, tell Progress) *hunt {
	if tell == nil {
		tell = func(float64, float64, int) {}
	}
	h := &hunt{solver: s, q: q, tell: tell, n: q.Columns, parts: len(s.spans), value: math.Inf(-1), enough: math.Inf(-1)}
	h.rest = make([]float64, h.n+h.parts)
	h.core, h.mid = make([]float64, h.n), make([]float64, h.n)
	cost := make([]float64, h.n+h.parts)
	lo, hi := make([]float64, h.n+h.parts), make([]float64, h.n+h.parts)
	for i := range h.n {
		hi[i] = 1
		// A trace of cost breaks ties between candidates that no cut tells
		// apart yet; the bound is proved without it.
		cost[i] = 1e-10 * float64((i*2654435761)%1024) / 1024
	}
	for k, span := range s.spans {
		cost[h.n+k], lo[h.n+k], hi[h.n+k] = 1, span.Least, span.Most
	}
	for _, i := range q.In {
		lo[i] = 1
	}
	for _, r := range q.Rows {
		h.torn = h.torn || r.Least > len(r.Columns)
		if r.Most > 0 {
			continue
		}
		for _, i := range r.Columns {
			hi[i] = 0
			h.torn = h.torn || lo[i] > 0
		}
	}
	h.lp = newSimplex(cost, lo, hi)
	h.addRows()
	h.rootLo, h.rootHi = append([]float64(nil), h.lp.lo...), append([]float64(nil), h.lp.hi...)
	for _, c := range s.pool {
		h.addCut(c)
	}
	return h
}

// addRows states the rows that can bind, and the caps.
func (h *hunt) addRows() {
	for _, r := range h.q.Rows {
		if r.Most == 0 || r.Least == 0 && r.Most >= len(r.Columns) {
			h.stated = append(h.stated, -1)
			continue
		}
		h.stated = append(h.stated, len(h.lp.rows))
		h.addCount(r)
	}
	h.classes = len(h.members)
	for _, c := range h.q.Caps {
		h.addClasses(c)
	}
	for _, c := range h.q.Caps {
		h.addCap(c)
	}
	h.firm = len(h.lp.rows)
}

// addCount states a row, on whose count may be branched.
func (h *hunt) addCount(r Row) {
	a := make([]float64, h.n+h.parts)
	for _, i := range r.Columns {
		a[i] = 1
	}
	h.lp.addRow(a, float64(r.Most), float64(r.Most-r.Least))
	h.members = append(h.members, r.Columns)
}

// mostClasses is to how many costs the counts of columns are stated.
const mostClasses = 24

// addClasses states how many columns of each cost are chosen, which bars nothing:
// branching on these counts says at once what is spent, where a cap alone leaves
// the relaxation to choose a hair less than a column.
func (h *hunt) addClasses(c Cap) {
	of := map[int][]int{}
	var order []int
	for i, x := range c.Cost {
		if h.lp.hi[i] == 0 {
			continue
		}
		if of[x] == nil {
			order = append(order, x)
		}
		of[x] = append(of[x], i)
	}
	if len(order) > mostClasses {
		return
	}
	for _, x := range order {
		h.addCount(Row{Columns: of[x], Most: len(of[x])})
	}
}

// addCap states a cap, scaled to costs of order 1. The half that is added decides
// nothing between whole numbers and keeps rounding from ruling out a set.
func (h *hunt) addCap(c Cap) {
	a := make([]float64, h.n+h.parts)
	size, least := 1, 0
	for _, x := range c.Cost {
		size, least = max(size, x, -x), least+min(x, 0)
	}
	for i, x := range c.Cost {
		a[i] = float64(x) / float64(size)
	}
	h.torn = h.torn || least > c.Most
	h.lp.addRow(a, (float64(c.Most)+0.5)/float64(size), (float64(c.Most-least)+0.5)/float64(size))
}

// addCut states theta_k - slope.y <= base.
func (h *hunt) addCut(c Cut) {
	a := make([]float64, h.n+h.parts)
	room := c.Base - h.solver.spans[c.Part].Least
	for i, s := range c.Slope {
		a[i] = -s
		room += max(s, 0)
	}
	a[h.n+c.Part] = 1
	h.lp.addRow(a, c.Base, room)
	h.rows = append(h.rows, c)
	h.drawn++
}

// run searches until the proof, the end of ctx, or the end of the nodes.
func (h *hunt) run(ctx context.Context) Result {
	if h.torn {
		return h.result()
	}
	heap.Push(&h.open, node{bound: math.Inf(1)})
	h.anchor(ctx)
	for len(h.open) > 0 && ctx.Err() == nil && (h.most == 0 || h.count < h.most) && h.open[0].bound >= h.enough {
		nd := heap.Pop(&h.open).(node)
		if nd.bound <= h.value+Tolerance {
			h.open = h.open[:0] // all others are no better
			break
		}
		h.count++
		h.look(ctx, nd)
		if nd.branch == nil && !h.first && len(h.open) > 0 && h.best != nil {
			h.swap(ctx)
		}
		if h.first && h.count%shakeEvery == 0 && h.best != nil {
			h.shake(ctx)
		}
		h.tell(h.value, h.bound(), h.count)
	}
	return h.result()
}

// bound is what no set can pass: the best of the open nodes, or the value.
func (h *hunt) bound() float64 {
	b := h.value
	if len(h.open) > 0 {
		b = max(b, h.open[0].bound)
	}
	if math.IsInf(b, 1) {
		b = 0
		for _, span := range h.solver.spans {
			b += span.Most
		}
	}
	return b
}

func (h *hunt) result() Result {
	res := Result{Set: h.best, Nodes: h.count, Cuts: h.drawn, Bound: h.bound(), Prices: h.prices, Status: Optimal}
	if h.best != nil {
		res.Value = h.value
	}
	switch {
	case len(h.open) > 0:
		res.Status = Stopped
	case h.best == nil:
		res.Status, res.Bound = Infeasible, 0
	}
	return res
}

// narrow sets the boxes of a node; it returns false when one is empty.
func (h *hunt) narrow(b *branch) bool {
	for _, v := range h.moved {
		h.lp.box(v, h.rootLo[v], h.rootHi[v])
	}
	h.moved = h.moved[:0]
	for ; b != nil; b = b.parent {
		h.lp.lo[b.v] = max(h.lp.lo[b.v], b.lo)
		h.lp.hi[b.v] = min(h.lp.hi[b.v], b.hi)
		h.moved = append(h.moved, b.v)
		if h.lp.lo[b.v] > h.lp.hi[b.v] {
			return false
		}
	}
	return true
}
