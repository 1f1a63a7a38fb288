package chart_test

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// demo returns the demo arena.
func demo(t testing.TB) arena.Arena {
	t.Helper()
	d, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := d.Check()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestDemoPicturesNameEveryHole(t *testing.T) {
	a := demo(t)
	p := chart.Content{Arena: a}
	for name, d := range map[string]*sheet.Drawing{"plan": chart.PlanMap(p, 277), "strip": chart.BoardsStrip(p, 400, 4)} {
		svg := string(sheet.InlineSVG(d))
		if len(a.Holes) == 0 {
			t.Fatal("the demo arena has no holes")
		}
		for _, h := range a.Holes {
			if !strings.Contains(svg, `data-hole="`+h.ID+`"`) {
				t.Errorf("%s lacks data-hole for %s", name, h.ID)
			}
		}
	}
}

// What nobody measured is drawn at a usual size, dashed, and said in words.
func TestUnknownBoardsAreDrawnAsUnknown(t *testing.T) {
	a := demo(t)
	const whole, both = "not surveyed", "depth of the boards and set-back of the glass not surveyed"
	surveyed := string(sheet.InlineSVG(chart.PlanMap(chart.Content{Arena: a}, 277)))
	a.Boards.Ledge, a.Boards.Setback = unit.Maybe[unit.Length]{}, unit.Maybe[unit.Length]{}
	for _, bare := range []bool{false, true} {
		svg := string(sheet.InlineSVG(chart.PlanMap(chart.Content{Arena: a, Bare: bare}, 277)))
		if !strings.Contains(svg, both) || !strings.Contains(svg, `class="pane-unsaid"`) {
			t.Errorf("bare %v: the map does not say %q", bare, both)
		}
	}
	if strings.Contains(surveyed, whole) {
		t.Error("a surveyed map says that something is not surveyed")
	}
}
