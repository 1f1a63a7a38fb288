package choose

import (
	"context"
	"fmt"
	"slices"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// Answer is the best legal set of holes for an arena, and what speaks for it.
// Values are weighted means over the moments of the best view's score plus the
// worth of the second, without unit: 0 sees nothing, 1 sees everything once.
type Answer struct {
	Status Status   `json:"status"`
	Value  float64  `json:"value"` // without unit
	Bound  float64  `json:"bound"` // without unit
	Gap    float64  `json:"gap"`   // share of the bound, from 0 to 1
	Holes  []Choice `json:"holes"`
	// Seconds is left at 0 for the caller, who has a clock.
	Seconds      float64  `json:"seconds"`
	Candidates   int      `json:"candidates"`
	Moments      int      `json:"moments"`
	Seed         uint64   `json:"seed"`
	Alternatives []Option `json:"alternatives"`
	Prices       []Price  `json:"prices"`
	// Today is what the holes that are cut now are worth, Drawn what they and
	// the planned ones are.
	Today    Standing `json:"today"`
	Drawn    Standing `json:"drawn"`
	Excluded []Cause  `json:"excluded"`
	// Clash is the smallest group of constraints that no set can keep, when
	// there is no answer.
	Clash []string `json:"clash"`
	// Unfinished names what was asked for and not completed, since the search
	// was stopped after its proof: "alternatives", "prices", "losses".
	Unfinished []string `json:"unfinished"`
	Nodes      int      `json:"nodes"`
	Cuts       int      `json:"cuts"`
}

// Place is a hole of an answer.
type Place struct {
	ID      string  `json:"id"`
	Pane    string  `json:"pane"`
	Corner  string  `json:"corner"` // "" between the blue lines and on a rink without markings
	State   string  `json:"state"`  // "cut", "planned" or "new"
	Station float64 `json:"station_m"`
	Height  float64 `json:"height_m"` // of its centre above the ice
	X       float64 `json:"x_m"`
	Y       float64 `json:"y_m"`
}

// Choice is a chosen hole and what it is good for.
type Choice struct {
	Place
	Worth float64 `json:"worth"` // value lost without it, the others unchanged; without unit
	// Loss is the value lost when its pane may not be used and the others are
	// chosen anew, without unit; below 0 for a kept hole without which another
	// set is better; null when it was not asked for or its search was cut short.
	Loss *float64 `json:"loss"`
	Best float64  `json:"best_view_share"` // share of the news of which it is the best view, from 0 to 1
	Only float64  `json:"only_view_share"` // share of the news that no other chosen hole sees, from 0 to 1
	Why  string   `json:"why"`
}

// Option is another set.
type Option struct {
	Value float64 `json:"value"` // without unit
	Bound float64 `json:"bound"` // the true next best is no better, without unit
	Lost  float64 `json:"lost"`  // against the best set, without unit
	Holes []Place `json:"holes"`
}

// Price is what a constraint costs. Of a pane without a place that only this
// constraint bars, the place nearest its middle is tried.
type Price struct {
	Rule  string   `json:"rule"`
	Value float64  `json:"value"` // of the best set found if the rule were lifted, without unit
	Bound float64  `json:"bound"` // none of the places tried makes a better one, without unit; above Value when that search was cut short
	Gain  float64  `json:"gain"`  // over the best set under it, without unit
	Holes []string `json:"holes"` // of that set
}

// Standing is the value of holes that are there or drawn.
type Standing struct {
	Value   float64      `json:"value"` // without unit
	Holes   []string     `json:"holes"`
	Verdict rules.Status `json:"verdict"` // of the rule sets
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

// Answer searches for the best set and explains it.
func (s *Study) Answer(ctx context.Context) Answer {
	out := Answer{
		Candidates: s.open, Moments: s.moments.Len(), Seed: s.opt.Seed, Excluded: s.causes,
		Holes: []Choice{}, Alternatives: []Option{}, Prices: []Price{}, Clash: []string{}, Unfinished: []string{},
		Today: s.standing(func(p place) bool { return p.cut }),
		Drawn: s.standing(func(p place) bool { return p.drawn }),
	}
	best := s.solver.SolveWithin(ctx, s.opt.Nodes, s.telling("choosing"))
	out.Status, out.Value, out.Bound, out.Gap, out.Nodes, out.Cuts = best.Status, best.Value, best.Bound, best.Gap(), best.Nodes, best.Cuts
	if s.open == 0 && len(best.Set) == 0 {
		out.Status = Infeasible
	}
	if best.Set == nil {
		if best.Status == Infeasible {
			out.Clash = append(out.Clash, s.solver.Clash(ctx, s.id)...)
		}
		return out
	}
	best.Set = s.useful(best)
	out.Holes = s.explain(best.Set)
	if best.Status == Optimal {
		s.alternatives(ctx, &out, best)
		if !s.opt.Plain {
			s.prices(ctx, &out, best)
			s.losses(ctx, &out, best)
		}
	}
	return out
}

// useful drops members that add nothing where fewer holes are allowed.
func (s *Study) useful(best Result) []int {
	set := slices.Clone(best.Set)
	for k := 0; k < len(set) && !s.problem.Exact; {
		if s.solver.Worth(set)[k] > 0 || slices.Contains(s.problem.In, set[k]) {
			k++
			continue
		}
		set = without(set, k)
	}
	return set
}

func (s *Study) id(i int) string { return s.places[i].hole.ID }

func (s *Study) ids(set []int) []string {
	out := []string{}
	for _, i := range set {
		out = append(out, s.id(i))
	}
	return out
}

// telling passes a search's progress on.
func (s *Study) telling(stage string) Progress {
	return func(value, bound float64, nodes int) {
		share := 0.0
		if bound > 0 && value > 0 {
			share = value / bound
		}
		s.opt.tell(Report{Stage: stage, Share: share, Value: max(value, 0), Bound: bound})
	}
}

// standing values the drawn places that pick says.
func (s *Study) standing(pick func(place) bool) Standing {
	var set []int
	a := s.arena
	a.Holes = nil
	for i, p := range s.places {
		if p.drawn && pick(p) {
			set = append(set, i)
			a.Holes = append(a.Holes, p.hole)
		}
	}
	return Standing{Value: s.solver.Value(set), Holes: s.ids(set), Verdict: s.sets.Check(a).Verdict}
}

// place describes candidate i.
func (s *Study) place(i int) Place {
	p := s.places[i]
	at := s.arena.Rink.Point(p.hole.Station)
	state := "new"
	if p.drawn {
		state = string(glass.Planned)
	}
	if p.cut {
		state = string(glass.Cut)
	}
	return Place{
		ID: p.hole.ID, Pane: p.hole.Pane, Corner: s.arena.Rink.Corner(p.hole.Station).String(), State: state,
		Station: p.hole.Station.Metres(), Height: p.hole.Height.Metres(), X: at.X, Y: at.Y,
	}
}

// Hole returns the hole behind an id of the answer: one of the arena's, or the
// standard hole at a new place, planned.
func (s *Study) Hole(id string) (glass.Hole, error) {
	for _, p := range s.places {
		if p.hole.ID == id {
			return p.hole, nil
		}
	}
	return glass.Hole{}, fmt.Errorf("%s is no candidate", id)
}
