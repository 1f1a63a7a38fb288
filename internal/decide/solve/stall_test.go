package solve

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"
)

// Relaxations that stay unsolved, or whose solutions contradict the boxes by
// rounding, are split down to single sets, and the splitting ends.
func TestAnySolutionIsSplitToSingleSets(t *testing.T) {
	const mostNodes = 1_000_000
	for seed := range uint64(24) {
		p := instance(seed, 7, 20)
		rng := rand.New(rand.NewPCG(seed, 3))
		want, value := brute(&p)
		s := solver(t, p)
		h := newHunt(s, &s.program, nil)
		sets, looked := 0, 0
		h.open = nodes{{bound: math.Inf(1)}}
		y := make([]float64, h.n)
		for ; len(h.open) > 0; looked++ {
			if looked > mostNodes {
				t.Fatalf("seed %d: no end after %d nodes", seed, looked)
			}
			nd := h.open[len(h.open)-1]
			h.open = h.open[:len(h.open)-1]
			if !h.narrow(nd.branch) {
				continue
			}
			if h.firstOpen() < 0 {
				sets++
			}
			for i := range y {
				y[i] = rng.Float64()
			}
			h.split(nd, y, seed%2 == 0)
		}
		if sets == 0 || want == nil != (h.best == nil) || want != nil && math.Abs(h.value-value) > Tolerance {
			t.Errorf("seed %d: %d single sets, best %v of value %.9f; brute force %v, %.9f", seed, sets, h.best, h.value, want, value)
		}
	}
}

// A tableau spoilt by rounding is made anew: its solution would break the
// stated rows, no branch would mend it, and the search would never end.
func TestASpoiltTableauIsMadeAnew(t *testing.T) {
	spoilt := 0
	for seed := range uint64(12) {
		p := instance(seed, 9, 30)
		_, value := brute(&p)
		s := solver(t, p)
		h := newHunt(s, &s.program, nil)
		for range 6 {
			if h.relax(context.Background()) != solved {
				break
			}
			y := make([]float64, h.n)
			h.read(y)
			h.draw(y, y)
		}
		for r := range h.lp.t {
			for j := range h.lp.t[r] {
				h.lp.t[r][j] *= 1 + 0.3*float64((r+2*j)%3)
			}
			h.lp.rhs[r] *= 1.2
		}
		if h.relax(context.Background()) != solved {
			continue
		}
		spoilt++
		if !h.lp.sound() {
			t.Errorf("seed %d: a solution that breaks the stated rows is called one", seed)
		}
		if bound := h.proved(); bound < value-Tolerance {
			t.Errorf("seed %d: bound %.9f below the best set's %.9f", seed, bound, value)
		}
	}
	if spoilt < 6 {
		t.Errorf("only %d tableaus spoilt", spoilt)
	}
}
