package chart_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/chart"
)

// A small map of counts shows the colour of each count with its number.
func TestTheKeyOfASmallMapCounts(t *testing.T) {
	a := larkmoor(t).Arena
	a.Zones, a.Windows, a.Holes = nil, nil, a.Holes[:1]
	d := chart.PlanMap(chart.Content{
		Arena: a, Bare: true, Key: true, Picked: a.Holes[0].ID,
		Heat: &chart.Heat{Step: 1, Cols: 1, Rows: 1, Values: []float64{0.5}, Counts: 6, Title: "lenses"},
	}, 130)
	checkTexts(t, "small map", d, 8)
	var words []string
	for _, b := range d.TextBoxes() {
		words = append(words, b.S)
	}
	for i := range 7 {
		if !slices.Contains(words, strconv.Itoa(i)) {
			t.Errorf("the key does not show count %d", i)
		}
	}
	if !slices.Contains(words, "lenses") {
		t.Error("the key does not say what it counts")
	}
}

// The words of upright marks stand above the field: no series runs through them.
func TestMarkWordsStandAboveTheField(t *testing.T) {
	top, found := math.Inf(1), 0
	boxes := chart.FitChart(sampleFit(t), 130, 75).TextBoxes()
	for _, b := range boxes {
		if strings.Contains(b.Class, "tick-text") {
			top = min(top, b.Box.Y+b.Box.H/2) // the highest tick stands at the field's top
		}
	}
	for _, b := range boxes {
		if strings.Contains(b.Class, "mark-text") {
			found++
			if b.Box.Y+b.Box.H > top {
				t.Errorf("%q ends %.1f mm below the top of the field", b.S, b.Box.Y+b.Box.H-top)
			}
		}
	}
	if found < 2 {
		t.Fatalf("found %d words of marks", found)
	}
}
