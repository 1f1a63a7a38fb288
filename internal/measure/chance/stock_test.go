package chance_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/chance"
)

// Against every stock there is, on small cases: none that reaches the certainty
// weighs less, and of those that weigh the same none is surer.
func TestStockAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 4).Draw(t, "kinds")
		certainty := rapid.SampledFrom([]float64{0.5, 0.9, 0.95, 0.99}).Draw(t, "certainty")
		kinds := make([]chance.Demand, n)
		for k := range kinds {
			kinds[k] = chance.Demand{Mean: rapid.Float64Range(0, 2).Draw(t, "mean"), Weight: rapid.IntRange(1, 12).Draw(t, "weight")}
		}
		spares, reached, err := chance.Stock(certainty, kinds)
		if err != nil {
			t.Fatal(err)
		}
		weight, sure := 0, 1.0
		for k, s := range spares {
			weight += s * kinds[k].Weight
			sure *= chance.PoissonCDF(s, kinds[k].Mean)
		}
		if math.Abs(sure-reached) > 1e-12 || sure < certainty-1e-12 {
			t.Fatalf("stock %v is %.15f sure, told %.15f, asked %g", spares, sure, reached, certainty)
		}
		const most = 11
		var try func(k, w int, p float64)
		try = func(k, w int, p float64) {
			if w > weight || p < certainty-1e-12 {
				return
			}
			if k == n {
				if w < weight || p > sure+1e-12 {
					t.Fatalf("stock %v weighs %d, %.12f sure; there is one of %d, %.12f", spares, weight, sure, w, p)
				}
				return
			}
			for s := 0; s <= most; s++ {
				try(k+1, w+s*kinds[k].Weight, p*chance.PoissonCDF(s, kinds[k].Mean))
			}
		}
		try(0, 0, 1)
	})
}

// Six kinds of one pane each at 0.15 breaks: one spare of each is 0.9898^6 =
// 0.9404 sure (each alone 0.9898), too little for 95 % of all together. A second
// of the lightest, 0.9898^5 x 0.99950 = 0.9496, falls just short; a third of it,
// 40 more, does, and weighs less than a second of the next, 41.
func TestStockOfSixKindsByHand(t *testing.T) {
	kinds := []chance.Demand{{0.15, 50}, {0.15, 40}, {0.15, 41}, {0.15, 52}, {0.15, 53}, {0.15, 54}}
	spares, reached, err := chance.Stock(0.95, kinds)
	one, three := 1.15*math.Exp(-0.15), (1+0.15+0.15*0.15/2+0.15*0.15*0.15/6)*math.Exp(-0.15)
	if want := math.Pow(one, 5) * three; err != nil || fmt.Sprint(spares) != "[1 3 1 1 1 1]" || math.Abs(reached-want) > 1e-12 {
		t.Errorf("%v, %.6f sure, want %.6f, %v", spares, reached, want, err)
	}
}

func TestStockRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		certainty float64
		kinds     []chance.Demand
	}{
		"no weight":  {0.9, []chance.Demand{{0.1, 0}}},
		"no mean":    {0.9, []chance.Demand{{math.NaN(), 1}}},
		"all sure":   {1, []chance.Demand{{0.1, 1}}},
		"too finely": {0.9, []chance.Demand{{0.1, math.MaxInt32}, {0.1, math.MaxInt32}}},
	} {
		if s, _, err := chance.Stock(c.certainty, c.kinds); !errors.Is(err, chance.ErrRange) {
			t.Errorf("%s: %v, %v", name, s, err)
		}
	}
	if s, p, err := chance.Stock(0.95, nil); len(s) != 0 || p != 1 || err != nil {
		t.Errorf("nothing: %v, %g, %v", s, p, err)
	}
}
