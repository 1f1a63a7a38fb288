package chart

import (
	"cmp"
	"math"
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

// A drawing that is set larger on paper says the scale that it has there, a standard one.
func TestAZoomedDrawingTellsItsScaleOnPaper(t *testing.T) {
	for _, zoom := range []float64{0, 1, 1.189} {
		c := Content{Zoom: zoom}
		for _, room := range []float64{1.7, 3.1, 4.9, 6} {
			scale := c.onPaper(room)
			on := scale * cmp.Or(zoom, 1)
			if n := 1000 / on; scale > room*(1+1e-9) || math.Abs(n-nextScale(between, n)) > 1e-6 || math.Abs(n-c.says(scale)) > 1e-9 {
				t.Errorf("zoom %g, %g mm to the metre: drawn at %g, on paper 1:%g, said 1:%g", zoom, room, scale, 1000/on, c.says(scale))
			}
		}
	}
}
