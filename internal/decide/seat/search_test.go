package seat

import (
	"context"
	"math/rand/v2"
	"testing"
)

// At any prices of 0 or more the bound is no less than what the best seating has.
func TestBoundHoldsAtAnyPrices(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 2))
	for range 60 {
		l := plain(drawPoints(rng, 2+rng.IntN(8), 3*(1+rng.IntN(5))), 3, grain*rng.Int64N(300))
		f := l.solve(context.Background())
		if f.proved == NotProved || l.total(f.all) != f.value {
			t.Fatalf("%s, %d points told, %d counted", f.proved, f.value, l.total(f.all))
		}
		prices := make([]int64, len(f.prices))
		for range 20 {
			for k := range prices {
				prices[k] = rng.Int64N(1000 * grain)
			}
			if b := l.ceiling(prices); b < f.value {
				t.Fatalf("a bound of %d below %d", b, f.value)
			}
		}
		if f.proved == ByPrices && l.ceiling(f.prices) != f.bound {
			t.Errorf("the prices told give %d, not %d", l.ceiling(f.prices), f.bound)
		}
	}
}

// No seat is held twice, whatever the way to it.
func TestSeatsAreHeldOnce(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	for range 60 {
		l := plain(drawPoints(rng, 2+rng.IntN(12), 3*(1+rng.IntN(8))), 3, grain*rng.Int64N(300))
		held := map[int]bool{}
		for i, w := range l.solve(context.Background()).all {
			for p, h := range w {
				if at := p*l.holes + int(h); h != none && (held[at] || l.points[i][at] == barred) {
					t.Fatalf("hole %d in period %d is held twice, or barred", h, p)
				} else if h != none {
					held[at] = true
				}
			}
		}
	}
}
