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
		Holes:   []glass.Hole{{ID: "H1"}, {ID: "shut", State: glass.Off}, {ID: "H2"}},
		Windows: []glass.Window{{ID: "LW"}},
	}
	for _, c := range []struct{ asked, got []string }{
		{nil, []string{"H1", "H2"}},
		{[]string{"H2", "H1"}, []string{"H2", "H1"}},
	} {
		holes, err := a.Pick(c.asked)
		if err != nil || !slices.Equal(idsOf(holes), c.got) {
			t.Errorf("asked for %v, got %v, %v", c.asked, idsOf(holes), err)
		}
	}
	for _, id := range []string{"shut", "nowhere", "LW", ""} {
		if _, err := a.Pick([]string{"H1", id}); err == nil || !strings.HasSuffix(err.Error(), "no working hole has this id; write H1 or H2") {
			t.Errorf("asked for %q: %v", id, err)
		}
	}
	if got := a.Openings(); !slices.Equal(got, []string{"H1", "H2", "LW"}) {
		t.Errorf("openings %v", got)
	}
}
