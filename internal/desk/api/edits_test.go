package api_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/desk/api"
)

func TestEditsSaveAndUndo(t *testing.T) {
	onEachStore(t, func(t *testing.T, c *caller) {
		before := c.text("quillhaven", 1)
		saved := want[api.Saved](c, 200, "POST", demo+"/edits",
			`{"base": 1, "edits": [{"do": "move", "hole": "B1", "to": {"corner": "B-bench", "landmark": "goal-line", "offset_m": -1}}]}`)
		if saved.Version.Number != 2 || saved.Version.Who != "Ada" || saved.Undo != 1 || saved.Redo != 0 ||
			saved.Version.What != "move B1 to B-bench goal line, 39 3/8 in back" {
			t.Fatalf("%+v", saved)
		}
		after := strings.Replace(before, "offset: -42 in}", "offset: -39 3/8 in}", 1)
		if got := c.text("quillhaven", 0); got != after {
			t.Error("the move touched more than the place")
		}
		undone := want[api.Saved](c, 200, "POST", demo+"/restore", `{"base": 2, "version": 1, "what": "undo"}`)
		if undone.Version.Number != 3 || undone.Undo != 0 || undone.Redo != 2 || c.text("quillhaven", 0) != before {
			t.Errorf("%+v", undone)
		}
		redone := want[api.Saved](c, 200, "POST", demo+"/restore", `{"base": 3, "version": 2}`)
		if redone.Undo != 1 || redone.Redo != 0 || redone.Version.What != "restore version 2" || c.text("quillhaven", 0) != after {
			t.Errorf("%+v", redone)
		}
		d := want[api.Difference](c, 200, "GET", demo+"/diff?from=1", "")
		if d.To != 4 || len(d.Gone) != 1 || len(d.Come) != 1 || !strings.Contains(d.Diff, "+++ version 4") {
			t.Errorf("%+v", d)
		}
	})
}

// TestStaleEditsAreToldAndMerged: the second of two who edit is told what the
// first changed, nothing of the first is lost, and the merge can be saved.
func TestStaleEditsAreToldAndMerged(t *testing.T) {
	onEachStore(t, func(t *testing.T, c *caller) {
		want[api.Saved](c, 200, "POST", demo+"/edits", `{"base": 1, "edits": [{"do": "set", "path": "boards.ledge", "value": "10 in"}]}`)
		mine := `{"base": 1, "edits": [{"do": "set", "path": "holes[B1].height", "value": "60 in"}]}`
		p := want[api.Problem](c, 409, "POST", demo+"/edits", mine)
		k := p.Conflict
		if k == nil || k.Base != 1 || k.Head.Number != 2 || len(k.Clashes) != 0 || !k.Sound || len(k.Come) != 1 || !strings.Contains(k.Come[0], "10 in") {
			t.Fatalf("%+v", k)
		}
		if !strings.Contains(k.Merged, "height: 60 in") || !strings.Contains(k.Merged, "ledge: 10 in") || strings.Contains(k.Mine, "ledge: 10 in") {
			t.Error("the merge does not hold both")
		}
		want[api.Saved](c, 200, "POST", demo+"/edits", `{"base": 2, "edits": [{"do": "text", "text": `+quote(k.Merged)+`}], "what": "merge"}`)
		if c.text("quillhaven", 0) != k.Merged {
			t.Error("the merge was not saved as proposed")
		}
		clash := want[api.Problem](c, 409, "POST", demo+"/edits", `{"base": 2, "edits": [{"do": "set", "path": "holes[B1].height", "value": "61 in"}]}`)
		if k := clash.Conflict; k == nil || len(k.Clashes) != 1 || !strings.Contains(k.Clashes[0].Mine, "61 in") || !strings.Contains(k.Clashes[0].Theirs, "60 in") {
			t.Errorf("%+v", clash.Conflict)
		}
		stale := want[api.Problem](c, 409, "POST", demo+"/restore", `{"base": 1, "version": 1}`)
		if stale.Conflict == nil {
			t.Error("a restore from an old base was not refused")
		}
		want[api.Problem](c, 404, "POST", demo+"/edits", strings.Replace(mine, `"base": 1`, `"base": 77`, 1))
		if head := want[api.ArenaState](c, 200, "GET", demo, "").Head; head != 3 {
			t.Errorf("head %d after refused saves, expected 3", head)
		}
	})
}

func TestBadEditsSaveNothing(t *testing.T) {
	c := call(t, folderStore(t))
	for _, x := range []struct{ edit, says string }{
		{`{"do": "fly"}`, "one of"},
		{`{"do": "move", "hole": "nobody", "to": {"station_m": 3}}`, "no hole"},
		{`{"do": "move", "hole": "B1"}`, "station_m"},
		{`{"do": "move", "hole": "B1", "to": {"station_m": 1e99}}`, "no length on a rink"},
		{`{"do": "move", "hole": "B1", "to": {"station_m": 3, "corner": "A-box", "landmark": "goal-line"}}`, "keep one of them"},
		{`{"do": "move", "hole": "B1", "to": {"station_m": 4.3}}`, "pane"},
		{`{"do": "add", "as": "B2", "to": {"station_m": 31}}`, "earlier one"},
		{`{"do": "add", "to": {"station_m": 31}, "value": {"station": "3 m"}}`, "given by as and to"},
		{`{"do": "copy", "hole": "B1"}`, "station_m"},
		{`{"do": "delete", "hole": "nobody"}`, "no "},
		{`{"do": "turn", "hole": "B1", "state": "up"}`, "one of"},
		{`{"do": "turn", "hole": "nobody", "state": "off"}`, "no hole"},
		{`{"do": "set", "path": "holes[B1].size", "value": "5 x 4"}`, "bare number"},
		{`{"do": "set", "path": "holes[B1].size"}`, "missing"},
		{`{"do": "set", "path": "holes[B1].size", "value": 5}`, "in quotes"},
		{`{"do": "set", "path": "holes[B1", "value": "5"}`, "bracket"},
		{`{"do": "set", "path": "", "value": "5"}`, "empty"},
		{`{"do": "set", "path": "holes[B1].colour", "value": "red"}`, "colour"},
		{`{"do": "set", "path": "note", "value": {"a":{"b":{"c":{"d":{"e":{"f":{"g":"h"}}}}}}}}`, "deep"},
		{`{"do": "remove", "path": "boards"}`, "boards"},
		{`{"do": "text", "text": "rinkpane: arena 1\n"}`, "name"},
		{`{"do": "text"}`, "missing"},
		{`{"do": "move", "hole": "B1", "to": {"station_m": 3}, "more": 1}`, "unexpected"},
	} {
		p := want[api.Problem](c, 422, "POST", demo+"/edits", `{"base": 1, "edits": [`+x.edit+`]}`)
		all := p.Detail + fmt.Sprint(p.Errors)
		for _, e := range p.Errors {
			all += e.Message
		}
		if !strings.Contains(all, x.says) {
			t.Errorf("%s: %s, expected %q", x.edit, all, x.says)
		}
	}
	want[api.Problem](c, 422, "POST", demo+"/edits", `{"base": 1, "edits": []}`)
	want[api.Problem](c, 422, "POST", demo+"/edits", `{"base": 0, "edits": [{"do": "delete", "hole": "B1"}]}`)
	half := want[api.Problem](c, 422, "POST", demo+"/edits", `{"base": 1, "edits": [{"do": "delete", "hole": "B1"}, {"do": "delete", "hole": "B1"}]}`)
	if half.Edit != 2 {
		t.Errorf("the second edit is wrong, said is %d", half.Edit)
	}
	if head := want[api.ArenaState](c, 200, "GET", demo, "").Head; head != 1 {
		t.Errorf("head %d after refused edits, expected 1", head)
	}
}

func TestTryFollowsTheHand(t *testing.T) {
	c := call(t, folderStore(t))
	before := c.text("quillhaven", 0)
	calm := want[api.Tried](c, 200, "POST", demo+"/try", `{"base": 1, "edits": [], "hole": "B1"}`)
	if calm.Now.Verdict != rules.Pass || calm.Now.Picked == nil || calm.What != "" {
		t.Fatalf("%s, picked %v", calm.Now.Verdict, calm.Now.Picked)
	}
	// 5 ft is the farthest back that common practice allows.
	back := want[api.Tried](c, 200, "POST", demo+"/try",
		`{"base": 0, "edits": [{"do": "move", "hole": "B1", "to": {"corner": "B-bench", "landmark": "goal-line", "offset_m": -2.3}}], "hole": "B1", "lens": "70-200", "all": true}`)
	if back.Now.Verdict != rules.Fail || back.Head != 1 || back.Mark == calm.Mark || back.What == "" {
		t.Errorf("%s, %+v", back.Now.Verdict, back.What)
	}
	p := back.Now.Picked
	if p == nil || p.Lens != "70-200" || len(p.Fits) < 5 || len(p.Wedges) == 0 || len(p.Light) == 0 || len(p.Loss) == 0 {
		t.Fatalf("picked %+v", p)
	}
	if c.text("quillhaven", 0) != before {
		t.Error("a trial has saved something")
	}
	for body, says := range map[string]string{
		`{"base": 1, "edits": [], "hole": "nobody"}`:                                                      "no hole",
		`{"base": 1, "edits": [], "hole": "B1", "lens": "999-1"}`:                                         "no lens",
		`{"base": 1, "edits": [{"do": "move", "hole": "B1", "to": {"station_m": 4.3}}], "hole": "B1"}`:    "pane",
		`{"base": 1, "edits": [{"do": "set", "path": "holes[B1].height", "value": "9 m"}], "hole": "B1"}`: "pane",
	} {
		if p := want[api.Problem](c, 422, "POST", demo+"/try", body); !strings.Contains(p.Detail, says) {
			t.Errorf("%s: %s, expected %q", body, p.Detail, says)
		}
	}
}

// TestNumbersThatAreNone are refused in words, not by whoever writes the answer.
func TestNumbersThatAreNone(t *testing.T) {
	c := call(t, folderStore(t))
	for _, step := range []string{"Inf", "-Inf", "NaN", "1e400"} {
		p := want[api.Problem](c, 422, "GET", demo+"/reach?hole=B1&step_m="+step, "")
		said := p.Detail
		for _, e := range p.Errors {
			said += " " + e.Location
		}
		if !strings.Contains(said, "step_m") && !strings.Contains(said, "0.1 to 2") {
			t.Errorf("%s: %+v", step, p)
		}
	}
}
