package chart_test

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
)

// TestSmallMap: every hole has a mark with its verdict, and no word is drawn.
func TestSmallMap(t *testing.T) {
	a := demo(t)
	svg := string(sheet.InlineSVG(chart.SmallMap("map-demo", a, map[string]rules.Status{"B1": rules.Fail, "B2": rules.Pass})))
	for class, n := range map[string]int{"hole hole-fail": 1, "hole hole-pass": 1, `class="hole`: len(a.Holes) + 3, "<text": 0, "<a ": 0} {
		if got := strings.Count(svg, class); got != n {
			t.Errorf("%s stands %d times, want %d", class, got, n)
		}
	}
	if !strings.Contains(svg, "Map of "+a.Name) {
		t.Error("the map has no title")
	}
}
