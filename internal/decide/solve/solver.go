package solve

import (
	"context"
	"math"
)

// Status says why a search ended.
type Status string

// The reasons.
const (
	Optimal    Status = "optimal"       // no set is better by more than Tolerance
	Stopped    Status = "limit reached" // by the limit or the user; value and bound hold
	Infeasible Status = "infeasible"    // no set keeps all rows
)

// Tolerance is how near the bound must come to the value for a proof, in the
// value's scale (0 to 1 and a second view), without unit.
const Tolerance = 1e-8

// Result is the outcome of a search.
type Result struct {
	Status Status
	Set    []int   // columns, ascending; nil when none was found
	Value  float64 // of the set, without unit
	Bound  float64 // no set is better than this, without unit
	Nodes  int     // parts of the search that were looked at
	Cuts   int     // linear bounds that were drawn
	// Prices are what one more of each row would be worth in the relaxation of the
	// whole program, by row, without unit: whoever knows the program can bound it
	// with them again.
	Prices []float64
}

// Gap returns how far the bound lies above the value as a share of the bound,
// in [0, 1], without unit.
func (r Result) Gap() float64 {
	if r.Bound <= 0 || r.Value >= r.Bound {
		return 0
	}
	return (r.Bound - r.Value) / r.Bound
}

// Progress is told of each better set and of the bound as it falls.
type Progress func(value, bound float64, nodes int)

// Solver chooses from one list of columns under changing rows. What it learns
// about the worth (its cuts) holds under any rows and is kept from one search to
// the next. Not for use by several goroutines at once.
type Solver struct {
	program Program
	spans   []Span
	pool    []Cut
}

// New prepares a program; Check's errors.
func New(p Program) (*Solver, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	return &Solver{program: p, spans: p.Worth.Spans()}, nil
}

// Solve finds the best set and stops after so many nodes, 0 for no limit. A ctx
// that ends stops the search with the best set so far and its proved bound.
func (s *Solver) Solve(ctx context.Context, nodes int, tell Progress) Result {
	h := newHunt(s, &s.program, tell)
	h.most, h.first = nodes, true
	return s.finish(ctx, h)
}

// Other is a search under other rows and caps, of the same columns and worth.
type Other struct {
	Rows  []Row
	Caps  []Cap
	In    []int // columns that must be chosen
	Start []int // a set to begin with, of which what the rows do not let in is left out
	Nodes int   // to look at, 0 for no limit
	// Enough, above 0, ends the search once no set is worth as much, without unit.
	Enough float64
	Tell   Progress
}

// Again finds the best set of another search. One that ends early has a bound
// above its value.
func (s *Solver) Again(ctx context.Context, o Other) Result {
	q := s.program
	q.Rows, q.Caps, q.In = o.Rows, o.Caps, o.In
	h := newHunt(s, &q, o.Tell)
	h.most, h.start = o.Nodes, o.Start
	if o.Enough > 0 {
		h.enough = o.Enough
	}
	return s.finish(ctx, h)
}

// Bounds returns for each list of columns what no set of another search is worth
// that chooses none of them, by the cuts drawn so far, without unit; minus infinity
// where there is no such set.
func (s *Solver) Bounds(ctx context.Context, o Other, without [][]int) []float64 {
	q := s.program
	q.Rows, q.Caps, q.In = o.Rows, o.Caps, o.In
	h := newHunt(s, &q, nil)
	out := make([]float64, len(without))
	for k, gone := range without {
		var b *branch
		for _, i := range gone {
			b = &branch{v: i, parent: b}
		}
		if h.torn || !h.narrow(b) || h.relax(ctx) == empty {
			out[k] = math.Inf(-1)
		} else {
			out[k] = h.proved()
		}
	}
	return out
}

func (s *Solver) finish(ctx context.Context, h *hunt) Result {
	res := h.run(ctx)
	s.pool = h.rows
	return res
}
