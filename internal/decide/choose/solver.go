package choose

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/say"
)

// Solver chooses from one list of candidates under changing constraints. Not for
// use by several goroutines at once.
type Solver struct {
	problem Problem
	rank    *ranking
	solver  *solve.Solver
	left    map[string]solve.Result // what leaving has found
}

// NewSolver prepares a problem; errors are Check's, those of the program, and
// ctx's.
func NewSolver(ctx context.Context, p Problem) (*Solver, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	s := &Solver{problem: p, left: map[string]solve.Result{}}
	s.rank = newRanking(ctx, &s.problem)
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	var err error
	s.solver, err = solve.New(s.problem.program(s.rank))
	return s, err
}

// Value returns the value of a set of candidates, without unit: by weight, the
// best score plus Second times the second best.
func (s *Solver) Value(set []int) float64 { return s.rank.Of(set) }

// Solve finds the best set under the problem's own constraints and stops after so
// many nodes, 0 for no limit.
func (s *Solver) Solve(ctx context.Context, nodes int, tell solve.Progress) solve.Result {
	return s.solver.Solve(ctx, nodes, tell)
}

// again finds the best set under the constraints of q, which shares the solver's
// scores; start is a set to begin with. The search ends once no set is worth
// enough, if that is above 0. One that ends early has a bound above its value.
func (s *Solver) again(ctx context.Context, q *Problem, start []int, enough float64, tell solve.Progress) solve.Result {
	p := q.program(nil)
	return s.solver.Again(ctx, solve.Other{Rows: p.Rows, Caps: p.Caps, In: p.In, Start: start, Nodes: furtherNodes, Enough: enough, Tell: tell})
}

// bounds returns for each list of candidates what no set without them is worth.
func (s *Solver) bounds(ctx context.Context, gone [][]int) []float64 {
	p := s.problem.program(nil)
	return s.solver.Bounds(ctx, solve.Other{Rows: p.Rows, Caps: p.Caps, In: p.In}, gone)
}

// Clash returns the smallest group of constraints that no set can keep together,
// in words; none when some set keeps all. name names a candidate.
func (s *Solver) Clash(ctx context.Context, name func(i int) say.Sentence) (out []say.Sentence) {
	in, rows, caps := s.solver.Clash(ctx)
	for _, i := range in {
		out = append(out, say.Make("keep %s", name(i)))
	}
	for _, r := range rows {
		if r == 0 {
			out = append(out, s.problem.countLabel())
		} else {
			out = append(out, s.problem.Groups[r-1].label())
		}
	}
	for _, k := range caps {
		out = append(out, s.problem.Caps[k].Label)
	}
	return out
}

// without returns a set less its k-th member.
func without(set []int, k int) []int { return slices.Concat(set[:k], set[k+1:]) }
