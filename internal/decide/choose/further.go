package choose

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// alternatives fills in the next best sets: each leaves at least one pane of a
// corner unused that the sets before it use. On a rink without corners every
// pane counts.
func (s *Study) alternatives(ctx context.Context, out *Answer, best solve.Result) {
	class := make([]int, len(s.places))
	panes := map[string]int{}
	for k, p := range s.arena.Panes {
		panes[p.ID] = k
	}
	for i, p := range s.places {
		class[i] = panes[p.Hole.Pane]
		if s.arena.Rink.Marked() && p.corner == rink.NoCorner {
			class[i] = -1
		}
	}
	sets, ok := s.solver.Alternatives(ctx, best, s.opt.Alternatives, class, s.telling("alternatives"))
	for _, alt := range sets {
		alt.Set = s.eased(&s.problem, alt.Set)
		alt.Value = s.solver.Value(alt.Set)
		out.Alternatives = append(out.Alternatives, Option{alt.Value, alt.Bound, best.Value - alt.Value, s.solver.margin(best.Set, alt.Set), s.pick(alt.Set)})
	}
	if !ok {
		out.Unfinished = append(out.Unfinished, "alternatives")
	}
}

// prices fills in what each constraint and each kept hole costs: the best value
// if it did not hold. A barred place counts once the only rule against it is left out.
func (s *Study) prices(ctx context.Context, out *Answer, best solve.Result) {
	price := func(name string, res solve.Result) bool {
		if ctx.Err() != nil { // a price half worked out would mislead
			out.Unfinished = append(out.Unfinished, "prices")
			return false
		}
		out.Prices = append(out.Prices, Price{Rule: name, Value: res.Value, Bound: res.Bound, Gain: max(0, res.Value-best.Value), Holes: s.pick(res.Set)})
		return true
	}
	var rules []string
	seen := map[string]bool{}
	for _, g := range s.problem.Groups {
		// Panes of other materials are no candidates, so that wish has no price.
		if !seen[g.Rule] && g.Rule != onePerPane && g.Rule != materialsWish && s.binds(g) {
			seen[g.Rule] = true
			rules = append(rules, g.Rule)
		}
	}
	rules = append(rules, onePerPane)
	for _, rule := range rules {
		if !price(rule, s.solver.WithoutGroups(ctx, func(g Group) bool { return g.Rule == rule }, best.Set, s.telling("prices"))) {
			return
		}
	}
	for _, i := range s.problem.In {
		if !price("keep "+s.id(i), s.solver.Freed(ctx, i, best.Set, s.telling("prices"))) {
			return
		}
	}
}

// binds reports whether a group can forbid anything.
func (s *Study) binds(g Group) bool { return len(g.Members) > g.Most }

// losses fills in what leaving each chosen hole's pane whole would cost, the
// rest chosen anew. Only a kept hole can cost more than it gives.
func (s *Study) losses(ctx context.Context, out *Answer, best solve.Result) {
	for k, i := range best.Set {
		var gone []int
		for j, p := range s.places {
			if p.Hole.Pane == s.places[i].Hole.Pane {
				gone = append(gone, j)
			}
		}
		res := s.solver.Without(ctx, gone, best.Set, s.telling("losses"))
		if ctx.Err() != nil {
			out.Unfinished = append(out.Unfinished, "losses")
			return
		}
		if res.Status != solve.Optimal {
			continue
		}
		loss := best.Value - res.Value
		if loss < solve.Tolerance && !slices.Contains(s.problem.In, i) {
			loss = 0
		}
		out.Holes[k].Loss = unit.Known(loss)
	}
}
