package choose

import (
	"context"
	"slices"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// Answer is the best legal set of holes for an arena, and what speaks for it.
// Values are weighted means over the moments of the best view's score plus the
// worth of the second, without unit: 0 sees nothing, 1 sees everything once.
//
// It stands alone: nothing of the study that made it is held.
type Answer struct {
	Arena arena.Arena // as it was asked about
	Sets  rules.Sets  // that the best set and its alternatives were proved to keep

	Status solve.Status
	Value  float64 // without unit
	Bound  float64 // no legal set is worth more, without unit
	Holes  []Choice
	// People is how many holes are worked at once at most, 0 for all; Crews who of the
	// set then works in which phase of play, in the phases' order.
	People int
	Crews  []Crew
	// Working is at what heights the person works that heights were tried for; unknown
	// where one height was tried.
	Working unit.Maybe[Working]
	// Took is left at 0 for the caller, who has a clock.
	Took       time.Duration
	Candidates int
	Moments    int
	Seed       uint64
	// Margin is half the 95 % interval of the value, over all moments that the
	// sampler may draw, without unit.
	Margin   float64
	Others   Samples
	Costs    cost.Costs
	Ladder   []Step // from what is cut today to the best
	Frontier []Step // what each amount of money buys, from nothing spent upward; no set is worth more for as little
	// Cheapest is the least that must be spent for any gain, when the budget
	// buys none.
	Cheapest     unit.Maybe[Step]
	Alternatives []Option
	Prices       []Price
	// Today is what the holes that are cut now are worth, Drawn what they and
	// the planned ones are.
	Today    Standing
	Drawn    Standing
	Excluded []Cause
	// Clash is the smallest group of constraints that no set can keep, when
	// there is no answer.
	Clash []say.Sentence
	// Unfinished names the stages that were asked for and not completed, since
	// the search was stopped after its proof.
	Unfinished []string
	Nodes      int
	Cuts       int
}

// Gap returns how far the bound lies above the value as a share of the bound,
// from 0 to 1, without unit.
func (a Answer) Gap() float64 { return solve.Result{Value: a.Value, Bound: a.Bound}.Gap() }

// Choice is a chosen hole and what it is good for.
type Choice struct {
	Candidate
	Worth float64 // value lost without it, the others unchanged; without unit
	// Loss is the value lost when its pane may not be used and the others are
	// chosen anew, without unit; below 0 for a kept hole without which another
	// set is better; unknown when it was not asked for or its search was cut short.
	Loss unit.Maybe[float64]
	Best float64 // share of the news of which it is the best view, from 0 to 1
	// Only is the share of the news, from 0 to 1, that no other chosen hole sees
	// with a score of [SeenFrom] or more.
	Only float64
	Why  say.Sentence
	// AsGood is the run of places along the boards, this one among them, each of which
	// may stand for it: legal, and no worse by more than the moments can tell.
	AsGood []Candidate
	// Serves is the kind of moments for which the set needs it most: "net-front at
	// end B"; "" where the set is worth as much without it.
	Serves string
}

// Option is another set.
type Option struct {
	Value float64 // without unit
	Bound float64 // the true next best is no better, without unit
	Lost  float64 // against the best set, without unit
	// Margin is half the 95 % interval of Lost, over all moments that the sampler may
	// draw, without unit.
	Margin float64
	Holes  []Candidate
}

// Price is what a constraint costs. Of a pane without a place that only this
// constraint bars, the place nearest its middle is tried.
type Price struct {
	Rule  string
	Value float64     // of the best set found without the rule, without unit
	Bound float64     // none of the places tried makes a better one, without unit; above Value when that search was cut short
	Gain  float64     // over the best set under it, without unit
	Holes []Candidate // of that set
}

// Standing is the value of holes that are there or drawn. Where exactly so many
// are asked for and more stand, it is that of the best so many of them, so that
// like is compared with like.
type Standing struct {
	Value   float64 // without unit
	Holes   []string
	Of      int          // how many there are
	Verdict rules.Status // of the rule sets
}

// ForArena chooses the best legal holes of an arena: [Prepare] and
// [Study.Answer] in one. When ctx ends early the answer holds the best set
// found so far and its bound; only an end during scoring is an error.
func ForArena(ctx context.Context, a arena.Arena, sets rules.Sets, k kit.Kit, opt Options) (Answer, error) {
	s, err := Prepare(ctx, a, sets, k, opt)
	if err != nil {
		return Answer{}, err
	}
	return s.Answer(ctx), nil
}

// Set returns the holes of the best set for 0, of the n-th alternative above.
func (a Answer) Set(n int) []Candidate {
	if n > 0 {
		return a.Alternatives[n-1].Holes
	}
	out := make([]Candidate, len(a.Holes))
	for i, h := range a.Holes {
		out[i] = h.Candidate
	}
	return out
}

// With returns the arena with these holes in place of its own.
func (a Answer) With(set []Candidate) arena.Arena {
	out := a.Arena
	out.Holes = nil
	for _, c := range set {
		out.Holes = append(out.Holes, c.Hole)
	}
	return out
}

// Answer searches for the best set and explains it.
func (s *Study) Answer(ctx context.Context) Answer {
	out := Answer{
		Arena: s.arena, Sets: s.sets, Costs: s.opt.Costs,
		Candidates: s.open, Moments: s.problem.Moments, Seed: s.opt.Seed, Excluded: s.causes,
		Today: s.standing(ctx, Candidate.IsCut),
		Drawn: s.standing(ctx, func(Candidate) bool { return true }),
	}
	nodes := s.opt.Nodes
	if nodes == 0 && s.solver.crews != nil {
		nodes = crewNodes
	}
	best := s.solver.Solve(ctx, nodes, s.telling("choosing"))
	out.Status, out.Value, out.Bound, out.Nodes, out.Cuts = best.Status, best.Value, best.Bound, best.Nodes, best.Cuts
	if s.open == 0 && len(best.Set) == 0 {
		out.Status = solve.Infeasible
	}
	if best.Set == nil {
		if best.Status == solve.Infeasible {
			out.Clash = s.solver.Clash(ctx, s.name)
		}
		return out
	}
	best.Set = s.eased(&s.problem, s.useful(&s.problem, best.Set))
	best.Value = s.solver.Value(best.Set)
	out.Value = best.Value
	out.Holes = s.explain(best.Set)
	out.Margin = s.solver.margin(best.Set, nil)
	if w := s.opt.Person; w.Asked() || len(s.opt.Heights) > 1 {
		out.Working = unit.Known(w.At(s.arena))
	}
	out.People, out.Crews = s.opt.People, s.crews(best.Set)
	if best.Status == solve.Optimal || s.solver.crews != nil && ctx.Err() == nil {
		if s.opt.Ladder {
			s.ladder(ctx, &out, best)
		}
		s.alternatives(ctx, &out, best)
		if !s.opt.Plain {
			s.prices(ctx, &out, best)
			s.losses(ctx, &out, best)
			s.others(ctx, &out, best)
		}
	}
	return out
}

// useful drops members that add nothing where fewer holes are allowed.
func (s *Study) useful(q *Problem, set []int) []int {
	set = slices.Clone(set)
	for k := 0; k < len(set) && !q.Exact; {
		if next := without(set, k); s.solver.Value(set) > s.solver.Value(next) || !q.Allows(next) {
			k++
		} else {
			set = next
		}
	}
	return set
}

func (s *Study) id(i int) string { return s.places[i].Hole.ID }

// name is a sentence that names a candidate for people.
func (s *Study) name(i int) say.Sentence { return say.Make("%s", s.places[i]) }

// pick returns the candidates of a set.
func (s *Study) pick(set []int) []Candidate {
	out := make([]Candidate, len(set))
	for k, i := range set {
		out[k] = s.places[i]
	}
	return out
}

// telling passes a search's progress on.
func (s *Study) telling(stage string) solve.Progress {
	return func(value, bound float64, nodes int) {
		share := 0.0
		if bound > 0 && value > 0 {
			share = value / bound
		}
		s.opt.tell(Report{Stage: stage, Share: share, Value: max(value, 0), Bound: bound})
	}
}

// standing values the drawn holes that belong.
func (s *Study) standing(ctx context.Context, belongs func(Candidate) bool) Standing {
	var set, others []int
	for i, p := range s.places {
		if !p.New && belongs(p) {
			set = append(set, i)
		} else {
			others = append(others, i)
		}
	}
	out := Standing{Of: len(set)}
	if n := s.opt.Count; n > 0 && n < len(set) {
		rows := []solve.Row{{Columns: others}, {Columns: set, Least: n, Most: n}}
		if res := s.solver.solver.Again(ctx, solve.Other{Rows: rows, Nodes: furtherNodes}); res.Set != nil {
			set = res.Set
		}
	}
	a := s.arena
	a.Holes = nil
	for _, i := range set {
		out.Holes = append(out.Holes, s.id(i))
		a.Holes = append(a.Holes, s.places[i].Hole)
	}
	out.Value, out.Verdict = s.solver.Value(set), s.sets.Check(a).Verdict
	return out
}
