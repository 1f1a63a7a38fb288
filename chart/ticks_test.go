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

func TestTicksOfNoExtent(t *testing.T) {
	if got := ticks(3, 3, 5); len(got) < 2 || got[0] > 3 || got[len(got)-1] < 3 {
		t.Errorf("%v", got)
	}
	if got := stepTicks(0, 90, 15); len(got) != 7 || got[6] != 90 {
		t.Errorf("%v", got)
	}
}
