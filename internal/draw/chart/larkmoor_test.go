package chart_test

import (
	"math"
	"os"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// larkmoor is a plan with one of everything that the pictures draw, with fixed
// verdicts, so that its golden drawings change only when the drawing does.
func larkmoor(t testing.TB) chart.Content {
	t.Helper()
	f, err := os.Open("testdata/larkmoor.yaml")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	doc, err := arena.Read("larkmoor.yaml", f)
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	return chart.Content{
		Arena:     a,
		Status:    map[string]rules.Status{"B-one": rules.Pass, "B-two": rules.Unknown, "B-end": rules.Fail},
		Permitted: []rules.Interval{{From: 22.2, To: 23.3}, {From: 107.2, To: 110.8}},
		Undecided: []rules.Interval{{From: 14.1, To: 15.4}, {From: 164.1, To: 165.9}},
		Reach: []chart.Wedge{
			{Hole: "B-one", Left: 30 * unit.Degree, Right: 40 * unit.Degree},
			{Hole: "B-end", Left: 35 * unit.Degree, Right: 35 * unit.Degree, Depth: 30},
		},
		Heat:   heatOver(a),
		Others: []chart.Spot{{Label: "next best", Station: 12}},
		Notes:  map[string]string{"B-one": "worth 0.21"},
	}
}

// heatOver is a grid of 1 m over the ice that falls off from end B.
func heatOver(a arena.Arena) *chart.Heat {
	h := &chart.Heat{Corner: geom.Vec2{X: -30, Y: -15}, Step: 1, Cols: 60, Rows: 30, Low: "no lens", High: "every lens", Title: "lenses that reach"}
	for row := range h.Rows {
		for col := range h.Cols {
			at := geom.Vec2{X: float64(col) - 29.5, Y: float64(row) - 14.5}
			v := math.NaN()
			if a.Rink.Contains(at) {
				v = math.Exp(-at.Sub(geom.Vec2{X: 26}).Len() / 20)
			}
			h.Values = append(h.Values, v)
		}
	}
	return h
}
