package choosing

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// What the page for the manager prints of the arena's own words is asked about,
// letter by letter: a name in a writing that its fonts lack is told.
func TestLettersThatThePageForTheManagerLacks(t *testing.T) {
	look := func(name, hole string) string {
		a := arena.Arena{Name: name, Place: "Quillhaven", Holes: []glass.Hole{{ID: hole}}}
		return sheet.Lacking(lettered(shown{of: choose.Answer{Arena: a}})...).String()
	}
	if said := look("Jäähalli Łódź", "B1"); said != "" {
		t.Errorf("nothing is lacking: %s", said)
	}
	for _, said := range []string{look("冰场", "B1"), look("Tidewater", "孔1")} {
		if said == "" || !strings.ContainsAny(said, "冰孔") {
			t.Errorf("the lacking letters are not told: %q", said)
		}
	}
}
