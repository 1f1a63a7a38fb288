package cut

import (
	"encoding/csv"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// A pane with two holes is one pane: ordered once, weighed once, counted once;
// the outline for a machine has both holes, to be cut in one go.
func TestPaneWithTwoHolesIsOnePane(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	h, _ := p.Arena.Hole("order")
	second := h
	second.ID, second.Station, second.Height = "second", h.Station+400*mm, h.Height+50*mm
	p.Arena.Holes = append(p.Arena.Holes[:0:0], h, second)
	j, err := p.Job(h, DefaultOptions())
	if err != nil {
		t.Fatal(err)
	}
	// By hand: a hole of 150 x 120 mm, corners 20 mm, in 12.7 mm of glass is
	// (0.018 - 0.858407 x 0.0004) x 0.0127 x 2500 = 0.560598 kg.
	if got := j.Whole - j.Mass; math.Abs(got-2*0.560598) > 1e-5 {
		t.Errorf("two holes take %.6f kg", got)
	}
	if s := strings.Join(j.Steps(), " "); !strings.Contains(s, "order ONE pane made with all its 2 holes") {
		t.Errorf("steps %q", s)
	}
	told := 0
	for _, w := range wordsOf(p.PaneOutline(j)) {
		if w.text == "hole second: to be made" || w.text == "hole order: to be made" {
			told++
		}
	}
	if told != 2 {
		t.Errorf("the outline for a machine tells of its two holes %d times", told)
	}
	l, err := p.List(DefaultOptions(), DefaultSpareOptions())
	if err != nil {
		t.Fatal(err)
	}
	work, _ := l.Sums()
	spares, _ := l.Spares()
	if work.Holes != 2 || work.Covers != 2 || work.Panes != 1 || len(l.Panes) != 1 || l.Panes[0].InUse() != 1 || spares != 1 || len(l.Panes[0].Holes) != 2 {
		t.Errorf("list %+v", l)
	}
	rows, err := csv.NewReader(strings.NewReader(string(csvOf(holeFields(p.Mark).Of("", l.Rows, unit.Metric))))).ReadAll()
	if err != nil || len(rows) != 3 {
		t.Fatalf("table %q, %v", rows, err)
	}
	if at := slices.Index(rows[0], "mass_kg"); rows[1][at] == "" || rows[2][at] != "" {
		t.Errorf("table %q, %v: the pane's mass stands in it once", rows, err)
	}
	if math.Abs(work.MassKG-j.Mass) > 1e-9 {
		t.Errorf("all panes weigh %.3f kg, the one pane %.3f kg", work.MassKG, j.Mass)
	}
}
