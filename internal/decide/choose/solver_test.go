package choose

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/decide/solve"
)

// instance makes a small seeded problem that looks like a rink: candidates on
// a ring, moments inside it, each seen best by the candidates near it, in steps
// so that ties occur.
func instance(seed uint64, n, moments int) Problem {
	rng := rand.New(rand.NewPCG(seed, 1))
	p := Problem{Moments: moments, Second: float64(rng.IntN(3)) * 0.3, Count: 1 + rng.IntN(4)}
	p.Score = make([]float32, n*moments)
	for m := range moments {
		p.Weight = append(p.Weight, float32(0.1+rng.Float64()))
		at := rng.Float64()
		for i := range n {
			d := math.Abs(at - float64(i)/float64(n))
			d = min(d, 1-d)
			c := max(0, 1-4*d*(0.5+rng.Float64()))
			if rng.IntN(4) == 0 {
				c = math.Round(c*4) / 4
			}
			p.Score[i*moments+m] = float32(c)
		}
	}
	for g := range rng.IntN(4) {
		var members []int
		from, size := rng.IntN(n), 2+rng.IntN(n-1)
		for i := range min(size, n) {
			members = append(members, (from+i)%n)
		}
		slices.Sort(members)
		p.Groups = append(p.Groups, Group{Rule: "group", Name: string(rune('a' + g)), Members: members, Most: rng.IntN(3)})
	}
	for range rng.IntN(4) { // pairs apart
		a, b := rng.IntN(n), rng.IntN(n)
		if a != b {
			p.Groups = append(p.Groups, Group{Rule: "pair", Members: []int{min(a, b), max(a, b)}, Most: 1})
		}
	}
	if rng.IntN(3) == 0 {
		p.In = []int{rng.IntN(n)}
	}
	if rng.IntN(3) == 0 {
		p.Groups = append(p.Groups, Group{Rule: "forbid", Members: []int{rng.IntN(n)}})
	}
	p.Exact = rng.IntN(2) == 0
	return p
}

// brute tries every set.
func brute(p *Problem) (best []int, value float64) {
	n := p.Candidates()
	value = math.Inf(-1)
	for bits := range 1 << n {
		var set []int
		for i := range n {
			if bits>>i&1 == 1 {
				set = append(set, i)
			}
		}
		if !p.Allows(set) {
			continue
		}
		if v := plainValue(p, set); v > value {
			best, value = append([]int{}, set...), v
		}
	}
	return best, value
}

// plainValue is the objective as it is written down, by sorting.
func plainValue(p *Problem, set []int) float64 {
	var sum, all float64
	for m, w := range p.Weight {
		var c []float64
		for _, i := range set {
			c = append(c, float64(p.Score[i*p.Moments+m]))
		}
		slices.Sort(c)
		slices.Reverse(c)
		c = append(c, 0, 0)
		sum += float64(w) * (c[0] + p.Second*c[1])
		all += float64(w)
	}
	return sum / all
}

func solver(t interface{ Fatal(...any) }, p Problem) *Solver {
	s, err := NewSolver(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestSolveMatchesBruteForce(t *testing.T) {
	infeasible := 0
	rapid.Check(t, func(t *rapid.T) {
		p := instance(rapid.Uint64().Draw(t, "seed"), rapid.IntRange(3, 10).Draw(t, "candidates"), rapid.IntRange(1, 40).Draw(t, "moments"))
		want, value := brute(&p)
		res := solver(t, p).Solve(context.Background(), 0, nil)
		if want == nil {
			infeasible++
			if res.Status != solve.Infeasible {
				t.Fatalf("status %s, but no set is allowed", res.Status)
			}
			return
		}
		if res.Status != solve.Optimal || math.Abs(res.Value-value) > solve.Tolerance {
			t.Fatalf("%s value %.9f of %v, brute force %.9f of %v", res.Status, res.Value, res.Set, value, want)
		}
		if !p.Allows(res.Set) || math.Abs(plainValue(&p, res.Set)-res.Value) > 1e-12 {
			t.Fatalf("set %v breaks a constraint or has another value than stated", res.Set)
		}
		if res.Bound < res.Value-1e-15 || res.Bound > res.Value+2*solve.Tolerance {
			t.Fatalf("bound %.12f beside value %.12f", res.Bound, res.Value)
		}
	})
	if infeasible == 0 {
		t.Log("no infeasible instance drawn this time")
	}
}

func TestOneMoreCandidateNeverWorsens(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := instance(rapid.Uint64().Draw(t, "seed"), 12, 60)
		p.Groups, p.In, p.Exact = nil, nil, false
		all := solver(t, p).Solve(context.Background(), 0, nil)
		p.Groups = []Group{{Rule: "forbid", Members: []int{rapid.IntRange(0, 11).Draw(t, "left out")}}}
		less := solver(t, p).Solve(context.Background(), 0, nil)
		if less.Value > all.Value+solve.Tolerance {
			t.Fatalf("%.9f without a candidate, %.9f with it", less.Value, all.Value)
		}
	})
}

func TestCutsBoundEverySet(t *testing.T) {
	checked := 0
	for seed := range uint64(20) {
		p := instance(seed, 9, 50)
		r := newRanking(context.Background(), &p)
		rng := rand.New(rand.NewPCG(seed, 2))
		y := make([]float64, 9)
		for i := range y {
			y[i] = float64(rng.IntN(5)) / 4
		}
		cuts, _ := r.cutsAt(y)
		for bits := range 1 << 9 {
			z := make([]float64, 9)
			var set []int
			for i := range z {
				if bits>>i&1 == 1 {
					z[i], set = 1, append(set, i)
				}
			}
			var bound float64
			for k := range cuts {
				bound += cuts[k].At(z)
			}
			if v := r.Of(set); bound < v-1e-9 {
				t.Fatalf("seed %d: bound %.9f below the value %.9f of %v", seed, bound, v, set)
			}
			checked++
		}
		// At a whole y the cuts meet the value.
		for i := range y {
			y[i] = math.Round(y[i])
		}
		_, values := r.cutsAt(y)
		var sum float64
		for _, v := range values {
			sum += v
		}
		var set []int
		for i, v := range y {
			if v == 1 {
				set = append(set, i)
			}
		}
		if math.Abs(sum-r.Of(set)) > 1e-9 {
			t.Fatalf("seed %d: cuts at a set give %.9f, its value is %.9f", seed, sum, r.Of(set))
		}
	}
	if checked < 20*512 {
		t.Fatal("too few sets compared")
	}
}
