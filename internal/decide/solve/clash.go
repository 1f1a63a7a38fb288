package solve

import (
	"context"
	"slices"
)

// Clash returns the smallest group of rows, of caps and of columns that must be
// chosen which no set can keep together, as indices; none when some set keeps all.
// Each row and cap stands for itself.
//
// A smallest group meets every set of constraints whose removal would free the
// program. So the least group that meets all such sets known so far is tried;
// if some choice keeps it, what that choice breaks (shrunk as far as can be) is
// one more such set (the hitting-set duality of infeasible and correction sets;
// Reiter 1987).
func (s *Solver) Clash(ctx context.Context) (in, rows, caps []int) {
	c := newClash(&s.program)
	everything := make([]int, c.size())
	for k := range everything {
		everything[k] = k
	}
	if _, ok := c.keeps(ctx, everything); ok || ctx.Err() != nil {
		return nil, nil, nil
	}
	for _, k := range c.smallest(ctx) {
		switch r := k - len(c.program.In); {
		case r < 0:
			in = append(in, c.program.In[k])
		case r < len(c.binding):
			rows = append(rows, c.binding[r])
		default:
			caps = append(caps, r-len(c.binding))
		}
	}
	return in, rows, caps
}

// clash numbers the constraints: first the columns that must be chosen, then the
// rows that can bind, then the caps.
type clash struct {
	program Program // in which every set is worth the same
	binding []int   // indices of rows
}

func newClash(p *Program) *clash {
	c := &clash{program: *p}
	c.program.Worth = make(Linear, p.Columns)
	for r, row := range p.Rows {
		if row.Least > 0 || len(row.Columns) > row.Most {
			c.binding = append(c.binding, r)
		}
	}
	return c
}

func (c *clash) size() int { return len(c.program.In) + len(c.binding) + len(c.program.Caps) }

// keeps finds a set that keeps the chosen constraints.
func (c *clash) keeps(ctx context.Context, chosen []int) (set []int, ok bool) {
	q := c.program
	q.Rows, q.Caps, q.In = nil, nil, nil
	for _, k := range chosen {
		switch r := k - len(c.program.In); {
		case r < 0:
			q.In = append(q.In, c.program.In[k])
		case r < len(c.binding):
			q.Rows = append(q.Rows, c.program.Rows[c.binding[r]])
		default:
			q.Caps = append(q.Caps, c.program.Caps[r-len(c.binding)])
		}
	}
	s, err := New(q)
	if err != nil {
		return nil, false
	}
	res := s.Solve(ctx, 0, nil)
	return res.Set, res.Set != nil
}

// smallest returns the smallest clashing group.
func (c *clash) smallest(ctx context.Context) []int {
	var corrections [][]int
	for ctx.Err() == nil {
		group := leastHitting(ctx, corrections)
		set, ok := c.keeps(ctx, group)
		switch {
		case ctx.Err() != nil:
			return nil
		case !ok:
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
	for k := range c.size() {
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
	switch r := k - len(c.program.In); {
	case r < 0:
		return slices.Contains(set, c.program.In[k])
	case r < len(c.binding):
		return c.program.Rows[c.binding[r]].keeps(set)
	default:
		return c.program.Caps[r-len(c.binding)].keeps(set)
	}
}

// leastHitting returns a smallest list that shares a member with each of the
// sets, none of which is empty, by trying sizes 0, 1, 2, ...
func leastHitting(ctx context.Context, sets [][]int) []int {
	for size := range len(sets) + 1 {
		if hit, ok := hitting(ctx, sets, nil, size); ok {
			slices.Sort(hit)
			return hit
		}
	}
	return nil
}

func hitting(ctx context.Context, sets [][]int, chosen []int, size int) ([]int, bool) {
	for _, s := range sets {
		if slices.ContainsFunc(s, func(k int) bool { return slices.Contains(chosen, k) }) {
			continue
		}
		if len(chosen) == size || ctx.Err() != nil {
			return nil, false
		}
		for _, k := range s {
			if hit, ok := hitting(ctx, sets, append(slices.Clone(chosen), k), size); ok {
				return hit, true
			}
		}
		return nil, false
	}
	return chosen, true
}
