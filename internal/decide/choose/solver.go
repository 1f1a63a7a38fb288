package choose

import (
	"context"
	"slices"
)

// Status says why a search ended.
type Status string

// The reasons.
const (
	Optimal    Status = "optimal"       // no set is better by more than Tolerance
	Stopped    Status = "limit reached" // by the limit or the user; value and bound hold
	Infeasible Status = "infeasible"    // no set keeps all constraints
)

// Tolerance is how near the bound must come to the value for a proof, in the
// value's scale (0 to 1 and a second view), without unit.
const Tolerance = 1e-8

// Result is the outcome of a search.
type Result struct {
	Status Status
	Set    []int   // candidates, ascending; nil when none was found
	Value  float64 // of the set, without unit
	Bound  float64 // no set is better than this, without unit
	Nodes  int     // parts of the search that were looked at
	Cuts   int     // linear bounds that were drawn
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

// Solver chooses from one list of candidates under changing constraints. What
// it learns about the value (its cuts) holds under any constraints and is kept
// from one search to the next. Not for use by several goroutines at once.
type Solver struct {
	problem Problem
	rank    *ranking
	top     [parts]float64 // no part of the value can be larger
	pool    []cut
}

// NewSolver prepares a problem; Check's errors.
func NewSolver(p Problem) (*Solver, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	s := &Solver{problem: p}
	s.rank = newRanking(&s.problem)
	s.top = s.rank.tops()
	return s, nil
}

// Value returns the value of a set of candidates, without unit: by weight, the
// best score plus Second times the second best.
func (s *Solver) Value(set []int) float64 { return s.rank.value(set) }

// Solve finds the best set under the problem's own constraints. A ctx that
// ends stops the search with the best set so far and its proved bound.
func (s *Solver) Solve(ctx context.Context, tell Progress) Result {
	return s.SolveWithin(ctx, 0, tell)
}

// SolveWithin is [Solver.Solve] that stops after so many nodes, 0 for no limit.
func (s *Solver) SolveWithin(ctx context.Context, nodes int, tell Progress) Result {
	h := newHunt(s, &s.problem, tell)
	h.most, h.first = nodes, true
	return s.finish(ctx, h)
}

// solve finds the best set under the constraints of q, which shares the
// solver's scores; start, when it keeps them, is a set to begin with. The
// search stops after most nodes if that is above 0.
func (s *Solver) solve(ctx context.Context, q *Problem, start []int, most int, tell Progress) Result {
	h := newHunt(s, q, tell)
	h.most = most
	if start != nil && q.Allows(start) {
		h.offer(slices.Clone(start))
	}
	return s.finish(ctx, h)
}

func (s *Solver) finish(ctx context.Context, h *hunt) Result {
	res := h.run(ctx)
	s.pool = h.rows
	return res
}

// tops returns the most that each part of the value can reach.
func (r *ranking) tops() (top [parts]float64) {
	for m, w := range r.weight {
		list := r.score[r.start[m]:r.start[m+1]]
		if len(list) > 0 {
			top[r.part[m]] += w * float64(list[0])
		}
		if len(list) > 1 {
			top[r.part[m]] += w * r.second * float64(list[1])
		}
	}
	return top
}
