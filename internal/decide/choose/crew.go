package choose

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/survey/play"
)

// crews is the worth of a set of which only so many members are worked at once, one
// lens a person. In each phase of play the set is worth what its best crew is worth:
//
//	value(S) = sum over phases f of max { value_f(T) : T within S, at most K members }
//
// Each phase is one part of the worth. Its bounds are those of choosing a crew out
// of the set, with the crew's own columns projected away (see [shift.cut]).
type crews struct{ shifts []*shift }

// shift is one phase: its moments, and the crews that were found for sets so far.
type shift struct {
	phase   uint8
	rank    *ranking // of the phase's moments alone
	share   float64  // of the news that the phase is
	most    int      // members of a crew
	alone   []float64
	relaxed *solve.Solver // of crews out of all candidates
	known   map[string][]int
}

// newCrews splits a problem by phase.
func newCrews(ctx context.Context, p *Problem) (*crews, error) {
	out, weight := &crews{}, p.shares()
	for f := range int(slices.Max(p.Phase)) + 1 {
		q := p.inPhase(uint8(f))
		sh := &shift{phase: uint8(f), most: p.People, known: map[string][]int{}}
		for m, w := range weight {
			if int(p.Phase[m]) == f {
				sh.share += w
			}
		}
		if sh.share == 0 {
			continue
		}
		sh.rank = newRanking(ctx, &q)
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		sh.alone = sh.rank.Gains(nil, func(int) bool { return true })
		var err error
		if sh.relaxed, err = solve.New(q.program(sh.rank)); err != nil {
			return nil, err
		}
		out.shifts = append(out.shifts, sh)
	}
	return out, nil
}

// inPhase is the problem of choosing one phase's crew out of all candidates.
func (p *Problem) inPhase(f uint8) Problem {
	q := Problem{Second: p.Second, Count: p.People}
	var moments []int
	for m, g := range p.Phase {
		if g == f {
			moments = append(moments, m)
			q.Weight = append(q.Weight, p.Weight[m])
		}
	}
	q.Moments = len(moments)
	q.Score = make([]float32, 0, p.Candidates()*len(moments))
	for i := range p.Candidates() {
		row := p.Row(i)
		for _, m := range moments {
			q.Score = append(q.Score, row[m])
		}
	}
	return q
}

// Of returns the value of a set, without unit.
func (c *crews) Of(set []int) (sum float64) {
	for _, v := range c.each(func(sh *shift) float64 { return sh.share * sh.rank.Of(sh.crew(set, sh.most)) }) {
		sum += v
	}
	return sum
}

// each asks every shift, on all cores.
func (c *crews) each(ask func(sh *shift) float64) []float64 {
	out := make([]float64, len(c.shifts))
	cores.Each(len(out), func(k int) { out[k] = ask(c.shifts[k]) })
	return out
}

// crew is who of a set works in one phase of play.
type crew struct {
	phase   uint8
	all     bool // every phase
	members []int
}

func (c crew) works(p *Problem, m int) bool { return c.all || p.Phase[m] == c.phase }

// crewsOf returns who of a set works when: all of it in every phase where nobody
// counts the people.
func (s *Solver) crewsOf(set []int) []crew {
	if s.crews == nil {
		return []crew{{all: true, members: set}}
	}
	var out []crew
	for _, sh := range s.crews.shifts {
		out = append(out, crew{phase: sh.phase, members: sh.crew(set, sh.most)})
	}
	return out
}

// Crew is who of a set works in one phase of play.
type Crew struct {
	Phase play.Phase
	Share float64 // of the news that the phase is, from 0 to 1
	Value float64 // that the crew adds to the set's value, without unit
	Holes []Candidate
}

// crews names who of a set works when; none where nobody counts the people.
func (s *Study) crews(set []int) (out []Crew) {
	if s.solver.crews == nil {
		return nil
	}
	for _, sh := range s.solver.crews.shifts {
		members := sh.crew(set, sh.most)
		out = append(out, Crew{play.Phase(sh.phase), sh.share, sh.share * sh.rank.Of(members), s.pick(members)})
	}
	return out
}

// Spans returns the most that each phase can be worth.
func (c *crews) Spans() []solve.Span {
	out := make([]solve.Span, len(c.shifts))
	for k, sh := range c.shifts {
		for _, s := range sh.rank.Spans() {
			out[k].Most += sh.share * s.Most
		}
	}
	return out
}

// Cuts returns for each phase a cut on its best crew.
func (c *crews) Cuts(y []float64) []solve.Cut {
	var set []int
	whole := true
	for i, v := range y {
		if v == 1 {
			set = append(set, i)
		}
		whole = whole && (v == 0 || v == 1)
	}
	out := make([]solve.Cut, len(c.shifts))
	cores.Each(len(out), func(k int) {
		sh := c.shifts[k]
		cut := sh.relaxed.Mix(y)
		if whole {
			if exact := sh.cut(set); exact.At(y) < cut.At(y)-solve.Tolerance/float64(8*len(c.shifts)) {
				cut = exact
			}
		}
		cut.Part, cut.Base = k, cut.Base*sh.share
		for i := range cut.Slope {
			cut.Slope[i] *= sh.share
		}
		out[k] = cut
	})
	return out
}

// cut returns a bound on the worth of every set's best crew in this phase that is
// met at one set. With v_k(S) the worth of the best k of S, and a the worth of a
// candidate alone,
//
//	v_K(S + R) <= v_(K-r)(S) + sum of a_i over r of R <= v_K(S) + sum over R of max(0, a_i - g),
//	g = least over r = 1 .. K of (v_K(S) - v_(K-r)(S)) / r
//
// since the best crew of S and R takes r of R and K - r of S, and the worth of views
// is submodular. It is needed where a crew of whole members is worth less than a mix.
func (sh *shift) cut(set []int) solve.Cut {
	best := func(k int) float64 { return sh.rank.Of(sh.crew(set, k)) }
	all, least := best(sh.most), math.Inf(1)
	for r := 1; r <= sh.most; r++ {
		least = min(least, (all-best(sh.most-r))/float64(r))
	}
	out := solve.Cut{Base: all, Slope: make([]float64, len(sh.alone))}
	for i, a := range sh.alone {
		if _, in := slices.BinarySearch(set, i); !in {
			out.Slope[i] = max(0, a-least)
		}
	}
	return out
}

// Gains returns for each candidate at least what it adds to a set's value: what it
// brings beside the crews, or in place of one of their members; without unit.
func (c *crews) Gains(set []int, may func(i int) bool) []float64 {
	n := len(c.shifts[0].alone)
	all := make([][]float64, len(c.shifts))
	cores.Each(len(all), func(k int) { all[k] = c.shifts[k].gains(set) })
	out := make([]float64, n)
	for i := range out {
		if !may(i) {
			out[i] = math.Inf(-1)
			continue
		}
		for k, sh := range c.shifts {
			out[i] += sh.share * all[k][i]
		}
	}
	return out
}

func (sh *shift) gains(set []int) []float64 {
	any := func(int) bool { return true }
	crew := sh.crew(set, sh.most)
	if len(crew) < sh.most {
		return sh.rank.Gains(crew, any)
	}
	out := make([]float64, len(sh.alone))
	now := sh.rank.Of(crew)
	for k := range crew {
		rest := without(crew, k)
		lost := now - sh.rank.Of(rest)
		for i, g := range sh.rank.Gains(rest, any) {
			out[i] = max(out[i], g-lost)
		}
	}
	return out
}

// mostKnown bounds the crews that a shift remembers.
const mostKnown = 20_000

// crew returns the best so many of a set, ascending: found, and proved, by the
// search that finds sets.
func (sh *shift) crew(set []int, most int) []int {
	switch {
	case len(set) <= most:
		return set
	case most == 0:
		return nil
	case most == 1:
		return []int{slices.MaxFunc(set, func(a, b int) int { return cmp.Compare(sh.alone[a], sh.alone[b]) })}
	}
	key := fmt.Sprint(most, set)
	if crew, ok := sh.known[key]; ok {
		return crew
	}
	q := sh.rank.problem
	small := Problem{Moments: q.Moments, Weight: q.Weight, Second: q.Second, Count: most}
	for _, i := range set {
		small.Score = append(small.Score, q.Row(i)...)
	}
	var crew []int
	if s, err := NewSolver(context.Background(), small); err == nil {
		for _, k := range s.Solve(context.Background(), 0, nil).Set {
			crew = append(crew, set[k])
		}
	}
	if len(sh.known) > mostKnown {
		clear(sh.known)
	}
	sh.known[key] = crew
	return crew
}
