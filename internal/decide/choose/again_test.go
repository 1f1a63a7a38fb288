package choose

import (
	"context"
	"math"
	"slices"
	"testing"

	"example.org/rinkpane/internal/decide/solve"
)

// Next best sets by trying all: the best that leaves a place of every set
// before it unused.
func TestAlternativesMatchBruteForce(t *testing.T) {
	compared := 0
	for seed := range uint64(25) {
		p := instance(seed, 10, 40)
		p.Count, p.Exact, p.In = 3, true, nil
		class := make([]int, 10)
		for i := range class {
			class[i] = i / 2
		}
		class[9] = -1
		for i := 0; i < 8; i += 2 { // a place holds one
			p.Groups = append(p.Groups, Group{Rule: "place", Members: []int{i, i + 1}, Most: 1})
		}
		s := solver(t, p)
		best := s.Solve(context.Background(), 0, nil)
		if best.Status == solve.Infeasible {
			continue
		}
		got, ok := s.Alternatives(context.Background(), best, 3, class, nil)
		if !ok {
			t.Fatal("stopped without a limit")
		}
		sets := [][]int{best.Set}
		q := p
		for _, alt := range got {
			last := sets[len(sets)-1]
			var members []int
			for i, c := range class {
				if c >= 0 && slices.ContainsFunc(last, func(k int) bool { return class[k] == c }) {
					members = append(members, i)
				}
			}
			q.Groups = append(slices.Clone(q.Groups), Group{Members: members, Most: solve.Shared(members, last) - 1})
			want, value := brute(&q)
			if math.Abs(alt.Value-value) > solve.Tolerance {
				t.Fatalf("seed %d: alternative %v worth %.9f, brute force %v %.9f", seed, alt.Set, alt.Value, want, value)
			}
			sets = append(sets, alt.Set)
			compared++
		}
		for k := 1; k < len(got); k++ {
			if got[k].Value > got[k-1].Value+solve.Tolerance {
				t.Fatalf("seed %d: alternatives out of order", seed)
			}
		}
	}
	if compared < 20 {
		t.Errorf("only %d alternatives compared", compared)
	}
}

func TestLiftingARuleNeverCosts(t *testing.T) {
	lifted := 0
	for seed := range uint64(30) {
		p := instance(seed, 14, 80)
		p.In = nil
		p.Exact = false
		s := solver(t, p)
		best := s.Solve(context.Background(), 0, nil)
		for _, rule := range []string{"group", "pair", "forbid"} {
			free := s.WithoutGroups(context.Background(), func(g Group) bool { return g.Rule == rule }, best.Set, nil)
			if free.Value < best.Value-solve.Tolerance {
				t.Fatalf("seed %d: %.9f without rule %s, %.9f with it", seed, free.Value, rule, best.Value)
			}
			if free.Value > best.Value+solve.Tolerance {
				lifted++
			}
		}
		if len(best.Set) > 0 {
			less := s.Without(context.Background(), best.Set[:1], nil, nil)
			if less.Value > best.Value+solve.Tolerance || slices.Contains(less.Set, best.Set[0]) {
				t.Fatalf("seed %d: without a candidate %v %.9f", seed, less.Set, less.Value)
			}
		}
		again := s.Solve(context.Background(), 0, nil)
		if math.Abs(again.Value-best.Value) > solve.Tolerance {
			t.Fatalf("seed %d: %.9f the second time, %.9f the first", seed, again.Value, best.Value)
		}
	}
	if lifted == 0 {
		t.Error("no rule ever had a price")
	}
}

func TestWorth(t *testing.T) {
	p := Problem{
		// three candidates, two moments of equal weight
		Score: []float32{1, 0, 0.5, 0.5, 0, 1}, Moments: 2, Weight: []float32{1, 1}, Second: 0.5, Count: 3,
	}
	got := solver(t, p).Worth([]int{0, 1, 2})
	// Value of all: (1 + .5*.5 + 1 + .5*.5)/2 = 1.25. Without 0: (.5 + 0 + 1 + .25)/2 = .875.
	// Without 1: (1 + 1)/2 = 1.
	for k, want := range []float64{0.375, 0.25, 0.375} {
		if math.Abs(got[k]-want) > 1e-12 {
			t.Errorf("worth of %d: %g, want %g", k, got[k], want)
		}
	}
}

func TestGainsAreDifferencesOfValue(t *testing.T) {
	compared := 0
	for seed := range uint64(10) {
		p := instance(seed, 9, 60)
		r := newRanking(context.Background(), &p)
		for _, set := range [][]int{nil, {2}, {1, 5}, {0, 3, 8}} {
			for i, g := range r.Gains(set, func(i int) bool { return !slices.Contains(set, i) }) {
				if slices.Contains(set, i) {
					if !math.IsInf(g, -1) {
						t.Fatalf("a member gains %g", g)
					}
					continue
				}
				if want := r.Of(append(slices.Clone(set), i)) - r.Of(set); math.Abs(g-want) > 1e-9 {
					t.Fatalf("seed %d: %d gains %g on %v, want %g", seed, i, g, set, want)
				}
				compared++
			}
		}
	}
	if compared < 250 {
		t.Fatal("too few compared")
	}
}
