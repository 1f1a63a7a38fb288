package glass_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

func near(a, b unit.Length, tol float64) bool { return math.Abs(float64(a-b)) <= tol }

func TestEdgesByHand(t *testing.T) {
	b := glass.Boards{Height: 42 * unit.Inch}
	p := glass.Pane{From: 10 * unit.Foot, Width: 4 * unit.Foot, Height: 6 * unit.Foot}
	h := glass.Hole{Station: 11 * unit.Foot, Height: 58 * unit.Inch, Size: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}}
	e := glass.EdgesOf(b, p, h, 500*unit.Foot)
	want := glass.Edges{Left: 9.25 * unit.Inch, Right: 33.25 * unit.Inch, Bottom: 13.75 * unit.Inch, Top: 53.75 * unit.Inch}
	for name, pair := range map[string][2]unit.Length{"left": {e.Left, want.Left}, "right": {e.Right, want.Right}, "top": {e.Top, want.Top}, "bottom": {e.Bottom, want.Bottom}, "least": {e.Least(), want.Left}} {
		if !near(pair[0], pair[1], 1e-12) {
			t.Errorf("%s %v in, want %v in", name, pair[0].Inches(), pair[1].Inches())
		}
	}
}

// Where the stations begin anew changes nothing, and what lies left of the pane
// is told as negative, not as a lap.
func TestEdgesTurnWithTheStations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		per := unit.Length(rapid.Float64Range(50, 200).Draw(t, "perimeter"))
		p := glass.Pane{From: unit.Length(rapid.Float64Range(0, 0.99).Draw(t, "from")) * per, Width: unit.Length(rapid.Float64Range(0.3, 3).Draw(t, "width")), Height: 2}
		off := unit.Length(rapid.Float64Range(-1, 4).Draw(t, "off"))
		h := glass.Hole{Station: p.From + off, Height: 1.5, Size: unit.Size{W: 0.14, H: 0.11}}
		want := glass.Edges{Left: off - 0.07, Right: p.Width - off - 0.07}
		for _, lap := range []unit.Length{-per, 0, per} {
			h2 := h
			h2.Station += lap
			e := glass.EdgesOf(glass.Boards{Height: 1}, p, h2, per)
			if !near(e.Left, want.Left, 1e-9) || !near(e.Right, want.Right, 1e-9) {
				t.Fatalf("lap %v: %+v, want %+v", lap, e, want)
			}
		}
	})
}
