package chance

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// sumCDF adds the series e^-m m^i / i! term by term, a second way.
func sumCDF(k int, mean float64) float64 {
	term, sum := math.Exp(-mean), 0.0
	for i := 0; i <= k; i++ {
		if i > 0 {
			term *= mean / float64(i)
		}
		sum += term
	}
	return sum
}

func TestCDFIsTheSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.IntRange(0, 120).Draw(t, "k")
		mean := rapid.Float64Range(0, 80).Draw(t, "mean")
		if got, want := PoissonCDF(k, mean), sumCDF(k, mean); math.Abs(got-want) > 1e-12 {
			t.Fatalf("PoissonCDF(%d, %g) = %.15f, the series gives %.15f", k, mean, got, want)
		}
	})
}

func TestQuantileIsTheSmallestCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.Float64Range(0, 0.999999).Draw(t, "certainty")
		mean := rapid.Float64Range(0, 80).Draw(t, "mean")
		k, err := PoissonQuantile(p, mean)
		if err != nil {
			t.Fatal(err)
		}
		if PoissonCDF(k, mean) < p {
			t.Fatalf("%d spares do not last with %g", k, p)
		}
		if k > 0 && PoissonCDF(k-1, mean) >= p {
			t.Fatalf("%d spares would do for %g, got %d", k-1, p, k)
		}
	})
}

func TestGarwoodTailsAreEqual(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.IntRange(1, 500).Draw(t, "k")
		level := rapid.Float64Range(0.5, 0.999).Draw(t, "level")
		iv, err := Garwood(k, level)
		if err != nil {
			t.Fatal(err)
		}
		tail := (1 - level) / 2
		if upper := 1 - PoissonCDF(k-1, iv.Low); math.Abs(upper-tail) > 1e-9 {
			t.Fatalf("k %d level %g: upper tail at Low %g, want %g", k, level, upper, tail)
		}
		if lower := PoissonCDF(k, iv.High); math.Abs(lower-tail) > 1e-9 {
			t.Fatalf("k %d level %g: lower tail at High %g, want %g", k, level, lower, tail)
		}
	})
}

func TestRangeIsRefused(t *testing.T) {
	for name, err := range map[string]error{
		"negative count": second(Garwood(-1, 0.95)),
		"huge count":     second(Garwood(MaxCount+1, 0.95)),
		"level 1":        second(Garwood(3, 1)),
		"level nan":      second(Garwood(3, math.NaN())),
		"no exposure":    second(Rate{Events: 1}.Interval(0.95)),
		"certainty 1":    second(PoissonQuantile(1, 2)),
		"mean below 0":   second(PoissonQuantile(0.9, -1)),
		"mean nan":       second(PoissonQuantile(0.9, math.NaN())),
	} {
		if !errors.Is(err, ErrRange) {
			t.Errorf("%s: error %v, want ErrRange", name, err)
		}
	}
}

func second[T any](_ T, err error) error { return err }

func TestEdges(t *testing.T) {
	if got := PoissonCDF(-1, 3); got != 0 {
		t.Errorf("P(K <= -1) = %g", got)
	}
	if got := PoissonCDF(0, 0); got != 1 {
		t.Errorf("P(K <= 0 | mean 0) = %g", got)
	}
	if got := PoissonCDF(0, -1); !math.IsNaN(got) {
		t.Errorf("negative mean: %g", got)
	}
	if k, err := PoissonQuantile(0.99, 0); k != 0 || err != nil {
		t.Errorf("no breaks, no spares: %d, %v", k, err)
	}
	if v := (Rate{Events: 2}).Value(); !math.IsNaN(v) {
		t.Errorf("rate without exposure: %g", v)
	}
}

func ExamplePoissonQuantile() {
	// Eight drilled panes, each breaking 0.15 times a season: how many spares
	// see a season out with 95 % certainty?
	k, _ := PoissonQuantile(0.95, 8*0.15)
	fmt.Println(k)
	// Output: 3
}

func ExampleRate_Interval() {
	iv, _ := Rate{Events: 3, Exposure: 41}.Interval(0.95) // three broken panes in 41 games
	fmt.Printf("%.3f to %.3f a game\n", iv.Low, iv.High)
	// Output: 0.015 to 0.214 a game
}
