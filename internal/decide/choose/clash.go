package choose

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/measure/say"
)

// constraint is one thing asked of a set: a kept candidate, the count, or the
// groups of one rule with one name.
type constraint struct {
	label say.Sentence
	keep  int // candidate, -1 for none
	count bool
	group int // index into the groups, -1 for none
}

// Clash returns the smallest group of constraints that no set can keep
// together, in words; nil when there is none. name names a candidate. Each
// group stands for itself, so that the answer says which corner, not only which rule.
//
// A smallest group meets every set of constraints whose removal would free the
// problem. So the least group that meets all such sets known so far is tried;
// if some choice keeps it, what that choice breaks (shrunk as far as can be) is
// one more such set (the hitting-set duality of infeasible and correction sets;
// Reiter 1987).
func (s *Solver) Clash(ctx context.Context, name func(i int) say.Sentence) []say.Sentence {
	c := &clash{problem: blank(&s.problem), all: constraintsOf(&s.problem, name)}
	if _, ok := c.keeps(ctx, c.everything()); ok || ctx.Err() != nil {
		return nil
	}
	group := c.smallest(ctx)
	var out []say.Sentence
	for _, k := range group {
		out = append(out, c.all[k].label)
	}
	return out
}

type clash struct {
	problem Problem // without moments
	all     []constraint
}

// blank returns the problem with one moment that nobody sees: any allowed set
// is a best one.
func blank(p *Problem) Problem {
	return Problem{Score: make([]float32, p.Candidates()), Moments: 1, Weight: []float32{1}, Groups: p.Groups, In: p.In, Count: p.Count, Exact: p.Exact}
}

func constraintsOf(p *Problem, name func(i int) say.Sentence) []constraint {
	var out []constraint
	for _, i := range p.In {
		out = append(out, constraint{label: say.Make("keep %s", name(i)), keep: i, group: -1})
	}
	if p.Exact {
		out = append(out, constraint{label: say.Make("choose exactly %d", p.Count), keep: -1, count: true, group: -1})
	} else {
		out = append(out, constraint{label: say.Make("choose at most %d", p.Count), keep: -1, count: true, group: -1})
	}
	for g, group := range p.Groups {
		if len(group.Members) <= group.Most {
			continue
		}
		out = append(out, constraint{label: group.label(), keep: -1, group: g})
	}
	return out
}

func (c *clash) everything() []int {
	all := make([]int, len(c.all))
	for k := range all {
		all[k] = k
	}
	return all
}

// keeps finds a set that keeps the chosen constraints.
func (c *clash) keeps(ctx context.Context, chosen []int) (set []int, ok bool) {
	q := c.problem
	q.Groups, q.In, q.Count, q.Exact = nil, nil, q.Candidates(), false
	for _, k := range chosen {
		switch t := c.all[k]; {
		case t.keep >= 0:
			q.In = append(q.In, t.keep)
		case t.count:
			q.Count, q.Exact = c.problem.Count, c.problem.Exact
		default:
			q.Groups = append(q.Groups, c.problem.Groups[t.group])
		}
	}
	if q.Count > q.Candidates() && q.Exact {
		return nil, false
	}
	s, err := NewSolver(q)
	if err != nil {
		return nil, false
	}
	res := s.Solve(ctx, nil)
	return res.Set, res.Set != nil
}

// smallest returns the smallest clashing group.
func (c *clash) smallest(ctx context.Context) []int {
	var corrections [][]int
	for ctx.Err() == nil {
		group := leastHitting(corrections)
		set, ok := c.keeps(ctx, group)
		if !ok {
			return group
		}
		more := c.broken(ctx, group, set)
		if len(more) == 0 { // nothing need go: all can be kept
			return nil
		}
		corrections = append(corrections, more)
	}
	return nil
}

// broken returns constraints whose removal frees the problem: those that the
// set breaks, less each that can be kept after all.
func (c *clash) broken(ctx context.Context, group, set []int) []int {
	kept := slices.Clone(group)
	var rest []int
	for k := range c.all {
		if slices.Contains(group, k) {
			continue
		}
		if c.holds(k, set) {
			kept = append(kept, k)
		} else {
			rest = append(rest, k)
		}
	}
	var out []int
	for _, k := range rest {
		if _, ok := c.keeps(ctx, append(slices.Clone(kept), k)); ok {
			kept = append(kept, k)
		} else {
			out = append(out, k)
		}
	}
	return out
}

// holds reports whether a set keeps one constraint.
func (c *clash) holds(k int, set []int) bool {
	t := c.all[k]
	switch {
	case t.keep >= 0:
		return slices.Contains(set, t.keep)
	case t.count:
		return len(set) == c.problem.Count || !c.problem.Exact && len(set) < c.problem.Count
	}
	g := c.problem.Groups[t.group]
	return shared(g.Members, set) <= g.Most
}

// leastHitting returns a smallest list that shares a member with each of the
// sets, none of which is empty, by trying sizes 0, 1, 2, ...
func leastHitting(sets [][]int) []int {
	for size := range len(sets) + 1 {
		if hit, ok := hitting(sets, nil, size); ok {
			slices.Sort(hit)
			return hit
		}
	}
	return nil
}

func hitting(sets [][]int, chosen []int, size int) ([]int, bool) {
	for _, s := range sets {
		if slices.ContainsFunc(s, func(k int) bool { return slices.Contains(chosen, k) }) {
			continue
		}
		if len(chosen) == size {
			return nil, false
		}
		for _, k := range s {
			if hit, ok := hitting(sets, append(slices.Clone(chosen), k), size); ok {
				return hit, true
			}
		}
		return nil, false
	}
	return chosen, true
}
