package choose

import (
	"context"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/decide/solve"
)

// crewed is an instance of which so many members are worked at once, in three phases.
func crewed(seed uint64, n, moments, people int) Problem {
	p := instance(seed, n, moments)
	p.People, p.Count = people, 1+int(seed%5)
	for m := range moments {
		p.Phase = append(p.Phase, uint8(m%3*2))
	}
	return p
}

// members are the numbers below n whose bits are set.
func members(bits, n int) (set []int) {
	for i := range n {
		if bits>>i&1 == 1 {
			set = append(set, i)
		}
	}
	return set
}

// crewValue is the objective as it is written down: phase by phase the best of all
// crews of a set.
func crewValue(p *Problem, set []int) float64 {
	var sum, all float64
	for _, w := range p.Weight {
		all += float64(w)
	}
	for f := range slices.Max(p.Phase) + 1 {
		q := Problem{Score: p.Score, Moments: p.Moments, Second: p.Second, Weight: slices.Clone(p.Weight)}
		share := 0.0
		for m, g := range p.Phase {
			if g != f {
				q.Weight[m] = 0
			}
			share += float64(q.Weight[m]) / all
		}
		best := 0.0
		for bits := range 1 << len(set) {
			var crew []int
			for _, k := range members(bits, len(set)) {
				crew = append(crew, set[k])
			}
			if len(crew) <= p.People && share > 0 {
				best = max(best, plainValue(&q, crew))
			}
		}
		sum += share * best
	}
	return sum
}

// The best set, its value and its bound by trying all sets and all their crews.
func TestCrewsMatchBruteForce(t *testing.T) {
	met := map[int]int{}
	rapid.Check(t, func(t *rapid.T) {
		p := crewed(rapid.Uint64().Draw(t, "seed"), rapid.IntRange(3, 9).Draw(t, "candidates"), rapid.IntRange(3, 40).Draw(t, "moments"), rapid.IntRange(1, 4).Draw(t, "people"))
		s := solver(t, p)
		want := math.Inf(-1)
		for bits := range 1 << p.Candidates() {
			if set := members(bits, p.Candidates()); p.Allows(set) {
				v := crewValue(&p, set)
				if math.Abs(v-s.Value(set)) > solve.Tolerance {
					t.Fatalf("%v is worth %.9f, brute force %.9f", set, s.Value(set), v)
				}
				want = max(want, v)
			}
		}
		res := s.Solve(context.Background(), 0, nil)
		if math.IsInf(want, -1) {
			if res.Status != solve.Infeasible {
				t.Fatalf("status %s, but no set is allowed", res.Status)
			}
			return
		}
		if res.Status != solve.Optimal || math.Abs(res.Value-want) > 2*solve.Tolerance || !p.Allows(res.Set) {
			t.Fatalf("%s value %.9f of %v, brute force %.9f", res.Status, res.Value, res.Set, want)
		}
		met[p.People]++
	})
	if len(met) < 4 {
		t.Errorf("crews met: %v", met)
	}
}

// Every cut, at mixes and at sets, bounds every set; at a set the cuts meet its value.
func TestCrewCutsBoundEverySet(t *testing.T) {
	checked := 0
	for seed := range uint64(12) {
		p := crewed(seed, 8, 40, 1+int(seed%3))
		p.Count = 8
		s := solver(t, p)
		values := make([]float64, 1<<8)
		for bits := range values {
			values[bits] = crewValue(&p, members(bits, 8))
		}
		for at := range 6 {
			y := make([]float64, 8)
			var whole []int
			for i := range y {
				if y[i] = float64((i*(at+3)+int(seed))%5) / 4; at >= 3 {
					if y[i] = math.Round(y[i]); y[i] == 1 {
						whole = append(whole, i)
					}
				}
			}
			cuts := s.worth.Cuts(y)
			of := func(z []float64) (sum float64) {
				for k := range cuts {
					sum += cuts[k].At(z)
				}
				return sum
			}
			for bits, v := range values {
				z := make([]float64, 8)
				for _, i := range members(bits, 8) {
					z[i] = 1
				}
				if of(z) < v-1e-9 {
					t.Fatalf("seed %d: bound %.9f below the value %.9f of %b", seed, of(z), v, bits)
				}
				checked++
			}
			if v := s.Value(whole); at >= 3 && math.Abs(of(y)-v) > solve.Tolerance {
				t.Fatalf("seed %d: cuts at %v give %.9f, its value is %.9f", seed, whole, of(y), v)
			}
		}
	}
	if checked < 12*6*256 {
		t.Fatal("too few sets compared")
	}
}

// One more at work never worsens the best set, and as many as holes change nothing.
func TestMorePeopleNeverWorsen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := crewed(rapid.Uint64().Draw(t, "seed"), 10, 45, 1)
		p.In, p.Groups = nil, nil
		before := 0.0
		for ; p.People <= p.Count; p.People++ {
			res := solver(t, p).Solve(context.Background(), 0, nil)
			if res.Value < before-solve.Tolerance {
				t.Fatalf("%d at work: %.9f, one less %.9f", p.People, res.Value, before)
			}
			before = res.Value
		}
		p.People = 0
		if all := solver(t, p).Solve(context.Background(), 0, nil); math.Abs(all.Value-before) > solve.Tolerance {
			t.Fatalf("as many people as holes: %.9f, all holes worked %.9f", before, all.Value)
		}
	})
}

// A seeded instance against coinor-cbc, with a variable for each member of each crew.
func TestCrewsMatchCBC(t *testing.T) {
	for seed := range uint64(3) {
		p := crewed(2000+seed, 12, 30, 2)
		p.Count, p.Groups, p.In = 5, nil, nil
		res := solver(t, p).Solve(context.Background(), 0, nil)
		if want, ok := cbc(t, &p); !ok || math.Abs(res.Value-want) > 1e-6 {
			t.Errorf("seed %d: value %.9f, cbc %.9f", seed, res.Value, want)
		}
	}
}
