package chart

import (
	"testing"

	"pgregory.net/rapid"
)

// ISO 5455:1979, table of reduction scales: 1:2, 1:5, 1:10, 1:20, 1:50, 1:100,
// 1:200, 1:500 and so on (from memory); the rest stands between.
func TestDrawingsTakeStandardScales(t *testing.T) {
	for least, want := range map[float64]float64{1: 1, 100: 100, 161: 200, 181: 200, 200: 200, 201: 250, 260: 300, 337: 400, 401: 500, 800: 1000, 2001: 2500, 1700: 2000} {
		if got := standardScale(least); got != want {
			t.Errorf("1:%g is drawn 1:%g, want 1:%g", least, got, want)
		}
	}
}

func TestAStandardScaleNeverNeedsMoreRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		least := rapid.Float64Range(1, 5000).Draw(t, "least")
		if n := standardScale(least); n < least*(1-1e-6) || n > 2*least+1e-6 {
			t.Fatalf("1:%g is drawn 1:%g", least, n)
		}
	})
}
