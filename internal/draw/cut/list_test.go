package cut

import (
	"encoding/csv"
	"fmt"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

func TestList(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	l, err := p.List(DefaultOptions(), DefaultSpareOptions())
	if err != nil {
		t.Fatal(err)
	}
	if l.Holes != 4 || l.Covers != 4 || len(l.Rows) != 5 || len(l.Groups) != 4 {
		t.Errorf("%d holes, %d covers, %d rows, %d groups", l.Holes, l.Covers, len(l.Rows), len(l.Groups))
	}
	if no := l.Rows[4]; no.Job.Hole.ID != "edge" || len(no.Refused) == 0 {
		t.Errorf("last row %+v", no)
	}
	sum := 0.0
	for _, r := range l.Rows[:4] {
		sum += r.Job.Mass
	}
	if l.Mass != sum || sum < 100 {
		t.Errorf("mass %g kg, rows %g", l.Mass, sum)
	}
}

// Twin panes share their spares; a flat pane may be turned round.
func TestTwinsShareSpares(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	h, _ := p.Arena.Hole("flat")
	twin := h
	twin.ID, twin.Pane, twin.Station = "twin", "P5", 80.7
	p.Arena.Holes = append(p.Arena.Holes[:1:1], twin)
	o := DefaultSpareOptions()
	o.BreakRate = 1
	l, err := p.List(DefaultOptions(), o)
	if err != nil || len(l.Groups) != 1 || l.Groups[0].Count != 2 {
		t.Fatalf("%+v, %v", l.Groups, err)
	}
	// Poisson of mean 2: P(K <= 4) = 0.947, P(K <= 5) = 0.983.
	if l.Groups[0].Spares != 5 {
		t.Errorf("%d spares, want 5", l.Groups[0].Spares)
	}
}

func TestListAsTable(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	l, err := p.List(DefaultOptions(), DefaultSpareOptions())
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(l.CSV(p)))).ReadAll()
	if err != nil || len(rows) != 6 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	at := map[string]int{}
	for i, name := range rows[0] {
		at[name] = i
	}
	if got := rows[1][at["hole_left_mm"]]; got != "500.00" {
		t.Errorf("hole_left_mm %s", got)
	}
	if got := rows[5][at["not_drawn"]]; !strings.Contains(got, "corner radius") || rows[5][at["plan"]] != p.Mark {
		t.Errorf("not_drawn %q", got)
	}
}

func TestSparesAreChecked(t *testing.T) {
	for _, c := range []struct {
		n          int
		rate, sure float64
	}{{-1, 0.1, 0.9}, {1, -0.1, 0.9}, {1, 0.1, 1}, {1, 1e9, 0.5}} {
		if k, err := Spares(c.n, c.rate, c.sure); err == nil {
			t.Errorf("%+v gives %d spares", c, k)
		}
	}
}

func ExampleSpares() {
	n, _ := Spares(8, 0.15, 0.95) // eight drilled panes of one kind
	fmt.Println(n)
	// Output: 3
}
