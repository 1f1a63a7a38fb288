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

// A place map names the hole that it is about and no other.
func TestAPlaceMapNamesItsHole(t *testing.T) {
	a := demo(t)
	d := chart.PlaceMap("place", a, nil, a.Holes[1].ID)
	boxes := d.TextBoxes()
	if len(boxes) != 1 || boxes[0].S != a.Holes[1].ID {
		t.Errorf("%+v", boxes)
	}
	if b := d.Bounds(); b.X < 0 || b.Y < 0 || b.X+b.W > d.W || b.Y+b.H > d.H {
		t.Errorf("%+v leaves %g x %g mm", b, d.W, d.H)
	}
}
