package glass

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// The trade's table for tempered glass, in inches: thickness 1/4, 3/8, 1/2, 3/4;
// rim to edge 1/2, 3/4, 1, 1-1/2; rim to corner 1-5/8, 2-7/16, 3-1/4, 4-7/8; fillet 1/4, 3/8, 1/2, 3/4.
func TestTradeTable(t *testing.T) {
	n := 0
	for _, row := range []struct{ t, edge, corner, fillet float64 }{
		{1.0 / 4, 1.0 / 2, 1 + 5.0/8, 1.0 / 4}, {3.0 / 8, 3.0 / 4, 2 + 7.0/16, 3.0 / 8},
		{1.0 / 2, 1, 3 + 1.0/4, 1.0 / 2}, {3.0 / 4, 1.5, 4 + 7.0/8, 3.0 / 4},
	} {
		for _, l := range madeToOrder().Limits(Face{Width: 1, Height: 2, Left: 0.5, Up: 0.5}, unit.Length(row.t)*unit.Inch, Hole{}, 0, nil) {
			want, ok := map[string]float64{"rim to the left edge": row.edge, "rim to the nearest corner": row.corner, "corner radius": row.fillet, "smaller side of the hole": row.t + 1.0/16}[l.What]
			if !ok {
				continue
			}
			n++
			if math.Abs(l.Bound.Inches()-want) > 1e-9 {
				t.Errorf("t %g in: %s %g in, table %g", row.t, l.What, l.Bound.Inches(), want)
			}
		}
	}
	if n != 16 {
		t.Fatalf("%d limits seen", n)
	}
}

// By hand: centre 200 mm from the left and 150 mm up, hole 100 x 80 mm with
// 20 mm corners: the fillet's centre stands 170 and 130 mm from the pane's
// corner, so the rim sqrt(170^2 + 130^2) - 20 = 194.0093 mm.
func TestNearestCornerByHand(t *testing.T) {
	h := Hole{Size: unit.Size{W: 0.1, H: 0.08}}
	for _, l := range madeToOrder().Limits(Face{Width: 1, Height: 2, Left: 0.2, Up: 0.15}, 0.01, h, 0.02, nil) {
		if l.What == "rim to the nearest corner" && math.Abs(l.Have.Millimetres()-194.00935) < 1e-4 {
			return
		}
	}
	t.Error("no limit of 194.009 mm to the nearest corner")
}

// By hand: a hole of 140 x 115 mm in 15 mm plastic keeps its width to the left
// and right, its height above and below, its smaller side to a neighbour's rim,
// and a corner radius of half the thickness; in 10 mm it is the 6 mm that count.
func TestPlasticsByHand(t *testing.T) {
	const mm = unit.Millimetre
	h := Hole{Size: unit.Size{W: 140 * mm, H: 115 * mm}}
	beside := []Neighbour{{Hole: Hole{ID: "n", Size: h.Size}, Left: 0.8}}
	for thick, radius := range map[unit.Length]unit.Length{15 * mm: 7.5 * mm, 10 * mm: 6 * mm} {
		want := map[string]unit.Length{
			"rim to the left edge": 140 * mm, "rim to the right edge": 140 * mm, "rim to the bottom edge at the boards": 115 * mm,
			"rim to the top edge": 115 * mm, "rim to the rim of hole n": 115 * mm, "corner radius": radius,
		}
		got := plastics().Limits(Face{Width: 1.2, Height: 1.8, Left: 0.5, Up: 0.5}, thick, h, 13*mm, beside)
		if len(got) != len(want) {
			t.Fatalf("%d limits, want %d", len(got), len(want))
		}
		for _, l := range got {
			if !near(l.Bound, want[l.What]) || !l.Kept() {
				t.Errorf("%s: at least %v, want %v; kept %v", l.What, l.Bound, want[l.What], l.Kept())
			}
		}
	}
}

// A limit missed says by how much, in the reader's units.
func TestMissedLimitIsSaid(t *testing.T) {
	for _, c := range []struct {
		of   Limit
		sys  unit.System
		want string
	}{
		{Limit{What: "rim to the left edge", Have: 0.03, Bound: 0.14}, unit.Metric, "rim to the left edge is 30 mm, at least 140 mm (short by 110 mm)"},
		{Limit{What: "hole's width", Have: 20 * unit.Inch, Bound: 16 * unit.Inch, AtMost: true}, unit.Imperial, "hole's width is 20 in, at most 16 in (over by 4 in)"},
	} {
		if got := c.of.Say().In(c.sys); got != c.want || c.of.Kept() {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func near(a, b unit.Length) bool { return math.Abs(float64(a-b)) < 1e-12 }
