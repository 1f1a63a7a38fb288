package choose

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/decide/solve"
)

// furtherNodes bounds each search after the first. Nearly all need one node;
// one that needs more than this is answered by a value and a bound.
const furtherNodes = 100

// Alternatives returns up to k sets next to the best one, best first. class
// gives each candidate's place (a pane), or -1 for places that do not count
// (outside the corners). Each alternative leaves at least one place unused
// that the best set uses, and likewise for each alternative before it; so none
// is another by a hole shifted within its pane. A search that is too long
// ends with a bound above its value. ok is false when ctx ended first.
func (s *Solver) Alternatives(ctx context.Context, best solve.Result, k int, class []int, tell solve.Progress) (out []solve.Result, ok bool) {
	q := s.problem
	q.Groups = slices.Clone(q.Groups)
	for set := best.Set; len(out) < k; {
		places := map[int]bool{}
		for _, i := range set {
			if class[i] >= 0 {
				places[class[i]] = true
			}
		}
		if len(places) == 0 {
			break
		}
		var members []int
		for i, c := range class {
			if places[c] {
				members = append(members, i)
			}
		}
		q.Groups = append(q.Groups, Group{Rule: "unlike the sets before", Members: members, Most: solve.Shared(members, set) - 1})
		res := s.again(ctx, &q, nil, tell)
		if ctx.Err() != nil {
			return out, false
		}
		if res.Status == solve.Infeasible || len(res.Set) == 0 {
			break
		}
		set = res.Set
		out = append(out, res)
	}
	return out, true
}

// WithoutGroups returns the best set if the groups for which drop says so did not
// hold; start is a set to begin with. A search that is too long ends with a
// bound above its value.
func (s *Solver) WithoutGroups(ctx context.Context, drop func(g Group) bool, start []int, tell solve.Progress) solve.Result {
	q := s.problem
	q.Groups = slices.DeleteFunc(slices.Clone(q.Groups), drop)
	return s.again(ctx, &q, start, tell)
}

// Freed returns the best set if candidate i, which is kept, need not be
// chosen; start is a set to begin with. A search that is too long ends with a
// bound above its value.
func (s *Solver) Freed(ctx context.Context, i int, start []int, tell solve.Progress) solve.Result {
	q := s.problem
	q.In = slices.DeleteFunc(slices.Clone(q.In), func(k int) bool { return k == i })
	return s.again(ctx, &q, start, tell)
}

// Without returns the best set if none of the given candidates may be chosen.
func (s *Solver) Without(ctx context.Context, gone []int, tell solve.Progress) solve.Result {
	q := s.problem
	q.Groups = append(slices.Clone(q.Groups), Group{Rule: "left out", Members: gone})
	q.In = slices.DeleteFunc(slices.Clone(q.In), func(i int) bool { return slices.Contains(gone, i) })
	if q.Exact && q.Count > 0 {
		q.Exact = false
	}
	return s.again(ctx, &q, nil, tell)
}

// Worth returns what each member of a set adds to its value: the value less
// that of the set without it, in the order of the set, without unit.
func (s *Solver) Worth(set []int) []float64 {
	all := s.rank.Of(set)
	out := make([]float64, len(set))
	for k := range set {
		out[k] = all - s.rank.Of(without(set, k))
	}
	return out
}
