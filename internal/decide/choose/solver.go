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
	worth   solve.Worth
	weight  []float64 // of the moments, summing to 1
	crews   *crews    // nil where all members of a set are worked at once
	solver  *solve.Solver
	further int                     // nodes of each search after the first
	left    map[string]solve.Result // what leaving has found
}

// NewSolver prepares a problem; errors are Check's, those of the program, and
// ctx's.
func NewSolver(ctx context.Context, p Problem) (*Solver, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	s := &Solver{problem: p, further: furtherNodes, left: map[string]solve.Result{}}
	s.weight = s.problem.shares()
	var err error
	if p.People > 0 && p.People < p.Count {
		if s.crews, err = newCrews(ctx, &s.problem); err != nil {
			return nil, err
		}
		s.worth, s.further = s.crews, furtherCrewNodes
	} else {
		s.worth = newRanking(ctx, &s.problem)
	}
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	s.solver, err = solve.New(s.problem.program(s.worth))
	return s, err
}

// Value returns the value of a set of candidates, without unit: by weight, the
// best score plus Second times the second best; where only so many are worked at
// once, of the best crew in each phase.
func (s *Solver) Value(set []int) float64 { return s.worth.Of(set) }

// views visits each moment with the two best scores that a set has there from who
// works in its phase.
func (s *Solver) views(set []int, visit func(m int, one, two float32)) {
	one, two := make([]float32, s.problem.Moments), make([]float32, s.problem.Moments)
	for _, c := range s.crewsOf(set) {
		clear(one)
		clear(two)
		for _, i := range c.members {
			top2(one, two, s.problem.Row(i))
		}
		for m := range one {
			if c.works(&s.problem, m) {
				visit(m, one[m], two[m])
			}
		}
	}
}

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
	return s.solver.Again(ctx, solve.Other{Rows: p.Rows, Caps: p.Caps, In: p.In, Start: start, Nodes: s.further, Enough: enough, Tell: tell})
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
