package chance

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The first row is the example of SciPy's documentation, binomtest(3, n=15, p=0.1,
// alternative="greater"); the others were summed exactly by Python's fractions.
func TestAtLeastAgainstSciPyAndFractions(t *testing.T) {
	for _, c := range []struct {
		k, n    int
		p, want float64
	}{
		{3, 15, 0.1, 0.18406106910639114},
		{7, 12, 1. / 8, 0.00021214390289969742},
		{4, 9, 2. / 7, 0.2383735362244074},
		{20, 40, 1. / 3, 0.02144073352978705},
		{1, 1, .25, .25}, {0, 5, .3, 1}, {-1, 5, .3, 1}, {6, 5, .3, 0}, {2, 2, 1, 1}, {1, 2, 0, 0},
	} {
		if got := AtLeast(c.k, c.n, c.p); math.Abs(got-c.want) > 1e-14 {
			t.Errorf("P(K >= %d | %d, %g) = %.17g, want %.17g", c.k, c.n, c.p, got, c.want)
		}
	}
	if !math.IsNaN(AtLeast(1, 2, 1.5)) {
		t.Error("a probability of 1.5")
	}
}

// Holm's procedure on its usual textbook example (p = 0.01, 0.04, 0.03, 0.005: the
// fourth and first are rejected at 5 %, the others are not), and on the five values
// of the help page of R's Dmisc::holm beside p.adjust, multiplied by hand.
func TestHolmOnWorkedExamples(t *testing.T) {
	for _, c := range []struct{ p, want []float64 }{
		{[]float64{.01, .04, .03, .005}, []float64{.03, .06, .06, .02}},
		{[]float64{.042, .001, .031, .014, .007}, []float64{.062, .005, .062, .042, .028}},
		{[]float64{.5, .6}, []float64{1, 1}}, {[]float64{.2}, []float64{.2}}, {nil, nil},
	} {
		got := Holm(c.p)
		for i := range c.want {
			if math.Abs(got[i]-c.want[i]) > 1e-15 {
				t.Errorf("Holm(%v) = %v, want %v", c.p, got, c.want)
				break
			}
		}
	}
}

// Adjusted is never less than given nor more than Bonferroni's, and keeps the order.
func TestHolmLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SliceOfN(rapid.Float64Range(0, 1), 1, 12).Draw(t, "p")
		got := Holm(p)
		for i := range p {
			if got[i] < p[i] || got[i] > min(1, float64(len(p))*p[i]) {
				t.Fatalf("%g became %g of %d", p[i], got[i], len(p))
			}
			for j := range p {
				if p[i] < p[j] && got[i] > got[j] {
					t.Fatalf("%v became %v", p, got)
				}
			}
		}
	})
}
