package edit_test

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

const schedule = `rinkpane: arena 1
name: Rows
units: imperial
rink: {standard: north-american}
boards: {height: 42 in}
glass: {height: 6 ft}
panes:
  - {id: P01, from: 10 ft, width: 4 ft, count: 3}
  - {id: P04, from: 22 ft 2 in, width: 4 ft, count: 2}   # behind a post
  - {id: P06, from: 60 ft, width: 4 ft}   # behind open boards
`

// TestOnePaneMovesTheRest: changing one pane moves those beside it, stated stations
// too, as far as open boards; all other bytes stay.
func TestOnePaneMovesTheRest(t *testing.T) {
	doc, err := arena.Read("rows.yaml", strings.NewReader(schedule))
	if err != nil {
		t.Fatal(err)
	}
	const first = "- {id: P01, from: 10 ft, width: 4 ft, count: 3}"
	const post = "- {id: P04, from: 22 ft 2 in, width: 4 ft, count: 2}   # behind a post"
	for _, c := range []struct{ edits, gone, come, what string }{
		{`{"do":"set","path":"panes[P02].width","value":"5 ft"}`, first + "|" + post,
			"- {id: P01, from: 10 ft, width: 4 ft}|- {id: P02, width: 5 ft}|- {id: P03, width: 4 ft}|- {id: P04, from: 23 ft 2 in, width: 4 ft, count: 2}   # behind a post",
			"set panes[P02].width to 5 ft, 3 panes beside it move on by 12 in"},
		{`{"do":"set","path":"panes[P01].width","value":"46 in"}`, first + "|" + post,
			"- {id: P01, from: 10 ft, width: 46 in, count: 3}|- {id: P04, from: 21 ft 8 in, width: 4 ft, count: 2}   # behind a post",
			"set panes[P01].width to 46 in, 2 panes beside it move back by 6 in"},
		{`{"do":"set","path":"panes[P01].count","value":"2"}`, first + "|" + post,
			"- {id: P01, from: 10 ft, width: 4 ft, count: 2}|- {id: P04, from: 18 ft 2 in, width: 4 ft, count: 2}   # behind a post",
			"set panes[P01].count to 2, 2 panes beside it move back by 4 ft"},
		{`{"do":"set","path":"panes[P05].material","value":"tempered"}`, post,
			"- {id: P04, from: 22 ft 2 in, width: 4 ft}   # behind a post|- {id: P05, width: 4 ft, material: tempered}",
			"set panes[P05].material to tempered"},
		{`{"do":"remove","path":"panes[P02]"}`, first + "|" + post,
			"- {id: P01, from: 10 ft, width: 4 ft}|- {id: P03, width: 4 ft}|- {id: P04, from: 18 ft 2 in, width: 4 ft, count: 2}   # behind a post",
			"remove panes[P02], 3 panes beside it move back by 4 ft"},
		{`{"do":"apart","path":"panes[P01]"},{"do":"set","path":"panes[P01].width","value":"3 ft"}`, first + "|" + post,
			"- {id: P01, from: 10 ft, width: 3 ft}|- {id: P02, width: 4 ft, count: 2}|- {id: P04, from: 21 ft 2 in, width: 4 ft, count: 2}   # behind a post",
			"give P01 a line of its own; set panes[P01].width to 3 ft, 4 panes beside it move back by 12 in"},
		{`{"do":"set","path":"panes[P06].width","value":"5 ft"}`, "- {id: P06, from: 60 ft, width: 4 ft}   # behind open boards",
			"- {id: P06, from: 60 ft, width: 5 ft}   # behind open boards", "set panes[P06].width to 5 ft"},
	} {
		next, what := apply(t, doc, c.edits)
		gone, come := lineChanges(schedule, string(next.Bytes()))
		if gone != c.gone || come != c.come || what != c.what {
			t.Errorf("%s:\n gone %q\n come %q\n what %q", c.edits, gone, come, what)
		}
	}
	if _, _, err := (edit.Editor{}).Apply(doc, []edit.Edit{{Do: edit.Set, Path: "panes[P09].width", Value: edit.One("5 ft")}}); err == nil || !strings.Contains(err.Error(), "no pane \"P09\"") {
		t.Errorf("a pane that is not there: %v", err)
	}
}
