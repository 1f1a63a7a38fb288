package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/survey/arena"
)

func keeps(t *testing.T, a arena.Arena, rule string) []rules.Keep {
	t.Helper()
	set, err := rules.Read("own.yaml", strings.NewReader("rinkpane: rules 1\nid: own\nname: n\nstatus: s\nrules:\n- "+rule+"\n"))
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	return sets.On(a).Keeps()
}

// TestKeptHolesByGroup: the demo's eight holes by corner, end and rink, without those that
// a dispensation frees.
func TestKeptHolesByGroup(t *testing.T) {
	file, err := examples.Files.Open(examples.Demo)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	doc, err := arena.Read(examples.Demo, file)
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	a.Dispensations = append(a.Dispensations, arena.Dispensation{Rule: "own/freed", Holes: []string{"B1"}, By: "the league", Reference: "letter 1", Date: "2026-01-01"})
	for rule, want := range map[string]string{
		"{kind: kept-for-camera, for: broadcast}":                                      "own/kept-for-camera 1: corner B-bench [B1 B2], corner B-box [B3 B4], corner A-bench [A1 A2], corner A-box [A3 A4]",
		"{kind: kept-for-camera, for: broadcast, in: end, holes: 2}":                   "own/kept-for-camera 2: end B [B1 B2 B3 B4], end A [A1 A2 A3 A4]",
		"{kind: kept-for-camera, for: remote, in: rink}":                               "own/kept-for-camera 1: the rink [B1 B2 B3 B4 A1 A2 A3 A4]",
		"{id: freed, kind: kept-for-camera, for: remote, in: end, dispensation: true}": "own/freed 1: end B [B2 B3 B4], end A [A1 A2 A3 A4]",
	} {
		all := keeps(t, a, rule)
		if len(all) != 1 {
			t.Fatalf("%s: %d rules keep holes", rule, len(all))
		}
		var groups []string
		for _, g := range all[0].Groups {
			groups = append(groups, fmt.Sprint(g.Name, " ", g.Holes))
		}
		if got := fmt.Sprintf("%s %d: %s", all[0].Rule, all[0].Holes, strings.Join(groups, ", ")); got != want {
			t.Errorf("%s:\n got %s\nwant %s", rule, got, want)
		}
	}
	if got := rules.Only().On(a).Keeps(); got != nil {
		t.Errorf("no rule keeps %v", got)
	}
}
