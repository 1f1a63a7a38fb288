package chart

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestTicksAreRoundAndCover(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(-1e6, 1e6).Draw(t, "lo")
		span := math.Pow(10, rapid.Float64Range(-3, 6).Draw(t, "span"))
		n := rapid.IntRange(2, 12).Draw(t, "n")
		got := ticks(lo, lo+span, n)
		if len(got) < 2 || len(got) > n+3 {
			t.Fatalf("%d ticks, asked for about %d: %v", len(got), n, got)
		}
		step := got[1] - got[0]
		if got[0] > lo+1e-6*step || got[len(got)-1] < lo+span-1e-6*step {
			t.Fatalf("%v do not cover %g to %g", got, lo, lo+span)
		}
		m := step / math.Pow(10, math.Floor(math.Log10(step)+1e-4))
		// The step is a difference of ticks and carries their rounding.
		if math.Abs(m-1) > 1e-3 && math.Abs(m-2) > 1e-3 && math.Abs(m-5) > 1e-3 {
			t.Fatalf("step %g", step)
		}
	})
}

func TestTickNames(t *testing.T) {
	for _, c := range []struct {
		v, step float64
		want    string
	}{{0.30000000000000004, 0.1, "0.3"}, {math.Copysign(0, -1), 1, "0"}, {25, 5, "25"}, {1.25, 0.05, "1.25"}, {1500, 500, "1500"}} {
		if got := tickName(c.v, c.step); got != c.want {
			t.Errorf("tickName(%g, %g) = %s, want %s", c.v, c.step, got, c.want)
		}
	}
}

// Values that differ by rounding alone make no axis of their own: the first of
// these ranges kept the loop over the ticks without end, the second named them
// with 83 decimals.
func TestTicksOfHardlyAnyExtent(t *testing.T) {
	for _, c := range [][2]float64{{0.3, math.Nextafter(0.3, 1)}, {0, 1.3177747429038154e-82}, {1e5, math.Nextafter(1e5, 1e6)}, {1e17, 1e17}, {-1e17, -1e17 + 16}} {
		got := ticks(c[0], c[1], 8)
		if n := len(got); n < 2 || n > 12 || got[0] > c[0] || got[n-1] < c[1] {
			t.Fatalf("%g to %g: %v", c[0], c[1], got)
		}
		if name := tickName(got[0], got[1]-got[0]); len(name) > 22 {
			t.Errorf("%g to %g: tick %s", c[0], c[1], name)
		}
	}
	if got := stepTicks(1e17, 1e17+64, 16); len(got) != 5 {
		t.Errorf("%v", got)
	}
	if got := (Axis{Step: 5}).ticks([2]float64{10, 10}, 6); len(got) < 2 {
		t.Errorf("a step and no extent: %v", got)
	}
}

func TestTicksOfNoExtent(t *testing.T) {
	if got := ticks(3, 3, 5); len(got) < 2 || got[0] > 3 || got[len(got)-1] < 3 {
		t.Errorf("%v", got)
	}
	if got := stepTicks(0, 90, 15); len(got) != 7 || got[6] != 90 {
		t.Errorf("%v", got)
	}
}

func TestRoundValuesLieBetween(t *testing.T) {
	for _, c := range []struct{ low, high float64 }{{953, 1173}, {1338, 1511}, {0, 1}, {99.9, 100.1}} {
		got := RoundValues(c.low, c.high, 4)
		if len(got) < 4 || got[0] <= c.low || got[len(got)-1] >= c.high {
			t.Errorf("between %g and %g: %v", c.low, c.high, got)
		}
	}
	if got := RoundValues(7, 7, 4); got != nil {
		t.Errorf("between 7 and 7: %v", got)
	}
}
