package cut

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// A hole that fails a rule is drawn, and PDF, SVG, DXF and list say NOT PASSED
// and why, on each sheet; what is not proved says so; the others say nothing.
func TestWhatIsNotAllowedIsMarkedOnEverySheet(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	said := func(hole string, s rules.Status, words string) rules.Finding {
		return rules.Finding{Set: "house", Rule: "no-" + hole, Holes: []string{hole}, Status: s, Sentence: say.Make(words, 10*mm)}
	}
	p.Findings = []rules.Finding{
		said("flat", rules.Fail, "Move it by %s"), said("bare", rules.Unknown, "Measure its edge to %s"),
		said("bent", rules.Pass, "Nothing to do: %s"), {Set: rules.Trade, Holes: []string{"bent"}, Status: rules.Fail},
	}
	f := folder(t, p, "a4")
	if len(f.Marked) != 1 || f.Marked[0].Hole != "flat" || len(f.Doubted) != 1 || f.Doubted[0].Hole != "bare" {
		t.Fatalf("marked %v, doubted %v", f.Marked, f.Doubted)
	}
	marks := map[string]string{"flat": "NOT PASSED: Move it by 10 mm (rule no-flat of house).", "bare": "NOT PROVED: Measure its edge to 10 mm (rule no-bare of house).", "bent": ""}
	for id, want := range marks {
		j := jobOf(t, p, id, DefaultOptions())
		whole, err := p.Template(j, Full)
		if err != nil {
			t.Fatal(err)
		}
		paper, _ := sheet.ParsePaper("a4")
		for _, d := range append(p.Sheets(j, paper), p.PaneOutline(j), p.PlugOutline(j), p.FlangeOutline(j), whole[0]) {
			all := ""
			for _, w := range wordsOf(d) {
				all += w.text + " "
			}
			if want == "" && strings.Contains(all, "NOT P") || !strings.Contains(all, want) {
				t.Errorf("hole %s, %s: %q is not on the sheet: %s", id, d.Title, want, all)
			}
		}
	}
	seen := 0
	for _, file := range f.Files {
		if file.Hole == "flat" && (file.Kind == PaneDXF || file.Kind == CoverDXF || file.Kind == PaneSVG) {
			seen++
			if !bytes.Contains(file.Data, []byte("NOT PASSED")) || file.Kind != PaneSVG && !bytes.Contains(file.Data, []byte(statusLayer)) {
				t.Errorf("%s does not say NOT PASSED on a layer of its own", file.Path)
			}
		}
		if file.Kind == CutListTable && !bytes.Contains(file.Data, []byte("no-flat of house")) {
			t.Error("the list does not say what is not passed")
		}
	}
	if seen != 4 {
		t.Errorf("%d files seen", seen)
	}
}

// A revision that nobody approved says so on every drawing: who is waited for, or that
// there is no record, in its words and across the sheet, apart from what a machine follows.
func TestWhatIsNotApprovedIsMarkedOnEverySheet(t *testing.T) {
	asked := custody.Reply{Approver: custody.Approver{Party: custody.League, Name: "Bo"}}
	for want, a := range map[string]custody.Approval{
		"Not approved: no record.":              {},
		"Not approved: waiting for Bo (league)": {Standing: custody.Waiting, Replies: []custody.Reply{asked}},
		"Approved by Ada (operator) on 2027-01": approvedByAll(),
	} {
		p := shopPlan(t, unit.Metric)
		p.Approval = a
		all := drawingsOf(t, p, windowJobs(t, p), "a4")
		for _, d := range all {
			said, across := "", false
			for _, w := range wordsOf(d) {
				said += w.text + " "
				across = across || strings.HasSuffix(w.text, "NOT APPROVED")
			}
			framed := slices.Contains(d.Layers, sheet.LayerFrame) && strings.Contains(said, "Plan revision")
			if !strings.Contains(said, want) && !strings.Contains(said, strings.ToLower(want[:1])+strings.TrimSuffix(want[1:], ".")) {
				t.Errorf("%s: %q is not on the sheet: %s", d.Title, want, said)
			}
			if across != (framed && a.Standing != custody.Approved) {
				t.Errorf("%s: across the sheet: %v, %s", d.Title, across, want)
			}
		}
		if len(all) < 20 {
			t.Errorf("%d drawings", len(all))
		}
	}
}

// A hole that exists too near to the edge is drawn and marked; one to be made is refused.
func TestOnePolicyOnTheTradesDistances(t *testing.T) {
	for state, refused := range map[glass.State]bool{glass.Planned: true, glass.Cut: false} {
		p := shopPlan(t, unit.Metric)
		h, _ := p.Arena.Hole("flat")
		h.Station, h.State = 4.1, state
		j, err := p.Job(h, DefaultOptions())
		if (err != nil) != refused || !refused && !strings.Contains(fmt.Sprint(say.All(j.NotPassed, unit.Metric)), "rim to the left edge is 30 mm") {
			t.Errorf("%s: %v, not passed %v", state, err, say.All(j.NotPassed, unit.Metric))
		}
	}
}
