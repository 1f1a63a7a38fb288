package chance

import (
	"math"
	"testing"
)

// Garwood's 95 % limits as tabled for Poisson counts (for example the tables
// of exact Poisson limits after Garwood 1936), to the digits printed there.
func TestGarwoodTable(t *testing.T) {
	table := []struct {
		k         int
		low, high float64
	}{
		{0, 0, 3.688879},
		{1, .025318, 5.571643},
		{2, .242209, 7.224688},
		{3, .618672, 8.767273},
		{5, 1.623486, 11.668332},
		{10, 4.795389, 18.390356},
		{20, 12.216520, 30.888378},
		{100, 81.363991, 121.626794},
	}
	for _, row := range table {
		got, err := Garwood(row.k, 0.95)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got.Low-row.low) > 6e-7 || math.Abs(got.High-row.high) > 6e-7 {
			t.Errorf("Garwood(%d) = %.6f, %.6f, table %.6f, %.6f", row.k, got.Low, got.High, row.low, row.high)
		}
	}
}

// 15 events in an exposure of 400: exact interval as published with the
// statsmodels package, test_rates_poisson.
func TestRateAgainstStatsmodels(t *testing.T) {
	got, err := Rate{Events: 15, Exposure: 400}.Interval(0.95)
	if err != nil {
		t.Fatal(err)
	}
	const low, high = 0.0209884653319583, 0.0618505471787146
	if math.Abs(got.Low-low) > 1e-15 || math.Abs(got.High-high) > 1e-15 {
		t.Errorf("interval %.16f %.16f, published %.16f %.16f", got.Low, got.High, low, high)
	}
}

// Cumulative Poisson probabilities as printed to four places in statistics
// textbooks' tables (mean 0.5, 1, 2.5, 5, 10), from memory and recomputed by
// summing the series in TestCDFIsTheSum.
func TestCDFTable(t *testing.T) {
	table := []struct {
		mean float64
		k    int
		p    float64
	}{
		{0.5, 0, .6065}, {0.5, 2, .9856}, {1, 0, .3679}, {1, 3, .9810},
		{2.5, 2, .5438}, {2.5, 5, .9580}, {5, 5, .6160}, {5, 9, .9682}, {10, 10, .5830}, {10, 15, .9513},
	}
	for _, row := range table {
		if got := PoissonCDF(row.k, row.mean); math.Abs(got-row.p) > 5e-5 {
			t.Errorf("PoissonCDF(%d, %g) = %.5f, table %.4f", row.k, row.mean, got, row.p)
		}
	}
}
