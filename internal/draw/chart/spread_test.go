package chart

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func drawSlots(t *rapid.T) []slot {
	n := rapid.IntRange(1, 9).Draw(t, "n")
	out := make([]slot, n)
	for i := range out {
		out[i] = slot{rapid.Float64Range(0, 200).Draw(t, "want"), rapid.Float64Range(0.5, 12).Draw(t, "half")}
	}
	return out
}

// On a line long enough the labels keep their gap and their order and stay within it.
func TestSpreadKeepsLabelsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slots := drawSlots(t)
		const gap, lo, hi = 1.5, 0, 400
		got := spread(slots, gap, lo, hi)
		order := risingOrder(slots)
		for k, i := range order {
			if got[i]-slots[i].half < lo-1e-9 || got[i]+slots[i].half > hi+1e-9 {
				t.Fatalf("label %d at %g leaves the line", i, got[i])
			}
			if k == 0 {
				continue
			}
			if j := order[k-1]; got[i]-slots[i].half-(got[j]+slots[j].half) < gap-1e-9 {
				t.Fatalf("labels %d at %g and %d at %g stand closer than %g", j, got[j], i, got[i], gap)
			}
		}
	})
}

func risingOrder(slots []slot) []int {
	order := make([]int, len(slots))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return int(math.Copysign(1, slots[a].want-slots[b].want)) * b2i(slots[a].want != slots[b].want)
	})
	return order
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// No other lawful places have a smaller sum of squared moves: small lawful
// changes of the answer never lower it.
func TestSpreadMovesLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slots := drawSlots(t)
		const gap, lo, hi = 1.5, -1e6, 1e6
		got := spread(slots, gap, lo, hi)
		best := moves(slots, got)
		order := risingOrder(slots)
		// Shift any run of neighbours a little: lawful when it does not meet the next.
		for a := range order {
			for b := a; b < len(order); b++ {
				for _, d := range []float64{0.01, -0.01, 1, -1} {
					try := slices.Clone(got)
					for _, i := range order[a : b+1] {
						try[i] += d
					}
					if lawful(slots, try, order, gap) && moves(slots, try) < best-1e-9 {
						t.Fatalf("moving labels %d to %d by %g is better: %g, have %g", a, b, d, moves(slots, try), best)
					}
				}
			}
		}
	})
}

func moves(slots []slot, at []float64) float64 {
	s := 0.0
	for i := range slots {
		s += (at[i] - slots[i].want) * (at[i] - slots[i].want)
	}
	return s
}

func lawful(slots []slot, at []float64, order []int, gap float64) bool {
	for k := 1; k < len(order); k++ {
		i, j := order[k-1], order[k]
		if at[j]-slots[j].half-at[i]-slots[i].half < gap-1e-9 {
			return false
		}
	}
	return true
}

func TestSpreadOnAShortLine(t *testing.T) {
	got := spread([]slot{{5, 4}, {5, 4}, {5, 4}}, 2, 0, 12)
	if !slices.IsSorted(got) || got[0] != 4 || got[2] != 8 {
		t.Errorf("%v, want 4, 6, 8", got)
	}
	if got := spread(nil, 1, 0, 1); len(got) != 0 {
		t.Errorf("%v from nothing", got)
	}
}
