package choose

import (
	"context"
	"fmt"
	"slices"

	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// Step is one answer to the manager's question: so many panes newly cut, or so
// much money spent, and what it brings.
type Step struct {
	Kind    StepKind
	NewCuts int     // panes newly cut at most
	Value   float64 // without unit
	Bound   float64 // no set of the step is worth more, without unit
	Proved  bool
	Holes   []Candidate
	GivenUp []Candidate // cut today and left out: each means a whole pane in its place
	Bill    cost.Bill
	// Alike is the value of the best legal set of as many holes, however many
	// panes that cuts, so that like is compared with like; without unit.
	Alike float64
	// Story is what the set does as a whole and hole by hole.
	Story Story
	Crews []Crew // who works when, where not all of it is worked at once
}

// StepKind says what a step may do.
type StepKind string

// The kinds of steps.
const (
	TodayStep StepKind = "today"    // nothing
	KeepStep  StepKind = "keep all" // cut panes beside all that are cut
	FreeStep  StepKind = "give up"  // cut panes, and give holes up that are cut
	SpendStep StepKind = "spend"    // spend so much money
)

// Cut returns the holes that are newly cut.
func (s Step) Cut() []Candidate {
	return slices.DeleteFunc(slices.Clone(s.Holes), Candidate.IsCut)
}

// Kept returns the holes that are cut today and stay.
func (s Step) Kept() []Candidate {
	return slices.DeleteFunc(slices.Clone(s.Holes), func(c Candidate) bool { return !c.IsCut() })
}

// Keeping returns the best step of the ladder that keeps all holes that are cut and
// cuts more.
func (a Answer) Keeping() (best Step, ok bool) {
	for _, step := range a.Ladder {
		if step.Kind == KeepStep {
			best, ok = step, true
		}
	}
	return best, ok
}

// ladder fills in the steps: what is cut today; for 1, 2, 3, ... panes newly cut
// the best that keeps all, and the best that may give up, until that is the best
// set of all; then what each amount of money buys.
func (s *Study) ladder(ctx context.Context, out *Answer, best solve.Result) {
	today := s.today()
	first := s.step(TodayStep, 0, solve.Result{Set: today, Value: s.solver.Value(today), Bound: s.solver.Value(today), Status: solve.Optimal})
	out.Ladder = []Step{first}
	start := today
	for k := 1; ctx.Err() == nil; k++ {
		if len(s.cuts(best.Set)) <= k {
			start = best.Set
		}
		free := s.cutting(ctx, k, nil, start)
		if free.Set == nil {
			break
		}
		step := s.step(FreeStep, k, free)
		if len(step.GivenUp) == 0 {
			step.Kind = KeepStep
		} else if kept := s.cutting(ctx, k, today, start); kept.Set != nil {
			if keep := s.step(KeepStep, k, kept); len(keep.Cut()) == k {
				out.Ladder = append(out.Ladder, keep)
			}
		}
		out.Ladder = append(out.Ladder, step)
		if start = free.Set; free.Value >= best.Value-solve.Tolerance || k > len(step.Cut()) {
			break
		}
	}
	s.likeWithLike(ctx, out, best)
	_, limited := s.opt.Budget.Get()
	var whole bool
	if out.Frontier, whole = s.frontier(ctx, s.opt.Budget, first, best.Set, mostPoints); !whole {
		out.Unfinished = append(out.Unfinished, fmt.Sprintf("frontier (the %d dearest points are told)", mostPoints))
	}
	if limited && ctx.Err() == nil && len(out.Frontier) == 1 {
		if all, _ := s.frontier(ctx, unit.Maybe[cost.Money]{}, first, best.Set, mostPoints); len(all) > 1 {
			out.Cheapest = unit.Known(all[1])
		}
	}
	if ctx.Err() != nil {
		out.Unfinished = append(out.Unfinished, "ladder")
	}
}

// today returns the places of the holes that are cut.
func (s *Study) today() (set []int) {
	for i, p := range s.places {
		if p.IsCut() {
			set = append(set, i)
		}
	}
	return set
}

// cuts returns the places of a set that are newly cut.
func (s *Study) cuts(set []int) []int {
	return slices.DeleteFunc(slices.Clone(set), func(i int) bool { return s.places[i].IsCut() })
}

// cutting returns the best set that cuts at most so many panes and keeps some holes.
func (s *Study) cutting(ctx context.Context, most int, keep, start []int) solve.Result {
	q := s.atMost(most, keep)
	return s.best(ctx, &q, start, "ladder")
}

// atMost is the problem of cutting at most so many panes and keeping some holes.
func (s *Study) atMost(most int, keep []int) Problem {
	q := s.problem
	q.Exact = false
	q.In = slices.Compact(slices.Sorted(slices.Values(slices.Concat(q.In, keep))))
	q.Groups = slices.Clone(q.Groups)
	uncut := Group{Rule: "new cuts", Most: most}
	for i, p := range s.places {
		if !p.IsCut() {
			uncut.Members = append(uncut.Members, i)
		}
	}
	q.Groups = append(q.Groups, uncut)
	return q
}

// best returns the best set under q, without members that add nothing.
func (s *Study) best(ctx context.Context, q *Problem, start []int, stage string) solve.Result {
	res := s.solver.again(ctx, q, start, 0, s.telling(stage))
	if res.Set != nil {
		res.Set = s.eased(q, s.useful(q, res.Set))
		res.Value = s.solver.Value(res.Set)
	}
	return res
}

// step makes a step of a search's outcome.
func (s *Study) step(kind StepKind, most int, res solve.Result) Step {
	out := Step{
		Kind: kind, NewCuts: most, Value: res.Value, Bound: res.Bound, Proved: res.Status == solve.Optimal,
		Holes: s.pick(res.Set), Bill: s.bill(res.Set), Story: s.story(res.Set), Crews: s.crews(res.Set),
	}
	for _, i := range s.today() {
		if !slices.Contains(res.Set, i) {
			out.GivenUp = append(out.GivenUp, s.places[i])
		}
	}
	return out
}

// likeWithLike fills in the value of the best set of as many holes as each step has.
func (s *Study) likeWithLike(ctx context.Context, out *Answer, best solve.Result) {
	known := map[int]float64{len(best.Set): best.Value}
	for k := range out.Ladder {
		n := len(out.Ladder[k].Holes)
		if _, ok := known[n]; !ok && n < len(best.Set) && ctx.Err() == nil {
			q := s.problem
			q.Count, q.Exact, q.Caps = n, true, nil
			known[n] = s.best(ctx, &q, nil, "ladder").Value
		}
		out.Ladder[k].Alike = known[n]
	}
}

// charge works out what each place costs beside a new pane for every hole that is
// cut today: a hole that stays saves its pane.
func (s *Study) charge() {
	panes := map[string]bool{}
	for _, i := range s.today() {
		panes[s.places[i].Hole.Pane] = true
	}
	s.bills = make([]cost.Bill, len(s.places))
	for i, p := range s.places {
		pane, _ := s.arena.Pane(p.Hole.Pane)
		if !p.IsCut() {
			s.bills[i] = s.opt.Costs.Hole(pane, panes[pane.ID])
			continue
		}
		whole := s.opt.Costs.Whole(pane)
		s.base = s.base.Plus(whole)
		s.bills[i] = cost.Bill{Money: -whole.Money, Panes: -whole.Panes, Hours: -whole.Hours}
	}
}

// bill returns what a set costs; what is cut today costs nothing.
func (s *Study) bill(set []int) cost.Bill {
	if slices.Equal(set, s.today()) {
		return cost.Bill{}
	}
	out := s.base.Plus(s.opt.Costs.Start())
	for _, i := range set {
		out = out.Plus(s.bills[i])
	}
	return out
}

// budget states that a set that changes anything costs at most so much. What is
// cut today costs nothing and stays within any budget.
func (s *Study) budget(most cost.Money) Cap {
	out := Cap{Label: say.Make("spend at most %d %s", most, s.opt.Costs.Currency)}
	out.Most = int(max(most, s.opt.Costs.Start().Money) - s.base.Plus(s.opt.Costs.Start()).Money)
	for _, b := range s.bills {
		out.Cost = append(out.Cost, int(b.Money))
	}
	return out
}
