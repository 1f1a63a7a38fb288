package choose

import (
	"errors"
	"fmt"
	"math"

	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/say"
)

// Problem is the choice laid bare: candidates, moments, a score for each pair,
// and caps on groups of candidates. Every rule on holes becomes a group: a
// pair that must not stand together is a group of two of which at most one may
// be chosen, a place that a rule forbids a group of which none may.
type Problem struct {
	// Score holds candidate i's score of moment m at i*Moments + m, in [0, 1],
	// without unit.
	Score   []float32
	Moments int
	// Weight is each moment's share of the value, at least 0, without unit. The
	// solver scales it to a sum of 1.
	Weight []float32
	// Second is the worth of a second view of a moment as a share of a first
	// view's, from 0 up to but not including 1.
	Second float64
	// People is how many of a set's members are worked at once, one lens a person; 0
	// for all. Phase is each moment's phase of play: in each the best crew of the set
	// is at work.
	People int
	Phase  []uint8

	Groups []Group
	Caps   []Cap
	In     []int // candidates that must be chosen
	// Count is how many are chosen: exactly that many when Exact, else at most.
	Count int
	Exact bool
}

// Cap holds what a set costs within a budget.
type Cap struct {
	solve.Cap              // by candidate
	Label     say.Sentence // the cap in words
}

// Group caps how many of its members are chosen.
type Group struct {
	Rule    string // the constraint it belongs to, for messages
	Name    string // the group within it
	Members []int  // candidates, ascending
	Most    int
	Label   say.Sentence // the constraint in words; zero makes them of the fields above
}

// countLabel returns the count in words.
func (p *Problem) countLabel() say.Sentence {
	if p.Exact {
		return say.Make("choose exactly %d", p.Count)
	}
	return say.Make("choose at most %d", p.Count)
}

// label returns the constraint in words.
func (g Group) label() say.Sentence {
	switch {
	case !g.Label.IsZero():
		return g.Label
	case g.Most == 0:
		return say.Make("%s bars %s", g.Rule, g.Name)
	}
	return say.Make("%s: at most %d on %s", g.Rule, g.Most, g.Name)
}

// Candidates returns how many candidates there are.
func (p *Problem) Candidates() int {
	if p.Moments == 0 {
		return 0
	}
	return len(p.Score) / p.Moments
}

// Row returns candidate i's scores, one for each moment, each in [0, 1],
// without unit.
func (p *Problem) Row(i int) []float32 { return p.Score[i*p.Moments : (i+1)*p.Moments] }

// maxCandidates is what the ranking's compact index can name.
const maxCandidates = 1 << 15

// maxScores is how many scores a study may hold: 10 bytes each with the ranking.
const maxScores = 400_000_000

// Check reports what is wrong with the problem, if anything.
func (p *Problem) Check() error {
	n := p.Candidates()
	switch {
	case p.Moments < 1 || len(p.Score) != n*p.Moments:
		return fmt.Errorf("%d scores do not make whole rows of %d moments", len(p.Score), p.Moments)
	case n > maxCandidates:
		return fmt.Errorf("%d candidates: at most %d; take a larger step", n, maxCandidates)
	case len(p.Weight) != p.Moments:
		return fmt.Errorf("%d weights for %d moments", len(p.Weight), p.Moments)
	case !(p.Second >= 0 && p.Second < 1):
		return fmt.Errorf("second view: %g: write a share from 0 up to but not including 1", p.Second)
	case p.People < 0 || p.People > 0 && len(p.Phase) != p.Moments:
		return fmt.Errorf("people: %d with %d phases for %d moments", p.People, len(p.Phase), p.Moments)
	case p.Count < 0:
		return fmt.Errorf("count: %d: write a whole number from 0", p.Count)
	}
	var sum float64
	for _, w := range p.Weight {
		if !(w >= 0) || math.IsInf(float64(w), 0) {
			return fmt.Errorf("weight %g: must be at least 0", w)
		}
		sum += float64(w)
	}
	if sum == 0 {
		return errors.New("every moment weighs 0")
	}
	for _, c := range p.Score {
		if !(c >= 0 && c <= 1) {
			return fmt.Errorf("score %g: must lie in [0, 1]", c)
		}
	}
	return nil
}

// shares returns the moments' weights, scaled to a sum of 1.
func (p *Problem) shares() []float64 {
	var sum float64
	for _, w := range p.Weight {
		sum += float64(w)
	}
	out := make([]float64, len(p.Weight))
	for m, w := range p.Weight {
		out[m] = float64(w) / sum
	}
	return out
}

// program states the problem for the solver: row 0 is the count, then a row for
// each group.
func (p *Problem) program(worth solve.Worth) solve.Program {
	all := make([]int, p.Candidates())
	for i := range all {
		all[i] = i
	}
	count := solve.Row{Columns: all, Most: p.Count}
	if p.Exact {
		count.Least = p.Count
	}
	rows := []solve.Row{count}
	for _, g := range p.Groups {
		rows = append(rows, solve.Row{Columns: g.Members, Most: g.Most})
	}
	out := solve.Program{Columns: p.Candidates(), Rows: rows, In: p.In, Worth: worth}
	for _, c := range p.Caps {
		out.Caps = append(out.Caps, c.Cap)
	}
	return out
}

// Allows reports whether a set of candidates, ascending, keeps every
// constraint of the problem.
func (p *Problem) Allows(set []int) bool {
	program := p.program(nil)
	return program.Allows(set)
}
