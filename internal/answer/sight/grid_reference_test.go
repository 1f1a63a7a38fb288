package sight_test

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// TestGridHoldsTheIce compares the cells with the ice areas of the rule books'
// rinks, A = L W - (4 - pi) r^2: 200 x 85 ft, r 28 ft: 16327.0086 ft2; 60 x 30 m,
// r 8.5 m: 1737.9801 m2. Cells are counted by their middles, so the error is that
// of the arcs' staircase, far below the perimeter times a cell.
func TestGridHoldsTheIce(t *testing.T) {
	const foot2 = 0.3048 * 0.3048
	for standard, want := range map[string]float64{"north-american": 16327.0086 * foot2, "international": 1737.9801} {
		r, err := rink.Standard(standard)
		if err != nil {
			t.Fatal(err)
		}
		if standard == "international" && math.Abs(r.Dimensions().CornerRadius.Metres()-8.5) > 1e-9 {
			t.Fatalf("corner radius %v", r.Dimensions().CornerRadius)
		}
		for _, step := range []unit.Length{0.05, 0.1, 0.37} {
			g, err := sight.NewGrid(r, step)
			if err != nil {
				t.Fatal(err)
			}
			got := float64(g.Cells()) * g.Step * g.Step
			if off := math.Abs(got-want) / want; off > 0.02*step.Metres()/0.1 {
				t.Errorf("%s, step %v: %v m2, want %v", standard, step, got, want)
			}
			on := 0
			for row := range g.Rows {
				first, last := g.Run(row)
				for column := range g.Columns {
					inside := column >= first && column < last
					if inside != r.Contains(g.At(column, row)) {
						t.Fatalf("%s, cell %d,%d at %v: ice %v", standard, column, row, g.At(column, row), inside)
					}
					if inside {
						on++
					}
				}
			}
			if on != g.Cells() {
				t.Errorf("%d cells counted, Cells says %d", on, g.Cells())
			}
		}
	}
}

func TestGridStepIsChecked(t *testing.T) {
	r, err := rink.Standard("international")
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range []unit.Length{0, -1, 0.001, 6, unit.Length(math.NaN()), unit.Length(math.Inf(1))} {
		if _, err := sight.NewGrid(r, step); err == nil {
			t.Errorf("step %v is accepted", step)
		}
	}
}
