package choose

import (
	"context"
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/decide/solve"
)

// Alternatives returns up to k sets next to the best one, best first. class
// gives each candidate's place (a pane, of which a set uses at most one
// candidate), or -1 for places that do not count (outside the corners). Each
// alternative leaves at least one place unused that the best set uses, and
// likewise for each alternative before it; so none is another by a hole shifted
// within its pane. A search that is too long ends with a bound above its value.
// ok is false when ctx ended first.
func (s *Solver) Alternatives(ctx context.Context, best solve.Result, k int, class []int, tell solve.Progress) (out []solve.Result, ok bool) {
	n := &nextBest{solver: s, most: k, class: class, tell: tell, known: map[string]bool{}}
	n.parts = []*part{{bound: math.Inf(1), found: &best}}
	n.taken = [][]int{n.placesOf(best.Set)}
	for len(out) < k && len(n.taken[len(out)]) > 0 {
		res, found := n.next(ctx)
		if ctx.Err() != nil {
			return out, false
		}
		if !found {
			break
		}
		out = append(out, res)
		n.taken = append(n.taken, n.placesOf(res.Set))
	}
	return out, true
}

// nextBest searches for sets in falling order of value by splitting what is left
// (Lawler 1972): a set that uses all the places of one that was told already lies
// in a part of the search, and that part is split into one for each of those
// places, in which the place stays unused.
//
//	all sets --best--> without place 1 | without place 2 | ... | without place 8
//	                         |
//	                         +--second--> without 1 and 1' | without 1 and 2' | ...
type nextBest struct {
	solver *Solver
	most   int // sets to tell
	class  []int
	tell   solve.Progress
	parts  []*part
	known  map[string]bool // parts made so far, by their unused places
	taken  [][]int         // places of the sets told so far
}

// part is all sets that leave some places unused.
type part struct {
	unused []int // ascending
	bound  float64
	start  []int         // a set that is nearly one of it
	found  *solve.Result // its best set, once searched for
}

// next returns the best set that leaves a place of each set told so far unused.
func (n *nextBest) next(ctx context.Context) (solve.Result, bool) {
	for len(n.parts) > 0 && ctx.Err() == nil {
		top := n.top()
		p := n.parts[top]
		if p.found == nil {
			if !n.search(ctx, p) {
				n.parts = slices.Delete(n.parts, top, top+1)
			}
			continue
		}
		if told := n.told(p.found.Set); told != nil {
			n.parts = slices.Delete(n.parts, top, top+1)
			n.split(ctx, p, told)
			continue
		}
		res := n.bestFound()
		res.Bound = max(res.Value, p.bound)
		return res, true
	}
	return solve.Result{}, false
}

// search finds the best set of a part, or only that enough better ones are known
// for now; false when it holds none.
func (n *nextBest) search(ctx context.Context, p *part) bool {
	enough := n.enough()
	res := n.solver.leaving(ctx, n.members(p.unused), true, p.start, enough, n.tell)
	p.bound = min(p.bound, res.Bound)
	if len(res.Set) > 0 {
		p.start = res.Set
	}
	if p.bound < enough && res.Status == solve.Stopped {
		return true
	}
	p.found = &res
	return res.Status != solve.Infeasible && len(res.Set) > 0
}

// enough returns the value of the last of the sets that are still to be told, if
// that many are found.
func (n *nextBest) enough() float64 {
	var values []float64
	places := map[string]bool{}
	for _, p := range n.parts {
		if p.found == nil || n.told(p.found.Set) != nil {
			continue
		}
		if key := fmt.Sprint(n.placesOf(p.found.Set)); !places[key] {
			places[key] = true
			values = append(values, p.found.Value)
		}
	}
	left := n.most - (len(n.taken) - 1)
	if len(values) < left {
		return 0
	}
	slices.Sort(values)
	return values[len(values)-left]
}

// top returns the part of the highest bound.
func (n *nextBest) top() int {
	best := 0
	for k, p := range n.parts {
		if p.bound > n.parts[best].bound {
			best = k
		}
	}
	return best
}

// bestFound returns the best set found that was not told yet; there is one.
func (n *nextBest) bestFound() (best solve.Result) {
	for _, p := range n.parts {
		if p.found != nil && (best.Set == nil || p.found.Value > best.Value) && n.told(p.found.Set) == nil {
			best = *p.found
		}
	}
	return best
}

// told returns the places of a set told before all of which this set uses, or nil.
func (n *nextBest) told(set []int) []int {
	places := n.placesOf(set)
	for _, t := range n.taken {
		if solve.Shared(t, places) == len(t) {
			return t
		}
	}
	return nil
}

// split replaces a part by one for each of the places.
func (n *nextBest) split(ctx context.Context, p *part, places []int) {
	var next []*part
	var gone [][]int
	for _, c := range places {
		unused := append(slices.Clone(p.unused), c)
		slices.Sort(unused)
		if key := fmt.Sprint(unused); !n.known[key] {
			n.known[key] = true
			next = append(next, &part{unused: unused, bound: p.bound, start: p.found.Set})
			gone = append(gone, n.members(unused))
		}
	}
	for k, b := range n.solver.bounds(ctx, gone) {
		next[k].bound = min(next[k].bound, b)
		if !math.IsInf(b, -1) {
			n.parts = append(n.parts, next[k])
		}
	}
}

// placesOf returns the places that a set uses, ascending.
func (n *nextBest) placesOf(set []int) (out []int) {
	for _, i := range set {
		if n.class[i] >= 0 {
			out = append(out, n.class[i])
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// members returns the candidates of some places, ascending.
func (n *nextBest) members(places []int) (out []int) {
	for i, c := range n.class {
		if slices.Contains(places, c) {
			out = append(out, i)
		}
	}
	return out
}
