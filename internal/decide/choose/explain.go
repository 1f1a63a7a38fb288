package choose

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/survey/play"
)

// SeenFrom is the score from which a hole counts as seeing a moment, without
// unit; own choice: below it a picture is not worth taking.
const SeenFrom = 0.1

// kinds of moments that the sentences tell apart: each phase at each end.
const kinds = 2 * 6

// role is what one hole does for the set, by kind of moment; all as shares of
// the news, from 0 to 1.
type role struct {
	best [kinds]float64 // it is the best view
	only [kinds]float64 // no other chosen hole sees it
	lost [kinds]float64 // value lost without the hole
	next []float64      // by member of the set: how often it steps in
}

// explain describes each chosen hole, and where else it might be.
func (s *Study) explain(set []int) []Choice {
	out := s.each(set)
	for k := range out {
		out[k].AsGood = s.asGood(set, k)
	}
	return out
}

// each describes each hole of a set.
func (s *Study) each(set []int) []Choice {
	out := make([]Choice, len(set))
	worth := s.solver.Worth(set)
	roles := s.roles(set)
	for k, i := range set {
		out[k] = Choice{Candidate: s.places[i], Worth: worth[k], Best: sum(roles[k].best), Only: sum(roles[k].only), Why: s.sentence(set, k, worth[k], &roles[k])}
		if kind, part := largest(roles[k].lost); part > 0 {
			out[k].Serves = kindName(kind)
		}
	}
	return out
}

// Story is what a set does as a whole, and what each of its holes brings to it.
type Story struct {
	Each []Choice
	Seen float64 // share of the news, from 0 to 1, that some hole sees with a score of [SeenFrom] or more
	// Misses is the kind of moments of which most news is seen by no hole:
	// "rush at end A"; "" where every moment is seen.
	Misses string
}

// story tells what a set does.
func (s *Study) story(set []int) Story {
	var missed [kinds]float64
	s.solver.views(set, func(m int, one, _ float32) {
		if float64(one) < SeenFrom {
			missed[s.kinds[m]] += s.solver.weight[m]
		}
	})
	out := Story{Each: s.each(set), Seen: 1 - sum(missed)}
	if kind, part := largest(missed); part > 0 {
		out.Misses = kindName(kind)
	}
	return out
}

func sum(list [kinds]float64) (total float64) {
	for _, x := range list {
		total += x
	}
	return total
}

func (s *Study) roles(set []int) []role {
	out := make([]role, len(set))
	for k := range out {
		out[k].next = make([]float64, len(set))
	}
	for _, c := range s.solver.crewsOf(set) {
		var at []int // in the set, of who works
		for k, i := range set {
			if slices.Contains(c.members, i) {
				at = append(at, k)
			}
		}
		for m := range s.problem.Moments {
			if c.works(&s.problem, m) {
				s.play(out, set, at, m)
			}
		}
	}
	return out
}

// play adds what one moment says of the roles of those who work in it.
func (s *Study) play(out []role, set, at []int, m int) {
	w, d := s.solver.weight[m], s.opt.Second
	a, b, c := -1, -1, -1 // best, second, third member
	var v [3]float64
	seen, last := 0, -1
	for _, k := range at {
		x := float64(s.problem.Row(set[k])[m])
		if x >= SeenFrom {
			seen, last = seen+1, k
		}
		switch {
		case a < 0 || x > v[0]:
			c, v[2], b, v[1], a, v[0] = b, v[1], a, v[0], k, x
		case b < 0 || x > v[1]:
			c, v[2], b, v[1] = b, v[1], k, x
		case c < 0 || x > v[2]:
			c, v[2] = k, x
		}
	}
	if a < 0 || v[0] <= 0 {
		return
	}
	kind := s.kinds[m]
	out[a].best[kind] += w
	out[a].lost[kind] += w * (v[0] - v[1] + d*(v[1]-v[2]))
	if b >= 0 {
		out[b].lost[kind] += w * d * (v[1] - v[2])
		if v[1] > 0 {
			out[a].next[b] += w
		}
	}
	if seen == 1 {
		out[last].only[kind] += w
	}
}

func kindOf(s *play.Set, m int) uint8 {
	k := 2 * uint8(s.Phase[m])
	if s.PuckX[m] > 0 || s.PuckX[m] == 0 && s.End[m] > 0 {
		k++
	}
	return k
}

func kindName(k int) string {
	end := "A"
	if k%2 == 1 {
		end = "B"
	}
	p := play.Phase(k / 2)
	if p == play.Bench {
		return "bench"
	}
	return fmt.Sprintf("%s at end %s", p, end)
}

// largest returns the kind with the most, and its part of the whole.
func largest(list [kinds]float64) (kind int, part float64) {
	total := sum(list)
	if total <= 0 {
		return 0, 0
	}
	for k, x := range list {
		if x > list[kind] {
			kind = k
		}
	}
	return kind, list[kind] / total
}

// sentence says in one sentence or two what member k is good for.
func (s *Study) sentence(set []int, k int, lost float64, r *role) say.Sentence {
	var form strings.Builder
	var args []any
	add := func(words string, more ...any) {
		form.WriteString(words)
		args = append(args, more...)
	}
	if best := sum(r.best); best > 0 {
		kind, part := largest(r.best)
		add("Best view of %s of the news, %s of that %s", percent(best), percent(part), kindName(kind))
	} else {
		add("Never the best view; it is the second view beside others")
	}
	if only := sum(r.only); only >= 0.0005 {
		kind, part := largest(r.only)
		add("; alone in seeing %s, %s of it %s", percent(only), mostly(part), kindName(kind))
	}
	if total := s.solver.Value(set); total > 0 && lost > 0 && sum(r.lost) > 0 {
		kind, part := largest(r.lost)
		add(". Without it %s of the value is lost, %s of it %s", percent(lost/total), mostly(part), kindName(kind))
	}
	switch next := s.successors(set, r); len(next) {
	case 0:
	case 1:
		add("; the next best view is from %s", next...)
	default:
		add("; the next best views are from %s and %s", next...)
	}
	return say.Make(form.String()+".", args...)
}

// mostly says in words how much of a whole its largest part is.
func mostly(part float64) string {
	switch {
	case part > 0.9995:
		return "all"
	case part > 0.5:
		return "most"
	}
	return percent(part)
}

// successors returns the one or two members that would be the best view instead.
func (s *Study) successors(set []int, r *role) []any {
	order := make([]int, 0, len(set))
	for k, x := range r.next {
		if x > 0 {
			order = append(order, k)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(r.next[b], r.next[a]) })
	var out []any
	for _, k := range order[:min(2, len(order))] {
		out = append(out, spoken{s.places[set[k]]})
	}
	return out
}

func percent(x float64) string {
	if x >= 0.0995 {
		return fmt.Sprintf("%.0f %%", 100*x)
	}
	return fmt.Sprintf("%.1f %%", 100*x)
}
