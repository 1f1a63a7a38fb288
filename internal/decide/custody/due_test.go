package custody_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// When an inspection is due follows from the rule sets in force: the shortest time of
// those that concern the hole, at once after what one of them names; where none asks,
// the usual year.
func TestInspectionsDueByRules(t *testing.T) {
	const head = "rinkpane: rules 1\nname: n\nstatus: a test\n"
	half := head + "id: half\nrules: [{kind: inspection, days: 183, after: [broken-pane]}]"
	month := head + "id: month\nmaterials: [acrylic]\nrules: [{kind: inspection, id: monthly, days: 30, after: []}]"
	freed := head + "id: freed\nrules: [{kind: inspection, days: 7, dispensation: true}]"
	a := arena.Arena{
		Panes: []glass.Pane{
			{ID: "P1", Width: 1, Material: unit.Known(glass.Acrylic)},
			{ID: "P2", From: 1, Width: 1, Material: unit.Known(glass.Tempered)},
			{ID: "P3", From: 2, Width: 1},
		},
		Holes:         []glass.Hole{{ID: "H1", Pane: "P1", State: glass.Cut}, {ID: "H2", Pane: "P2", State: glass.Cut}, {ID: "H3", Pane: "P3", State: glass.Cut}, {ID: "H4"}},
		Dispensations: []arena.Dispensation{{Rule: "freed/inspection", By: "the league", Reference: "letter 1", Date: "2026-01-02"}},
	}
	inspected := event(phone, 1, 0, custody.Inspected{Hole: "H1", Revision: strings.Repeat("0", 64), Verdict: custody.Accepted})
	broke := event(phone, 2, 60, custody.Incident{What: custody.BrokenPane, Hole: "H1"})
	changed := event(phone, 3, 90, custody.Replaced{Hole: "H1", Pane: "P1"})
	for name, c := range map[string]struct {
		sets   []string
		hole   string
		events []custody.Event
		why    string
		by     time.Duration // after the inspection; below 0: no day
		rules  string
	}{
		"no rule asks: the usual year":                    {nil, "H1", []custody.Event{inspected}, "days in service", 365 * 24 * time.Hour, ""},
		"usual, and the pane was changed":                 {nil, "H1", []custody.Event{inspected, changed}, "changed pane", 90 * time.Minute, ""},
		"half a year":                                     {[]string{half}, "H1", []custody.Event{inspected}, "days in service", 183 * 24 * time.Hour, "half/inspection"},
		"broken: at once":                                 {[]string{half}, "H1", []custody.Event{inspected, broke, changed}, "broken pane", time.Hour, "half/inspection"},
		"changed: the rule does not name it":              {[]string{half}, "H1", []custody.Event{inspected, changed}, "days in service", 183 * 24 * time.Hour, "half/inspection"},
		"refused: at once":                                {nil, "H1", []custody.Event{event(phone, 1, 0, custody.Inspected{Hole: "H1", Verdict: custody.Rejected})}, "refused", 0, ""},
		"inspected after it broke":                        {[]string{half}, "H1", []custody.Event{broke, event(phone, 4, 120, inspected.Fact)}, "days in service", 183*24*time.Hour + 2*time.Hour, "half/inspection"},
		"two rules: the shortest, and what one names":     {[]string{half, month}, "H1", []custody.Event{inspected, broke}, "broken pane", time.Hour, "half/inspection month/monthly"},
		"neither counts: after is empty":                  {[]string{month}, "H1", []custody.Event{inspected, broke, changed}, "days in service", 30 * 24 * time.Hour, "month/monthly"},
		"never inspected":                                 {[]string{half}, "H1", nil, "never inspected", -1, "half/inspection"},
		"a hole that is planned is not due":               {[]string{half}, "H4", nil, "not cut yet", -1, "half/inspection"},
		"a rule for acrylic asks nothing of tempered":     {[]string{month}, "H2", nil, "never inspected", -1, ""},
		"a pane that may be acrylic":                      {[]string{month}, "H3", nil, "never inspected", -1, "month/monthly"},
		"dispensed from it: nothing is asked by the rule": {[]string{freed}, "H1", []custody.Event{inspected}, "days in service", 365 * 24 * time.Hour, ""},
	} {
		var sets []rules.Set
		for _, text := range c.sets {
			set, err := rules.Read("set.yaml", strings.NewReader(text))
			if err != nil {
				t.Fatal(err)
			}
			sets = append(sets, set)
		}
		force, err := rules.InForce(sets...)
		if err != nil {
			t.Fatal(err)
		}
		all := custody.InspectionsDue(custody.HistoryOf(c.events), a, force)
		d := all[slices.IndexFunc(all, func(d custody.Due) bool { return d.Hole == c.hole })]
		want := time.Time{}
		if c.by >= 0 {
			want = at(0).Add(c.by)
		}
		if planned := c.why == "not cut yet"; d.Over(at(0).AddDate(2, 0, 0)) == planned || d.Over(at(-1)) != (c.why == "never inspected") {
			t.Errorf("%s: due now at %v, or not: %+v", name, at(-1), d)
		}
		if d.Why != c.why || !d.By.Equal(want) || strings.Join(d.Rules, " ") != c.rules {
			t.Errorf("%s: %+v, want %s by %v by rules %q", name, d, c.why, want, c.rules)
		}
	}
	for text, want := range map[string]string{
		"days: 0": `days: "0"`, "days: 9999": `days: "9999"`, "after: [flood], days: 3": `"flood"`, "after: [broken-pane]": "days",
	} {
		_, err := rules.Read("set.yaml", strings.NewReader(head+"id: x\nrules: [{kind: inspection, "+text+"}]"))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", text, err)
		}
	}
}
