package rules_test

import (
	"slices"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// TestOpenLowWindowsAreJudged: an opening of 8 x 6 in, 20 in above the ice, is an
// opening for every rule that asks about one; a panel is none.
func TestOpenLowWindowsAreJudged(t *testing.T) {
	w := glass.Window{ID: "W", Station: 20, Height: 20 * unit.Inch, Size: unit.Size{W: 8 * unit.Inch, H: 6 * unit.Inch}, Open: true}
	whole := w
	whole.Corner, whole.Rounding = unit.Known(unit.Inch), unit.Known(3*unit.Millimetre)
	whole.Cover = unit.Known(glass.Cover{Present: true, Tether: unit.Known(true)})
	bare := whole
	bare.Cover = unit.Known(glass.Cover{})
	panel := w
	panel.Open = false
	bench := []arena.Zone{{ID: "z", Kind: "bench", From: 18, To: 25}}
	for _, c := range []struct {
		name, rule string
		window     glass.Window
		zones      []arena.Zone
		want       rules.Status // "" for no finding
	}{
		{"cover not looked at", "- kind: cover", w, nil, rules.Unknown},
		{"covered", "- kind: cover", whole, nil, rules.Pass},
		{"no cover", "- kind: cover", bare, nil, rules.Fail},
		{"tether", "- kind: tether", whole, nil, rules.Pass},
		{"rounding not looked at", "- {kind: edge-rounding, least: 1 mm}", w, nil, rules.Unknown},
		{"rounding too small", "- {kind: edge-rounding, least: 4 mm}", whole, nil, rules.Fail},
		{"no pane to take a multiple of", "- {kind: edge-rounding, least: 1 t}", whole, nil, ""},
		{"corner radius", "- {kind: corner-radius, least: 20 mm}", whole, nil, rules.Pass},
		{"zone", "- {kind: forbidden-zones, zones: [bench]}", whole, bench, rules.Fail},
		{"clear of zones", "- {kind: forbidden-zones, zones: [broadcast]}", whole, bench, rules.Pass},
		{"size, not asked", "- {kind: size-at-most, size: 150 x 115 mm}", whole, nil, ""},
		{"size, asked", "- {kind: size-at-most, size: 150 x 115 mm, openings: both}", whole, nil, rules.Fail},
		{"windows left out", "- {kind: cover, openings: holes}", bare, nil, ""},
		{"a way left", "- {kind: no-opening}", whole, nil, rules.Pass},
		{"a panel is no opening", "- kind: cover", panel, nil, ""},
		{"a window is no photo hole", "- {kind: most-in-all, most: 0}", whole, nil, ""},
		{"a window lies in no pane", "- {kind: pane-edge, least: 1 m}", whole, nil, ""},
	} {
		a := testArena(t, "north-american")
		a.Windows, a.Zones = []glass.Window{c.window}, c.zones
		found := set(t, c.rule).Check(a).Findings
		if c.want == "" {
			if len(found) != 0 {
				t.Errorf("%s: %+v", c.name, found)
			}
			continue
		}
		if len(found) != 1 || found[0].Status != c.want || !found[0].LowWindow || found[0].Say(unit.Metric) == "" {
			t.Errorf("%s: %+v, want %s", c.name, found, c.want)
		}
	}
}

// TestZonesNotSurveyedAreUnknown: what nobody looked at is not kept; an arena
// without zones says so; a gate among the panes breaks the rule all the same.
func TestZonesNotSurveyedAreUnknown(t *testing.T) {
	rule := set(t, "- {kind: forbidden-zones, zones: [bench, gate]}")
	a := testArena(t, "north-american")
	h := holeAt(t, a, "h", mid(a))
	if v := rule.Check(with(a, h)).Verdict; v != rules.Pass {
		t.Errorf("an arena that has no zones: %s", v)
	}
	a.NoZones = false
	if v := rule.Check(with(a, h)).Verdict; v != rules.Unknown {
		t.Errorf("zones not surveyed: %s", v)
	}
	a.Panes = append([]glass.Pane(nil), a.Panes...)
	a.Panes[3].Gate = "ice machine"
	if v := rule.Check(with(a, h)).Verdict; v != rules.Fail {
		t.Errorf("in a gate: %s", v)
	}
}

// TestNothingIsProvedAgainstLessThanTheTrade: sets in force hold the trade's
// whatever is named, once; sets that nobody put in force prove nothing.
func TestNothingIsProvedAgainstLessThanTheTrade(t *testing.T) {
	trade, err := rules.Shipped(rules.Trade)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		named []rules.Set
		want  []string
	}{
		{nil, []string{"trade"}}, {[]rules.Set{trade}, []string{"trade"}}, {set(t, "- {kind: cover}").All(), []string{"own", "trade"}},
	} {
		if sets, err := rules.InForce(c.named...); err != nil || !slices.Equal(sets.IDs(), c.want) {
			t.Errorf("in force are %v, want %v; %v", sets.IDs(), c.want, err)
		}
	}
	a := testArena(t, "north-american")
	h := holeAt(t, a, "h", mid(a))
	var none rules.Sets
	if v := none.Check(with(a, h)).Verdict; v != rules.Unknown {
		t.Errorf("checked against nothing: %s", v)
	}
	if v := none.On(a).Standing(h); v != rules.Unknown {
		t.Errorf("standing against nothing: %s", v)
	}
	if permitted, _ := none.On(a).Permitted(); len(permitted) != 0 {
		t.Errorf("permitted by nothing: %v", permitted)
	}
}

// TestHolesThatMeet: two holes at one spot break the trade's rules whatever set
// is named, and one across a stanchion breaks them without blocking the other.
func TestHolesThatMeet(t *testing.T) {
	a := testArena(t, "north-american")
	h, k := holeAt(t, a, "h", mid(a)), holeAt(t, a, "k", mid(a))
	trade, err := rules.InForce(set(t, "- {kind: most-in-all, most: 8}").All()...)
	if err != nil {
		t.Fatal(err)
	}
	if f := only(trade.Check(with(a, h, k)), "no-overlap"); len(f) != 1 || f[0].Status != rules.Fail {
		t.Errorf("two at one spot: %+v", f)
	}
	k.Station = a.Panes[9].From + unit.Inch
	found := trade.Check(with(a, h, k))
	if rules.Verdict(rules.About("h", found.Findings)) != rules.Pass || rules.Verdict(rules.About("k", found.Findings)) != rules.Fail {
		t.Errorf("one across a stanchion: %+v", found.Findings)
	}
}
