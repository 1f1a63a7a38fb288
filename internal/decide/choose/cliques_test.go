package choose

import (
	"math/rand/v2"
	"testing"
)

func TestCliquesCoverEveryPair(t *testing.T) {
	met := 0
	for seed := range uint64(40) {
		rng := rand.New(rand.NewPCG(seed, 3))
		n := 2 + rng.IntN(12)
		p := newPairs(n)
		for i := range n {
			for j := i + 1; j < n; j++ {
				if rng.IntN(3) > 0 {
					p.add(i, j)
				}
			}
		}
		covered := make([]bool, n*n)
		for _, c := range p.cliques(t.Context()) {
			for a, i := range c {
				for _, j := range c[a+1:] {
					if !p.apart(i, j) {
						t.Fatalf("seed %d: group %v holds the allowed pair %d, %d", seed, c, i, j)
					}
					covered[i*n+j] = true
				}
			}
		}
		for i := range n {
			for j := i + 1; j < n; j++ {
				if p.apart(i, j) != covered[i*n+j] {
					t.Fatalf("seed %d: pair %d, %d", seed, i, j)
				}
				met++
			}
		}
	}
	if met < 500 {
		t.Fatal("too few pairs")
	}
}

func TestACliqueIsOneGroup(t *testing.T) {
	p := newPairs(6)
	for i := range 5 {
		for j := i + 1; j < 5; j++ {
			p.add(i, j)
		}
	}
	if got := p.cliques(t.Context()); len(got) != 1 || len(got[0]) != 5 {
		t.Errorf("groups %v, want one of five", got)
	}
}
