package choose

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"runtime"
	"slices"
	"strings"
	"sync"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// Study is a choice made ready: the places of one arena, the moments, the score
// of each pair, and the constraints. Make one with [Prepare].
type Study struct {
	arena   arena.Arena
	sets    rules.Sets
	rules   *rules.Applied // to the arena
	opt     Options
	places  []Candidate // those that may be chosen, in station order, then the barred ones
	open    int         // how many may be chosen
	causes  []Cause
	kinds   []uint8 // of each moment
	kit     kit.Kit
	bills   []cost.Bill // by place, beside base
	base    cost.Bill   // a new pane for every hole that is cut today
	problem Problem
	solver  *Solver
}

// Prepare lays the candidates over the arena's panes, makes the moments and
// scores every pair. Errors: bad options, a hole to keep or forbid that does
// not exist, a kit without use, ctx's.
func Prepare(ctx context.Context, a arena.Arena, sets rules.Sets, k kit.Kit, opt Options) (*Study, error) {
	if err := opt.Check(); err != nil {
		return nil, err
	}
	l, err := lay(ctx, a, sets, opt)
	if err != nil {
		return nil, err
	}
	open, barred := l.sorted()
	if opt.Plain { // without prices only what somebody asks about counts
		barred = slices.DeleteFunc(barred, func(p Candidate) bool { return !l.asked(p) })
	}
	byStation := func(p, q Candidate) int { return cmp.Compare(p.Hole.Station, q.Hole.Station) }
	slices.SortStableFunc(open, byStation)
	s := &Study{arena: a, kit: k, sets: sets, rules: l.rules, opt: opt, places: slices.Concat(open, barred), open: len(open), causes: l.causes()}
	if len(s.places) > maxCandidates {
		return nil, fmt.Errorf("step: %g mm makes %d places, at most %d: take a larger step", opt.Step.Millimetres(), len(s.places), maxCandidates)
	}
	if n := len(s.places) * opt.Moments; n > maxScores {
		return nil, fmt.Errorf("step: %d places for %d moments make %d scores, at most %d: take a larger step, fewer heights or fewer moments", len(s.places), opt.Moments, n, maxScores)
	}
	s.problem = Problem{Second: opt.Second}
	if err := s.constrain(ctx); err != nil {
		return nil, err
	}
	if err := s.score(ctx, k); err != nil {
		return nil, err
	}
	if len(s.problem.Score) > manyScores {
		runtime.GC()
	}
	s.solver, err = NewSolver(ctx, s.problem)
	return s, err
}

// manyScores is from how many scores on the moments' bodies are swept away before
// the ranking takes its place beside them.
const manyScores = 10_000_000

// score makes the moments and scores every place.
func (s *Study) score(ctx context.Context, k kit.Kit) error {
	moments, err := s.opt.Sample(ctx, s.arena)
	if err != nil {
		return err
	}
	scorer, err := sight.NewScorer(s.arena, k, s.opt.Judge)
	if err != nil {
		return err
	}
	holes := make([]glass.Hole, len(s.places))
	for i, p := range s.places {
		holes[i] = p.Hole
	}
	var one sync.Mutex // the scorer tells from all its cores
	most := 0
	scores, err := scorer.Score(ctx, holes, moments, func(done int) {
		one.Lock()
		defer one.Unlock()
		if done > most {
			most = done
			s.opt.tell(Report{Stage: "scoring", Share: float64(done) / float64(s.opt.Moments)})
		}
	})
	// Of the moments only their kinds are kept: the bodies take much memory.
	s.kinds = make([]uint8, moments.Len())
	s.problem.People, s.problem.Phase = s.opt.People, make([]uint8, moments.Len())
	for m := range s.kinds {
		s.kinds[m], s.problem.Phase[m] = kindOf(moments, m), uint8(moments.Phase[m])
	}
	s.problem.Score, s.problem.Moments, s.problem.Weight = scores.Value, moments.Len(), moments.Weight
	return err
}

// constrain states the rules and the wishes.
func (s *Study) constrain(ctx context.Context) error {
	p := &s.problem
	p.Count, p.Exact = s.opt.Count, s.opt.Count > 0
	for _, g := range s.rules.Groups() {
		s.group(Group{Rule: g.Set + "/" + g.Rule, Name: g.Name, Most: g.Most}, func(q Candidate) bool { return g.Has(q.Hole) })
	}
	if p.Count == 0 {
		p.Count = s.commonCount()
	}
	if err := s.apart(ctx); err != nil {
		return err
	}
	for _, pane := range s.arena.Panes {
		s.group(Group{Rule: onePerPane, Name: "pane " + pane.ID, Most: 1}, func(q Candidate) bool { return q.Hole.Pane == pane.ID })
	}
	if n, ok := s.opt.NewCuts.Get(); ok {
		s.group(Group{Rule: "new cuts", Name: "the uncut panes", Most: n, Label: say.Make("newly cut panes: at most %d", n)}, func(q Candidate) bool { return !q.IsCut() })
	}
	for i := s.open; i < len(s.places); i++ {
		for _, rule := range s.places[i].against {
			label := say.Make("%s bars %s", rule, s.places[i])
			if rule == materialsWish {
				label = say.Make("materials: the pane of %s is not to be cut or ordered", s.places[i])
			}
			p.Groups = append(p.Groups, Group{Rule: rule, Name: s.id(i), Members: []int{i}, Label: label})
		}
	}
	s.charge()
	if b, ok := s.opt.Budget.Get(); ok {
		p.Caps = append(p.Caps, s.budget(b))
	}
	return s.wishes()
}

// onePerPane names the constraint that no pane is cut twice.
const onePerPane = "one hole per pane"

// commonCount is how many are chosen at most when nobody says: as many as the
// rules allow when they cap the whole rink, else CommonCount.
func (s *Study) commonCount() int {
	for _, g := range s.problem.Groups {
		if len(g.Members) >= s.open && s.open > 0 {
			return len(s.places)
		}
	}
	return min(CommonCount, len(s.places))
}

// group adds a group with the places that belong to it, if any.
func (s *Study) group(g Group, has func(Candidate) bool) {
	for i, q := range s.places {
		if has(q) {
			g.Members = append(g.Members, i)
		}
	}
	if len(g.Members) > 0 {
		s.problem.Groups = append(s.problem.Groups, g)
	}
}

// mostPairs is how many pairs of places rules may keep apart: more make a program
// too large for the memory of a usual machine.
const mostPairs = 1_000_000

// apart states the rules on pairs, each as groups of at most one. Only
// neighbours within the rules' reach are asked about, found by their stations.
func (s *Study) apart(ctx context.Context) error {
	byRule := map[string]*pairs{}
	var order []string
	number := 0
	err := s.neighbours(ctx, func(i, j int) {
		add := func(rule string) {
			if byRule[rule] == nil {
				byRule[rule] = newPairs(len(s.places))
				order = append(order, rule)
			}
			byRule[rule].add(i, j)
			number++
		}
		for _, f := range s.rules.Conflict(s.places[i].Hole, s.places[j].Hole) {
			if f.Status != rules.Pass {
				add(f.Set + "/" + f.Rule)
			}
		}
		along := s.arena.Rink.Wrap(s.places[j].Hole.Station - s.places[i].Hole.Station)
		if min(along, s.arena.Rink.Perimeter()-along) < s.opt.Person.Elbow {
			add(elbowRoom)
		}
	})
	if err != nil {
		return err
	}
	if number > mostPairs {
		return fmt.Errorf("step: the rules keep %d pairs of places apart, at most %d: take a larger step or fewer heights", number, mostPairs)
	}
	slices.Sort(order)
	for _, rule := range order {
		for _, members := range byRule[rule].cliques(ctx) {
			first, last := members[0], members[len(members)-1]
			s.problem.Groups = append(s.problem.Groups, Group{
				Rule: rule, Name: s.id(first) + " to " + s.id(last), Members: members, Most: 1,
				Label: say.Make("%s: at most 1 from %s to %s", rule, s.places[first], s.places[last]),
			})
		}
	}
	return ctx.Err()
}

// neighbours visits every pair of candidates within the reach of the rules on
// pairs, the lower number first.
func (s *Study) neighbours(ctx context.Context, visit func(i, j int)) error {
	order := make([]int, len(s.places))
	widest := unit.Length(0)
	for i, p := range s.places {
		order[i], widest = i, max(widest, p.Hole.Size.W)
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(s.places[a].Hole.Station, s.places[b].Hole.Station) })
	reach, round := max(s.rules.Reach(widest), s.opt.Person.Elbow), s.arena.Rink.Perimeter()
	for a, i := range order {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		s.opt.tell(Report{Stage: "pairing", Share: float64(a) / float64(len(order))})
		for b := a + 1; b < a+len(order); b++ {
			j := order[b%len(order)]
			ahead := s.arena.Rink.Wrap(s.places[j].Hole.Station - s.places[i].Hole.Station)
			if ahead > reach || 2*ahead > round {
				break
			}
			visit(min(i, j), max(i, j))
		}
	}
	return nil
}

// wishes states what must and must not be chosen.
func (s *Study) wishes() error {
	for _, id := range s.opt.Keep {
		i := slices.IndexFunc(s.places, func(p Candidate) bool { return p.Is(id) })
		if i < 0 {
			return s.unknown("keep", id, false)
		}
		if !slices.Contains(s.problem.In, i) {
			s.problem.In = append(s.problem.In, i)
		}
	}
	slices.Sort(s.problem.In)
	for _, id := range s.opt.Forbid {
		before := len(s.problem.Groups)
		s.group(Group{Rule: "forbid " + id, Name: id, Label: say.Make("forbid %s", id)}, func(p Candidate) bool { return p.Hole.Pane == id || p.Is(id) })
		if _, pane := s.arena.Pane(id); len(s.problem.Groups) == before && !pane {
			return s.unknown("forbid", id, true)
		}
	}
	return nil
}

// unknown says that a wish names nothing, and what it may have meant.
func (s *Study) unknown(wish, id string, panes bool) error {
	pane, _, _ := strings.Cut(id, "+")
	for _, c := range s.causes {
		if slices.Contains(c.Panes, pane) {
			return fmt.Errorf("%s: %s is no candidate: pane %s holds no place; mostly, %s", wish, form.Quote(id), pane, c.Cause)
		}
	}
	var known []string
	for _, p := range s.places {
		known = append(known, p.Hole.ID, p.Say(s.arena.Units))
	}
	what := "a hole of the arena or a place such as \"B-bench goal-line -33 in\""
	if panes {
		what += ", or a pane"
		for _, p := range s.arena.Panes {
			known = append(known, p.ID)
		}
	}
	if near := form.Nearest(id, known); near != "" {
		return fmt.Errorf("%s: %s is no candidate; did you mean %q?", wish, form.Quote(id), near)
	}
	return fmt.Errorf("%s: %s is no candidate; name %s", wish, form.Quote(id), what)
}

// WriteLP writes the problem in the CPLEX-LP format (see [Problem.WriteLP]),
// without the places that a rule bars unless one of them is to be kept.
func (s *Study) WriteLP(w io.Writer) error {
	p := s.problem
	keepsBarred := slices.ContainsFunc(p.In, func(i int) bool { return i >= s.open })
	if !keepsBarred && s.open > 0 {
		p.Score = p.Score[:s.open*p.Moments]
		p.Groups = nil
		for _, g := range s.problem.Groups {
			cut, _ := slices.BinarySearch(g.Members, s.open)
			if g.Members = g.Members[:cut]; cut > 0 {
				p.Groups = append(p.Groups, g)
			}
		}
	}
	return p.WriteLP(w, "choice of holes for "+s.arena.Name, func(i int) string { return s.places[i].Hole.ID })
}
