package choose

import (
	"context"

	"example.org/rinkpane/rink"
)

// alternatives fills in the next best sets: each leaves at least one pane of a
// corner unused that the sets before it use. On a rink without corners every
// pane counts.
func (s *Study) alternatives(ctx context.Context, out *Answer, best Result) {
	class := make([]int, len(s.places))
	panes := map[string]int{}
	for k, p := range s.arena.Panes {
		panes[p.ID] = k
	}
	for i, p := range s.places {
		class[i] = panes[p.hole.Pane]
		if s.arena.Rink.Marked() && s.arena.Rink.Corner(p.hole.Station) == rink.NoCorner {
			class[i] = -1
		}
	}
	sets, _ := s.solver.Alternatives(ctx, best, s.opt.Alternatives, class, s.telling("alternatives"))
	for _, alt := range sets {
		o := Option{Value: alt.Value, Bound: alt.Bound, Lost: best.Value - alt.Value}
		for _, i := range alt.Set {
			o.Holes = append(o.Holes, s.place(i))
		}
		out.Alternatives = append(out.Alternatives, o)
	}
}

// prices fills in what each constraint costs: the best value if it did not
// hold. A barred place counts once the only rule against it is lifted.
func (s *Study) prices(ctx context.Context, out *Answer, best Result) {
	var rules []string
	seen := map[string]bool{}
	for _, g := range s.problem.Groups {
		if !seen[g.Rule] && g.Rule != onePerPane && s.binds(g) {
			seen[g.Rule] = true
			rules = append(rules, g.Rule)
		}
	}
	rules = append(rules, onePerPane)
	for _, rule := range rules {
		res := s.solver.Lifted(ctx, func(g Group) bool { return g.Rule == rule }, best.Set, s.telling("prices"))
		if ctx.Err() != nil {
			return // stopped: a price half worked out would mislead
		}
		out.Prices = append(out.Prices, Price{Rule: rule, Value: res.Value, Bound: res.Bound, Gain: max(0, res.Value-best.Value), Holes: s.ids(res.Set)})
	}
}

// binds reports whether a group can forbid anything.
func (s *Study) binds(g Group) bool { return len(g.Members) > g.Most }

// losses fills in what leaving each chosen hole's pane whole would cost, the
// rest chosen anew.
func (s *Study) losses(ctx context.Context, out *Answer, best Result) {
	for k, i := range best.Set {
		var gone []int
		for j, p := range s.places {
			if p.hole.Pane == s.places[i].hole.Pane {
				gone = append(gone, j)
			}
		}
		res := s.solver.Without(ctx, gone, s.telling("losses"))
		if res.Status != Optimal {
			return
		}
		loss := max(0, best.Value-res.Value)
		out.Holes[k].Loss = &loss
	}
}
