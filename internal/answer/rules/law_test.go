package rules_test

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// mid is a station in the middle of a pane of the test arena, on the straight
// boards of the bench side.
func mid(a arena.Arena) unit.Length { return a.Panes[3].From + a.Panes[3].Width/2 }

// TestSingleRules asks each kind of rule about one hole: margin in the
// finding's unit, and the sentence.
func TestSingleRules(t *testing.T) {
	a := testArena(t, "north-american")
	cases := []struct {
		name, rule string
		change     func(a *arena.Arena, h *glass.Hole)
		status     rules.Status
		margin     float64 // NaN: none
		message    string
	}{
		{"size kept at its limit", "- {kind: hole-size, size: 142.7 x 114.3 mm, tolerance: 3 mm}", nil, rules.Pass, 0,
			"Nothing to do: hole h is 140 x 114 mm wide and high, within 3 mm of 143 x 114 mm."},
		{"size off by its height", "- {kind: hole-size, size: 139.7 x 110.3 mm, tolerance: 3 mm}", nil, rules.Fail, -1,
			"Make hole h 140 x 110 mm wide and high, within 3 mm: it is 140 x 114 mm."},
		{"size at most", "- {kind: size-at-most, size: 150 x 115 mm}", nil, rules.Pass, 0.7,
			"Nothing to do: hole h is 140 x 114 mm wide and high, no more than 150 x 115 mm."},
		{"size above most", "- {kind: size-at-most, size: 130 x 115 mm}", nil, rules.Fail, -9.7, "Make hole h at most 130 mm wide: it is 140 mm wide."},
		{"smaller side", "- {kind: hole-least, least: 9 t}", nil, rules.Pass, 0,
			"Nothing to do: hole h measures 114 mm across where it is smallest, at least 114 mm is due."},
		{"smaller side too small", "- {kind: hole-least, least: 120 mm}", nil, rules.Fail, -5.7,
			"Make hole h at least 120 mm wide and high: it measures 114 mm across where it is smallest."},
		{"smaller side, pane not measured", "- {kind: hole-least, least: 9 t}", noThickness, rules.Unknown, math.NaN(),
			"Measure the thickness of the pane of hole h and record it: the rule's limit is a multiple of it."},
		{"corner radius", "- {kind: corner-radius, least: 12 mm}", nil, rules.Pass, 0.7, ""},
		{"corner radius too small", "- {kind: corner-radius, least: 2 t}", nil, rules.Fail, -12.7,
			"Round the corners of hole h to a radius of 25.4 mm or more: they have 12.7 mm."},
		{"corner radius not measured", "- {kind: corner-radius, least: 2 t}", func(_ *arena.Arena, h *glass.Hole) { h.Corner = unit.Maybe[unit.Length]{} },
			rules.Unknown, math.NaN(), "Measure the corner radius of hole h and record it: the rule asks for 2 times the pane's thickness at least."},
		{"rounding", "- {kind: edge-rounding, least: 3 mm}", nil, rules.Pass, 0.175, ""},
		{"rounding too small", "- {kind: edge-rounding, least: 4 mm}", nil, rules.Fail, -0.825,
			"Round the edges of hole h to 4 mm or more on both faces: they have 3.17 mm."},
		{"rounding not measured", "- {kind: edge-rounding, least: t + 1 mm}", func(_ *arena.Arena, h *glass.Hole) { h.Rounding = unit.Maybe[unit.Length]{} },
			rules.Unknown, math.NaN(), "Look whether the edges of hole h are rounded and record by how much: the rule asks for 1 times the pane's thickness plus 1 mm at least."},
		{"height of the centre", "- {kind: height-range, least: 1.4 m, most: 1.5 m}", nil, rules.Pass, 26.8,
			"Nothing to do: the centre of hole h lies 1.47 m above the ice, within the limits by 26.8 mm."},
		{"rim too high", "- {kind: height-range, of: rim, most: 1.5 m}", nil, rules.Fail, -30.35,
			"Lower hole h by 30.4 mm or more: its rim lies 1.53 m above the ice, at most 1.5 m is allowed."},
		{"rim too low over the boards", "- {kind: height-range, of: rim, above: boards, least: 400 mm}", nil, rules.Fail, -50.75,
			"Raise hole h by 50.8 mm or more: its rim lies 349 mm above the top of the boards, at least 400 mm is due."},
		{"cover", "- {kind: cover}", nil, rules.Pass, math.NaN(), "Keep the cover of hole h in whenever nobody works the hole."},
		{"no cover", "- {kind: cover}", noCover, rules.Fail, math.NaN(), "Make a cover for hole h, and keep it in whenever nobody works the hole."},
		{"cover not looked at", "- {kind: cover}", coverUnknown, rules.Unknown, math.NaN(), ""},
		{"tether", "- {kind: tether}", nil, rules.Pass, math.NaN(), "Nothing to do: the cover of hole h hangs on a tether."},
		{"no cover, so no tether", "- {kind: tether}", noCover, rules.Fail, math.NaN(), "Make a cover with a tether for hole h: it has no cover."},
		{"no tether", "- {kind: tether}", tether(unit.Known(false)), rules.Fail, math.NaN(), "Tie the cover of hole h to the boards with a tether."},
		{"tether not looked at", "- {kind: tether}", tether(unit.Maybe[bool]{}), rules.Unknown, math.NaN(), ""},
		{"pane edge", "- {kind: pane-edge, least: 20 t}", nil, rules.Pass, 349.25 - 254, ""},
		{"pane edge too near", "- {kind: pane-edge, least: 350 mm}", nil, rules.Fail, -0.75,
			"Move hole h 0.75 mm or more away from the lower edge of pane PAd: its rim lies 349 mm from it, at least 350 mm is due."},
		{"share", "- {kind: cut-out-share, most: 1/3}", nil, rules.Pass, 1.0/3 - 0.1397/1.2052, ""},
		{"share too large", "- {kind: cut-out-share, most: 0.1}", nil, rules.Fail, 0.1 - 0.1397/1.2052,
			"Make hole h at most 120 mm wide, or move it to a larger pane: in pane PAd it is 140 mm wide."},
		{"material", "- {kind: materials, allowed: [acrylic, polycarbonate]}", nil, rules.Pass, math.NaN(), "Nothing to do: hole h is in acrylic, which is allowed."},
		{"material not allowed", "- {kind: materials, allowed: [laminated, polycarbonate]}", nil, rules.Fail, math.NaN(),
			"Move hole h to a pane of laminated or polycarbonate: its pane is of acrylic."},
		{"material not known", "- {kind: materials, allowed: [acrylic]}", noMaterial, rules.Unknown, math.NaN(),
			"Find out what the pane of hole h is made of and record it: a hole is allowed in acrylic."},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			a := a
			a.Panes = append([]glass.Pane(nil), a.Panes...)
			h := holeAt(t, a, "h", mid(a))
			if c.change != nil {
				c.change(&a, &h)
			}
			rep := set(t, c.rule).Check(with(a, h))
			if len(rep.Findings) != 1 {
				t.Fatalf("%d findings, want 1", len(rep.Findings))
			}
			f := rep.Findings[0]
			if f.Status != c.status || rep.Verdict != c.status {
				t.Errorf("status %s, verdict %s, want %s", f.Status, rep.Verdict, c.status)
			}
			checkMargin(t, f, c.margin)
			if c.message != "" && f.Say(unit.Metric) != c.message {
				t.Errorf("said %q\nwant %q", f.Say(unit.Metric), c.message)
			}
			if f.Say(unit.Metric) == "" {
				t.Error("no sentence")
			}
		})
	}
}

func checkMargin(t *testing.T, f rules.Finding, want float64) {
	t.Helper()
	if math.IsNaN(want) {
		if known(f.Margin) {
			t.Errorf("margin %v, want none", number(f.Margin))
		}
		return
	}
	if !known(f.Margin) || !known(f.Measured) || !known(f.Limit) {
		t.Fatalf("measured, limit or margin missing; want margin %v", want)
	}
	if math.Abs(number(f.Margin)-want) > 2e-3 {
		t.Errorf("margin %v, want %v", number(f.Margin), want)
	}
	if gap := math.Abs(math.Abs(number(f.Measured)-number(f.Limit)) - math.Abs(number(f.Margin))); gap > 1e-9 {
		t.Errorf("measured %v and limit %v are not the margin %v apart", number(f.Measured), number(f.Limit), number(f.Margin))
	}
}

func noThickness(a *arena.Arena, _ *glass.Hole) { a.Panes[3].Thickness = unit.Maybe[unit.Length]{} }
func noMaterial(a *arena.Arena, _ *glass.Hole)  { a.Panes[3].Material = unit.Maybe[glass.Material]{} }
func noCover(_ *arena.Arena, h *glass.Hole)     { h.Cover = unit.Known(glass.Cover{}) }
func coverUnknown(_ *arena.Arena, h *glass.Hole) {
	h.Cover = unit.Maybe[glass.Cover]{}
}
func tether(v unit.Maybe[bool]) func(*arena.Arena, *glass.Hole) {
	return func(_ *arena.Arena, h *glass.Hole) { h.Cover = unit.Known(glass.Cover{Present: true, Tether: v}) }
}

func TestHolesTurnedOffAreLeftOut(t *testing.T) {
	a := testArena(t, "north-american")
	h, off := holeAt(t, a, "h", mid(a)), holeAt(t, a, "off", mid(a)+1)
	off.State = glass.Off
	rep := set(t, "- {kind: most-in-all, most: 1}").Check(with(a, h, off))
	if rep.Verdict != rules.Pass || len(rep.Findings[0].Holes) != 1 {
		t.Errorf("%+v", rep)
	}
}

func TestCounts(t *testing.T) {
	a := testArena(t, "north-american")
	b1 := at(t, a, "B1", rink.BBench, rink.GoalLine, -1)
	b2 := at(t, a, "B2", rink.BBench, rink.CircleBottom, 0)
	b3 := at(t, a, "B3", rink.BBench, rink.CircleTop, 0)
	b4 := at(t, a, "B4", rink.BBench, rink.CircleTop, 0.5)
	a1 := at(t, a, "A1", rink.ABench, rink.GoalLine, 0)

	corner := set(t, "- {kind: most-per-corner, most: 3}")
	if rep := corner.Check(with(a, b1, b2, b3, a1)); rep.Verdict != rules.Pass || len(rep.Findings) != 2 {
		t.Errorf("three in a corner: %+v", rep)
	}
	f := corner.Check(with(a, b1, b2, b3, b4, a1)).Findings[0]
	want := "Close or move 1 of B1, B2, B3 and B4: corner B-bench holds 4, at most 3 may be there."
	if f.Status != rules.Fail || number(f.Margin) != -1 || f.Say(unit.Metric) != want {
		t.Errorf("four in a corner: %s %v %q", f.Status, number(f.Margin), f.Say(unit.Metric))
	}
	all := set(t, "- {kind: most-in-all, most: 4}")
	if rep := all.Check(with(a, b1, b2, b3, b4, a1)); rep.Verdict != rules.Fail || number(rep.Findings[0].Measured) != 5 {
		t.Errorf("five in all: %+v", rep)
	}
	plain := a
	var err error
	if plain.Rink, err = rink.New(rink.Dimensions{Length: 60, Width: 30, CornerRadius: 8}); err != nil {
		t.Fatal(err)
	}
	if rep := corner.Check(with(plain, b1, b2, b3, b4)); rep.Verdict != rules.Unknown || len(rep.Findings) != 1 {
		t.Errorf("corners of a rink without lines: %+v", rep)
	}
	if rep := corner.Check(with(plain, b1, b2, b3)); rep.Verdict != rules.Pass {
		t.Errorf("three holes cannot be four in a corner: %+v", rep)
	}
}
