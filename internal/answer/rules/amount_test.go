package rules_test

import (
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
)

func TestSpare(t *testing.T) {
	of := func(of rules.Quantity, n float64) rules.Finding {
		return rules.Finding{Margin: unit.Known(rules.Amount{Of: of, N: n})}
	}
	for _, c := range []struct {
		f                rules.Finding
		metric, imperial string
	}{
		{of(rules.AlongBoards, 0.0127), "12.7 mm to spare", "1/2 in to spare"},
		{of(rules.InPane, -0.0127), "12.7 mm short", "1/2 in short"},
		{of(rules.HoleCount, 2), "2 holes to spare", "2 holes to spare"},
		{of(rules.HoleCount, -1), "1 hole too many", "1 hole too many"},
		{of(rules.Share, 0.2175), "0.217 to spare", "0.217 to spare"},
		{of(rules.AlongBoards, 0), "exactly at the limit", "exactly at the limit"},
		{rules.Finding{}, "", ""},
	} {
		if got := c.f.Spare().In(unit.Metric); got != c.metric {
			t.Errorf("margin %v reads %q, expected %q", c.f.Margin, got, c.metric)
		}
		if got := c.f.Spare().In(unit.Imperial); got != c.imperial {
			t.Errorf("margin %v reads %q, expected %q", c.f.Margin, got, c.imperial)
		}
	}
}

// One report serves a reader in millimetres and one in inches: a finding holds
// lengths, no text of either.
func TestFindingSpeaksInTheReadersUnits(t *testing.T) {
	a := testArena(t, "north-american")
	a.Units = unit.Imperial
	f := set(t, "- {kind: pane-edge, least: 350 mm}").Check(with(a, holeAt(t, a, "h", mid(a)))).Findings[0]
	for sys, want := range map[unit.System]string{
		unit.Metric:   "Move hole h 0.75 mm or more away from the lower edge of pane PAd: its rim lies 349 mm from it, at least 350 mm is due.",
		unit.Imperial: "Move hole h 1/32 in or more away from the lower edge of pane PAd: its rim lies 13 3/4 in from it, at least 13 3/4 in is due.",
	} {
		if got := f.Say(sys); got != want {
			t.Errorf("%v: %q, want %q", sys, got, want)
		}
	}
}
