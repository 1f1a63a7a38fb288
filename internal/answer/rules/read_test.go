package rules_test

import (
	"errors"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

func TestShippedSetsReadAndSayWhatTheyAre(t *testing.T) {
	for _, id := range rules.Names() {
		s, err := rules.Shipped(id)
		if err != nil {
			t.Fatal(err)
		}
		if s.ID != id || s.Name == "" || s.Status == "" || len(s.Rules) == 0 {
			t.Errorf("%s: %+v", id, s)
		}
		if published := s.Source != ""; !published && !strings.Contains(s.Status, "no") && !strings.Contains(s.Status, "without a published source") {
			t.Errorf("%s has no source, and its status does not say so: %s", id, s.Status)
		}
		if s.Example != strings.HasPrefix(id, "example-") {
			t.Errorf("%s: example %v", id, s.Example)
		}
	}
	if len(rules.Names()) != 4 {
		t.Errorf("%d sets ship", len(rules.Names()))
	}
}

// TestEveryKindShips: the shipped sets together show how each kind but one is
// written; hole-to-hole and least-separation are the two on pairs.
func TestEveryKindShips(t *testing.T) {
	shown := map[string]bool{}
	for _, id := range rules.Names() {
		s, err := rules.Shipped(id)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range s.Rules {
			shown[r.Kind] = true
		}
	}
	for _, k := range rules.Kinds() {
		if !shown[k] {
			t.Errorf("no shipped set shows kind %s", k)
		}
	}
}

func TestReadRefusesWithPlaceAndCure(t *testing.T) {
	const head = "rinkpane: rules 1\nid: own\nname: n\nstatus: s\nrules:\n"
	cases := []struct{ name, text, want string }{
		{"not a rule set", "rinkpane: arena 1\n", `own.yaml:1:11: rinkpane: "arena 1"; write rules 1`},
		{"unknown field", "rinkpane: rules 1\nid: own\nnam: n\n", `own.yaml:3:1: unknown field "nam"; did you mean "name"?`},
		{"no rules", "rinkpane: rules 1\nid: own\nname: n\nstatus: s\nrules: []\n", `own.yaml:5:8: rules: must hold at least one rule`},
		{"bad id", "rinkpane: rules 1\nid: ../own\nname: n\nstatus: s\n", `own.yaml:2:5: id: "../own" cannot be an id;`},
		{"kind missing", head + "- {most: 3}\n", `own.yaml:6:3: rules[#1].kind: is missing`},
		{"kind unknown", head + "- {kind: hole-sise}\n", `own.yaml:6:10: rules[#1].kind: "hole-sise"; did you mean "hole-size"?`},
		{"field of another kind", head + "- {kind: hole-size, most: 3}\n", `own.yaml:6:21: rules[#1]: unknown field "most"; known here: id, kind, note, dispensation, size, tolerance`},
		{"same id twice", head + "- {kind: cover}\n- {kind: cover}\n", `own.yaml:7:3: rules[#2]: a second rule with the id "cover"; give each rule its own id`},
		{"bare length", head + "- {kind: edge-rounding, least: 3}\n", `own.yaml:6:32: rules[#1].least: length "3": a bare number; a length needs its unit`},
		{"negative length", head + "- {kind: edge-rounding, least: -3 mm}\n", `negative; write a length of 0 or more`},
		{"zero", head + "- {kind: pane-edge, least: 0 mm}\n", `rules[#1].least: must be more than zero; leave the rule out instead`},
		{"thickness", head + "- {kind: pane-edge, least: x t}\n", `"x t": write a number of the pane's thickness t, such as "2 t" or "t + 1/16 in"`},
		{"thickness NaN", head + "- {kind: pane-edge, least: nan t}\n", `"nan t": write a number`},
		{"thickness plus bare", head + "- {kind: pane-edge, least: t + 2}\n", `a bare number`},
		{"huge", head + "- {kind: pane-edge, least: 1e9 km}\n", `rules[#1].least: length`},
		{"share", head + "- {kind: cut-out-share, most: 4/3}\n", `"4/3": write a part of the whole, such as "1/3" or "0.25"`},
		{"share by zero", head + "- {kind: cut-out-share, most: 0/0}\n", `write a part of the whole`},
		{"count", head + "- {kind: most-in-all, most: -1}\n", `write a whole number from 0 to 10000`},
		{"landmark", head + "- {kind: stretches, stretches: [{landmark: goalline, from: 0 m, to: 1 m}]}\n", `did you mean "goal-line"?`},
		{"stretch backwards", head + "- {kind: stretches, stretches: [{landmark: goal-line, from: 1 m, to: -1 m}]}\n", `stretches[#1].to: lies farther back than from`},
		{"stretch too far", head + "- {kind: stretches, stretches: [{landmark: goal-line, from: -300 m, to: 1 m}]}\n", `reaches farther than 100 m`},
		{"no stretch", head + "- {kind: stretches, stretches: []}\n", `must hold at least one stretch`},
		{"height without limits", head + "- {kind: height-range, of: rim}\n", `a height-range needs least, most or both`},
		{"height turned round", head + "- {kind: height-range, least: 2 m, most: 1 m}\n", `rules[#1].most: is below least`},
		{"zone", head + "- {kind: forbidden-zones, zones: [benches]}\n", `did you mean "bench"?`},
		{"no zone", head + "- {kind: forbidden-zones, zones: []}\n", `must name a kind of zone: bench, penalty-box`},
		{"material", head + "- {kind: materials, allowed: [perspecs]}\n", `write acrylic, polycarbonate, tempered or laminated`},
		{"camera", head + "- {kind: kept-for-camera, for: brodcast}\n", `"brodcast"; did you mean "broadcast"?`},
		{"no camera", head + "- {kind: kept-for-camera}\n", `rules[#1].for: is missing`},
		{"no hole to keep", head + "- {kind: kept-for-camera, for: broadcast, holes: 0}\n", `write a whole number from 1 to 10000`},
		{"no game to keep at", head + "- {kind: kept-for-camera, for: broadcast, games: []}\n", `names no mark or series; leave it out for every game`},
		{"a tenth period", head + "- {kind: kept-for-camera, for: broadcast, periods: [10]}\n", `write a whole number from 1 to 9`},
		{"a third team", head + "- {kind: kept-for-camera, for: broadcast, attacked-by: both}\n", `write home or away`},
		{"dispensation", head + "- {kind: cover, dispensation: perhaps}\n", `write true or false`},
		{"alias bomb", "rinkpane: rules 1\nid: own\nname: n\nstatus: s\nassumptions: &a [x, x]\nrules: [*a, *a, *a]\n", `is an alias`},
		{"too many rules", head + strings.Repeat("- {kind: cover}\n", 201), `rules: has 201 entries; at most 200 are read`},
		{"too large", "# " + strings.Repeat("x", rules.MaxBytes), `is larger than`},
		{"binary", "\x00\x01\x02", `is not UTF-8 text`},
		{"empty", "", `own.yaml: is empty`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := rules.Read("own.yaml", strings.NewReader(c.text))
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got  %v\nwant %s", err, c.want)
			}
			var p *form.Problem
			if !errors.As(err, &p) {
				t.Errorf("%T is not a problem with a place", err)
			}
		})
	}
}

func TestDistances(t *testing.T) {
	for text, want := range map[string]rules.Distance{
		"3 in": {Plus: 0.0762}, "5 ft": {Plus: 1.524}, "t": {Thicknesses: 1}, "6.5 t": {Thicknesses: 6.5}, "2t": {Thicknesses: 2},
		"t + 1/16 in": {Thicknesses: 1, Plus: 0.0015875}, "1.5 t + 2 mm": {Thicknesses: 1.5, Plus: 0.002},
	} {
		got, err := rules.ParseDistance(text)
		if err != nil || got != want {
			t.Errorf("%q: %+v, %v; want %+v", text, got, err, want)
		}
		again, err := rules.ParseDistance(got.String())
		if err != nil || again.Thicknesses != got.Thicknesses {
			t.Errorf("%q prints as %q, which reads as %+v, %v", text, got, again, err)
		}
	}
}

// FuzzRead: whatever the bytes, Read returns a set or an error that names the
// file and holds no control characters; a set that reads can be put to an arena.
func FuzzRead(f *testing.F) {
	for _, id := range rules.Names() {
		text, err := rules.Document(id)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	f.Add([]byte("rinkpane: rules 1\nid: a\nname: &x n\nstatus: *x\nrules: [{kind: pane-edge, least: 1e308 t + 1 in}]\n"))
	f.Add([]byte("rules: [[[[[[[[[[[[[[[[\n\x1b[2J: \u202e"))
	a := testArena(f, "north-american")
	a = with(a, holeAt(f, a, "h", 20), holeAt(f, a, "k", 21))
	f.Fuzz(func(t *testing.T, text []byte) {
		s, err := rules.Read("own.yaml", strings.NewReader(string(text)))
		if err != nil {
			if msg := err.Error(); !strings.HasPrefix(msg, "own.yaml") || strings.ContainsAny(msg, "\x00\x1b\n") {
				t.Errorf("message %q", msg)
			}
			return
		}
		sets := rules.Only(s)
		for _, f := range sets.Check(a).Findings {
			if f.Say(unit.Metric) == "" || f.Holes == nil {
				t.Errorf("%+v", f)
			}
		}
		sets.On(a).Groups()
	})
}
