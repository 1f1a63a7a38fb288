package choose

import (
	"context"
	"fmt"
	"slices"

	"example.org/rinkpane/internal/decide/solve"
)

// furtherNodes bounds each search after the first. Nearly all need one node;
// one that needs more than this is answered by a value and a bound.
const furtherNodes = 100

// Nodes of the first search where crews are counted, and of each after it: most end
// at their first node, and of the others more nodes narrow the bound but little.
const (
	crewNodes        = 12
	furtherCrewNodes = 3
)

// WithoutGroups returns the best set if the groups for which drop says so did not
// hold; start is a set to begin with. A search that is too long ends with a
// bound above its value.
func (s *Solver) WithoutGroups(ctx context.Context, drop func(g Group) bool, start []int, tell solve.Progress) solve.Result {
	q := s.problem
	q.Groups = slices.DeleteFunc(slices.Clone(q.Groups), drop)
	return s.again(ctx, &q, start, 0, tell)
}

// Freed returns the best set if candidate i, which is kept, need not be
// chosen; start is a set to begin with. A search that is too long ends with a
// bound above its value.
func (s *Solver) Freed(ctx context.Context, i int, start []int, tell solve.Progress) solve.Result {
	q := s.problem
	q.In = slices.DeleteFunc(slices.Clone(q.In), func(k int) bool { return k == i })
	return s.again(ctx, &q, start, 0, tell)
}

// Without returns the best set if none of the given candidates, ascending, may be
// chosen; start is a set to begin with. Where exactly so many are asked for, fewer
// will do.
func (s *Solver) Without(ctx context.Context, gone, start []int, tell solve.Progress) solve.Result {
	return s.leaving(ctx, gone, false, start, 0, tell)
}

// leaving is Without, under the same count where exact holds; the search ends once
// no set is worth enough. What was found once is kept: the next best sets and the
// losses ask for the same.
func (s *Solver) leaving(ctx context.Context, gone []int, exact bool, start []int, enough float64, tell solve.Progress) solve.Result {
	q := s.problem
	q.Groups = append(slices.Clone(q.Groups), Group{Rule: "left out", Members: gone})
	q.In = slices.DeleteFunc(slices.Clone(q.In), func(i int) bool { return slices.Contains(gone, i) })
	q.Exact = q.Exact && (exact || q.Count == 0)
	key := fmt.Sprint(q.Exact, gone)
	if res, ok := s.left[key]; ok {
		return res
	}
	res := s.again(ctx, &q, start, enough, tell)
	if ctx.Err() == nil && !(res.Status == solve.Stopped && res.Bound < enough) {
		s.left[key] = res
	}
	return res
}

// Worth returns what each member of a set adds to its value: the value less
// that of the set without it, in the order of the set, without unit.
func (s *Solver) Worth(set []int) []float64 {
	all := s.Value(set)
	out := make([]float64, len(set))
	for k := range set {
		out[k] = all - s.Value(without(set, k))
	}
	return out
}
