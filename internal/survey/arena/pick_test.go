package arena

import (
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/survey/glass"
)

// A hole that is turned off is not there to be asked about, and who asks for one
// that is not there is told those that are.
func TestPick(t *testing.T) {
	a := Arena{
		Panes:   []glass.Pane{{ID: "P", Width: 1}},
		Holes:   []glass.Hole{{ID: "H1", Pane: "P"}, {ID: "shut", State: glass.Off}, {ID: "H2", Pane: "P"}},
		Windows: []glass.Window{{ID: "LW", Open: true}, {ID: "panel"}},
	}
	for _, c := range []struct{ asked, got []string }{
		{nil, []string{"H1", "H2"}},
		{[]string{"H2", "LW", "H1"}, []string{"H2", "LW", "H1"}},
	} {
		openings, err := a.Pick(c.asked)
		var got []string
		for _, o := range openings {
			got = append(got, o.Hole.ID)
		}
		if err != nil || !slices.Equal(got, c.got) {
			t.Errorf("asked for %v, got %v, %v", c.asked, got, err)
		}
	}
	for id, want := range map[string]string{
		"shut":    "the hole is turned off in the arena file",
		"nowhere": "no working hole or low window has this id; write H1, H2, LW or panel",
		"":        "no working hole or low window has this id; write H1, H2, LW or panel",
		"panel":   "this low window is a clear panel, through which no lens, hand or puck passes; frame draws the picture through it",
	} {
		if _, err := a.Pick([]string{"H1", id}); err == nil || !strings.HasSuffix(err.Error(), want) {
			t.Errorf("asked for %q: %v", id, err)
		}
	}
	if got := a.Openings(); !slices.Equal(got, []string{"H1", "H2", "LW", "panel"}) {
		t.Errorf("openings %v", got)
	}
}
