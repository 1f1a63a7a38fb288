package rules_test

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// scorekeeper returns an international arena with the scorekeeper's zone and its
// round hole of 10 cm, besides a photo hole.
func scorekeeper(t *testing.T) (a arena.Arena, round, photo glass.Hole) {
	a = testArena(t, "international")
	a.Zones = []arena.Zone{{ID: "table", Kind: "scorekeeper", From: 80, To: 84}}
	round, photo = holeAt(t, a, "score", 82), holeAt(t, a, "photo", 30)
	round.Size = unit.Size{W: 0.1, H: 0.1}
	round.Corner = unit.Known[unit.Length](0.05)
	return a, round, photo
}

// TestInternationalBookAllowsOnlyTheScorekeepersHole: Rule 14 of the 2014-18 book, as quoted in
// a league's infrastructure protocol: no opening anywhere in the glass, save one round hole
// of 10 cm before the scorekeeper's bench.
func TestInternationalBookAllowsOnlyTheScorekeepersHole(t *testing.T) {
	a, round, photo := scorekeeper(t)
	book := shipped(t, "international-2014")
	if rep := book.Check(with(a, round)); rep.Verdict != rules.Pass {
		t.Errorf("the scorekeeper's hole: %+v", rep.Findings)
	}
	rep := book.Check(with(a, round, photo))
	if rep.Verdict != rules.Fail || rep.Findings[1].Status != rules.Fail {
		t.Fatalf("a photo hole: %+v", rep.Findings)
	}
	for _, way := range []string{"dispensation", "low window", "above the glass", "the gate", "photo"} {
		if !strings.Contains(rep.Findings[1].Say(unit.Metric), way) {
			t.Errorf("the sentence does not name %q: %s", way, rep.Findings[1].Say(unit.Metric))
		}
	}
	second := round
	second.ID, second.Station = "second", 83
	if rep := book.Check(with(a, round, second)); rep.Verdict != rules.Fail {
		t.Error("two round holes before the scorekeeper pass, the book allows one")
	}
}

func TestWhatMakesTheScorekeepersHole(t *testing.T) {
	a, round, _ := scorekeeper(t)
	book := shipped(t, "international-2014")
	cases := []struct {
		name   string
		change func(a *arena.Arena, h *glass.Hole)
		want   rules.Status
	}{
		{"12 cm", func(_ *arena.Arena, h *glass.Hole) { h.Size = unit.Size{W: 0.12, H: 0.12} }, rules.Fail},
		{"square", func(_ *arena.Arena, h *glass.Hole) { h.Corner = unit.Known[unit.Length](0.01) }, rules.Fail},
		{"radius not measured", func(_ *arena.Arena, h *glass.Hole) { h.Corner = unit.Maybe[unit.Length]{} }, rules.Unknown},
		{"elsewhere", func(_ *arena.Arena, h *glass.Hole) { h.Station = 70 }, rules.Fail},
		{"zone not surveyed", func(a *arena.Arena, _ *glass.Hole) { a.Zones = nil }, rules.Unknown},
		{"103 mm", func(_ *arena.Arena, h *glass.Hole) {
			h.Size, h.Corner = unit.Size{W: 0.103, H: 0.103}, unit.Known[unit.Length](0.0515)
		}, rules.Pass},
	}
	for _, c := range cases {
		a, h := a, round
		c.change(&a, &h)
		if rep := book.Check(with(a, h)); rep.Verdict != c.want {
			t.Errorf("%s: %s, want %s: %s", c.name, rep.Verdict, c.want, rep.Findings[0].Say(unit.Metric))
		}
	}
}

func TestDispensations(t *testing.T) {
	a, _, photo := scorekeeper(t)
	other := holeAt(t, a, "other", 35)
	whole := arena.Dispensation{Rule: "no-opening", By: "Imagined Federation", Reference: "IF-12", Date: "2026-01-31"}
	forPhoto, unsigned, wrong, fixed := whole, whole, whole, whole
	forPhoto.Holes, forPhoto.Rule = []string{"photo"}, "international-2014/no-opening"
	unsigned.By = ""
	wrong.Rule = "no-such-rule"
	fixed.Rule = "cover"
	cases := []struct {
		name    string
		given   arena.Dispensation
		verdict rules.Status
		freed   int // of two holes
		note    string
	}{
		{"for every hole", whole, rules.Pass, 2, ""},
		{"for one hole", forPhoto, rules.Fail, 1, ""},
		{"unsigned", unsigned, rules.Fail, 0, "until it says by whom"},
		{"for a rule that is not in force", wrong, rules.Fail, 0, `"no-such-rule" meets no rule`},
		{"for a rule that admits none", fixed, rules.Fail, 0, "that rule admits none"},
	}
	sets := shipped(t, "international-2014").And(set(t, "- {kind: cover}"))
	for _, c := range cases {
		a := with(a, photo, other)
		a.Dispensations = []arena.Dispensation{c.given}
		rep := sets.Check(a)
		freed := 0
		for _, f := range only(rep, "no-opening") {
			if f.Status == rules.Pass {
				freed++
				if known(f.Margin) || !strings.Contains(f.Say(unit.Metric), "Imagined Federation allowed hole "+f.Holes[0]+" on 2026-01-31, reference IF-12") {
					t.Errorf("%s: %+v", c.name, f)
				}
			}
		}
		if rep.Verdict != c.verdict || freed != c.freed {
			t.Errorf("%s: %s, %d freed; want %s, %d", c.name, rep.Verdict, freed, c.verdict, c.freed)
		}
		if got := strings.Join(rep.Notes, " "); c.note == "" && got != "" || !strings.Contains(got, c.note) {
			t.Errorf("%s: notes %q, want %q", c.name, got, c.note)
		}
	}
}

// TestDispensedFindingsHaveNoMargin: what was measured and its limit stay, the
// margin, which would be negative beside a pass, does not.
func TestDispensedFindingsHaveNoMargin(t *testing.T) {
	a, _, photo := scorekeeper(t)
	a.Dispensations = []arena.Dispensation{{Rule: "size-at-most", By: "b", Reference: "r", Date: "2026-01-31"}}
	f := set(t, "- {kind: size-at-most, size: 50 x 50 mm, dispensation: true}").Check(with(a, photo)).Findings[0]
	if f.Status != rules.Pass || known(f.Margin) || !known(f.Measured) || !known(f.Limit) {
		t.Errorf("%+v", f)
	}
}

// TestDispensedHolesAreNotCounted: a rule that caps a group counts only the
// holes that no dispensation frees.
func TestDispensedHolesAreNotCounted(t *testing.T) {
	a, _, photo := scorekeeper(t)
	other := holeAt(t, a, "other", 35)
	s := set(t, "- {kind: most-in-all, most: 1, dispensation: true}")
	if rep := s.Check(with(a, photo, other)); rep.Verdict != rules.Fail {
		t.Fatal("two of one pass")
	}
	a.Dispensations = []arena.Dispensation{{Rule: "most-in-all", Holes: []string{"other"}, By: "b", Reference: "r", Date: "2026-01-31"}}
	if rep := s.Check(with(a, photo, other)); rep.Verdict != rules.Pass || number(rep.Findings[0].Measured) != 1 {
		t.Errorf("%+v", rep.Findings)
	}
}
