package rules_test

import (
	"maps"
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// tradeTable is a glazing shop's table of least distances for tempered glass, in
// inches: thickness, rim to edge (2t), rim to corner (6.5t, which the shop rounds to
// sixteenths), fillet (t). The formulas beside it are the shop's own.
var tradeTable = []struct{ thick, edge, corner, fillet float64 }{
	{1.0 / 4, 1.0 / 2, 1 + 5.0/8, 1.0 / 4},
	{3.0 / 8, 3.0 / 4, 2 + 7.0/16, 3.0 / 8},
	{1.0 / 2, 1, 3 + 1.0/4, 1.0 / 2},
	{3.0 / 4, 1 + 1.0/2, 4 + 7.0/8, 3.0 / 4},
}

// temperedPane returns an arena with one tempered pane, 60 in square, and a round
// hole in the middle of it.
func temperedPane(t *testing.T, thick float64) (arena.Arena, glass.Hole) {
	t.Helper()
	a := testArena(t, "north-american")
	p := a.Panes[3]
	p.Width, p.Height = 60*unit.Inch, 60*unit.Inch
	p.Thickness, p.Material = unit.Known(unit.Length(thick)*unit.Inch), unit.Known(glass.Tempered)
	a.Panes = []glass.Pane{p}
	h := glass.Hole{
		ID: "h", Pane: p.ID, Station: p.From + 30*unit.Inch, Height: a.Boards.Height + 30*unit.Inch,
		Size: unit.Size{W: 4 * unit.Inch, H: 4 * unit.Inch}, Corner: unit.Known(2 * unit.Inch),
	}
	return a, h
}

func TestTemperedGlassAgainstTheTradesTable(t *testing.T) {
	tempered := shipped(t, "tempered-glass")
	limit := func(a arena.Arena, h glass.Hole, rule string) float64 {
		t.Helper()
		f := only(tempered.Check(with(a, h)), rule)
		if len(f) != 1 || !known(f[0].Limit) {
			t.Fatalf("rule %s: %+v", rule, f)
		}
		return number(f[0].Limit) / 25.4
	}
	for _, row := range tradeTable {
		a, h := temperedPane(t, row.thick)
		for _, c := range []struct {
			rule     string
			want, by float64 // by: how far the table's rounding may be off, inches
		}{
			{"hole-diameter", row.thick + 1.0/16, 1e-9},
			{"rim-to-edge", row.edge, 1e-9},
			{"rim-to-corner", row.corner, 1.0 / 16},
			{"fillet", row.fillet, 1e-9},
		} {
			if got := limit(a, h, c.rule); math.Abs(got-c.want) > c.by {
				t.Errorf("%v in: %s is %v in, the table says %v", row.thick, c.rule, got, c.want)
			}
		}
		if got := limit(a, h, "cut-out-share"); math.Abs(got-60.0/3) > 1e-9 {
			t.Errorf("a cut-out of %v in, want a third of 60 in", got)
		}
	}
}

// TestTemperedDistancesAreMeasuredFromTheRim moves a round hole of radius R until
// each distance is just kept: closed forms for the edge, the corner and the pair.
func TestTemperedDistancesAreMeasuredFromTheRim(t *testing.T) {
	const thick, radius = 0.5, 2.0 // inches
	a, h := temperedPane(t, thick)
	tempered := shipped(t, "tempered-glass")
	margin := func(holes []glass.Hole, rule string) float64 {
		t.Helper()
		f := only(tempered.Check(with(a, holes...)), rule)
		return number(f[0].Margin) / 25.4
	}
	// the centre 10 in from the left edge: rim to edge 10-2, less 2t
	edge := h
	edge.Station = a.Panes[0].From + 10*unit.Inch
	if got := margin([]glass.Hole{edge}, "rim-to-edge"); math.Abs(got-(10-radius-2*thick)) > 1e-9 {
		t.Errorf("edge margin %v in", got)
	}
	// the centre 5 in from left and bottom: rim to corner 5 sqrt 2 - R, less 6.5t
	corner := edge
	corner.Station, corner.Height = a.Panes[0].From+5*unit.Inch, a.Boards.Height+5*unit.Inch
	if got, want := margin([]glass.Hole{corner}, "rim-to-corner"), 5*math.Sqrt2-radius-6.5*thick; math.Abs(got-want) > 1e-9 {
		t.Errorf("corner margin %v in, want %v", got, want)
	}
	// two holes, centres 6 and 4 in apart: hypot(6, 4) - 2R, less 2t
	pair := h
	pair.ID = "k"
	pair.Station, pair.Height = h.Station+6*unit.Inch, h.Height+4*unit.Inch
	if got, want := margin([]glass.Hole{h, pair}, "hole-to-hole"), math.Hypot(6, 4)-2*radius-2*thick; math.Abs(got-want) > 1e-9 {
		t.Errorf("pair margin %v in, want %v", got, want)
	}
}

// TestUnknownRadiusOnlyMattersWhenItDecides leaves the corner radius out: far from
// the pane's corner the rule is kept whatever it is, very near it is broken
// whatever it is, between the survey must say.
func TestUnknownRadiusOnlyMattersWhenItDecides(t *testing.T) {
	a, h := temperedPane(t, 0.5)
	h.Corner = unit.Maybe[unit.Length]{}
	tempered := shipped(t, "tempered-glass")
	for inches, want := range map[float64]rules.Status{30: rules.Pass, 4: rules.Unknown, 3.1: rules.Fail} {
		h.Station, h.Height = a.Panes[0].From+unit.Length(inches)*unit.Inch, a.Boards.Height+unit.Length(inches)*unit.Inch
		if f := only(tempered.Check(with(a, h)), "rim-to-corner")[0]; f.Status != want {
			t.Errorf("%v in from both edges: %s, want %s: %s", inches, f.Status, want, f.Say(unit.Metric))
		}
	}
}

// TestUnknownSetbackOnlyMattersWhereItDecides: in a corner the glass is the longer
// the farther it stands behind the boards, by 1 + setback / radius, so that a rim
// which is a hair too near the edge along the boards may be far enough on the glass.
func TestUnknownSetbackOnlyMattersWhereItDecides(t *testing.T) {
	a, h := temperedPane(t, 0.5)
	a.Boards.Setback = unit.Maybe[unit.Length]{}
	p := &a.Panes[0]
	p.From = (100-28)*unit.Foot + 1 // a metre into the arc of 28 ft
	if d := a.Rink.Dimensions(); d.Length != 200*unit.Foot || d.CornerRadius != 28*unit.Foot || !p.Curved {
		t.Fatal("the pane is not on the arc")
	}
	tempered := shipped(t, "tempered-glass")
	for inches, want := range map[float64]rules.Status{1.5: rules.Pass, 0.99: rules.Unknown, 0.5: rules.Fail} {
		h.Station = p.From + unit.Length(inches+2)*unit.Inch // of the rim; 1 in is due, 2 t
		f := only(tempered.Check(with(a, h)), "rim-to-edge")[0]
		if f.Status != want {
			t.Errorf("rim %v in from the edge along the boards: %s, want %s: %s", inches, f.Status, want, f.Say(unit.Metric))
		}
		if want == rules.Unknown && !strings.Contains(f.Say(unit.Metric), "stands back") {
			t.Errorf("what to measure is not said: %s", f.Say(unit.Metric))
		}
	}
}

// TestEachMaterialHasItsOwnDistances: laminated glass is held to the same as
// tempered; plastics to the fabricators' guides, in which a hole's own width is
// due beside it; a pane whose material is not recorded is told once.
func TestEachMaterialHasItsOwnDistances(t *testing.T) {
	a, h := temperedPane(t, 0.5)
	a.Panes = append([]glass.Pane(nil), a.Panes...)
	h.Station = a.Panes[0].From + 5*unit.Inch // 3 in of glass beside its 4 in
	trade := shipped(t, rules.Trade)
	of := func(m unit.Maybe[glass.Material]) map[string]rules.Status {
		a.Panes[0].Material = m
		out := map[string]rules.Status{}
		for _, f := range trade.Check(with(a, h)).Findings {
			out[f.Rule] = f.Status
		}
		return out
	}
	made := map[string]rules.Status{
		"in-one-pane": rules.Pass, "material": rules.Pass, "rim-to-edge": rules.Pass, "rim-to-corner": rules.Pass,
		"fillet": rules.Pass, "hole-diameter": rules.Pass, "cut-out-share": rules.Pass,
	}
	plastic := map[string]rules.Status{"in-one-pane": rules.Pass, "material": rules.Pass, "rim-to-edge": rules.Fail, "fillet": rules.Pass}
	for m, want := range map[glass.Material]map[string]rules.Status{
		glass.Tempered: made, glass.Laminated: made, glass.Acrylic: plastic, glass.Polycarbonate: plastic,
	} {
		if got := of(unit.Known(m)); !maps.Equal(got, want) {
			t.Errorf("%s: %v, want %v", m, got, want)
		}
	}
	if got := of(unit.Maybe[glass.Material]{}); !maps.Equal(got, map[string]rules.Status{"in-one-pane": rules.Pass, "material": rules.Unknown}) {
		t.Errorf("material not recorded: %v", got)
	}
}

// TestSetForOneMaterial: a set that concerns tempered panes only leaves acrylic
// alone; where the material is not recorded, what would be broken is unknown.
func TestSetForOneMaterial(t *testing.T) {
	a, h := temperedPane(t, 0.5)
	a.Panes = append([]glass.Pane(nil), a.Panes...)
	tempered := read(t, "materials: [tempered]\nrules:\n- {id: fillet, kind: corner-radius, least: t}\n- {id: edge, kind: pane-edge, least: 2 t}\n")
	a.Panes[0].Material = unit.Known(glass.Acrylic)
	if rep := tempered.Check(with(a, h)); len(rep.Findings) != 0 || rep.Verdict != rules.Pass || len(rep.Notes) != 1 {
		t.Errorf("acrylic: %+v", rep)
	}
	a.Panes[0].Material = unit.Maybe[glass.Material]{}
	h.Corner = unit.Known(unit.Inch / 8) // less than t
	rep := tempered.Check(with(a, h))
	if f := only(rep, "fillet")[0]; f.Status != rules.Unknown {
		t.Errorf("broken if tempered, material not known: %s", f.Status)
	}
	if f := only(rep, "edge")[0]; f.Status != rules.Pass {
		t.Errorf("kept even if tempered: %s", f.Status)
	}
	both := shipped(t, "common-practice").And(tempered).Check(with(a, h))
	if len(both.RuleSets) != 2 || len(only(both, "hole-size")) != 1 || len(only(both, "fillet")) != 1 {
		t.Errorf("combined: %+v", both.RuleSets)
	}
}
