package card

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
)

func TestWallSays(t *testing.T) {
	r := rink(t)
	var out strings.Builder
	for _, id := range []string{"nov-07", "nov-21"} {
		g, _ := r.season.Game(id)
		w := Wall{r.season, g, given}
		out.WriteString(w.Table().Text())
		if err := w.Table().CSV(&out); err != nil {
			t.Fatal(err)
		}
		out.WriteString(strings.Join(w.Attacks(), "\n") + "\n" + strings.Join(w.Day(), "\n") + "\n")
	}
	golden(t, "wall.txt", out.String())
}

// The sheet has room for a hole closed in many words and four periods.
func TestWallHasRoom(t *testing.T) {
	r := rink(t)
	g, _ := r.season.Game("nov-21")
	for _, name := range []string{"a4", "letter"} {
		paper, err := sheet.ParsePaper(name)
		if err != nil {
			t.Fatal(err)
		}
		d := Wall{r.season, g, given}.drawing(Options{Paper: paper, Creator: "test"})
		for _, pair := range sheet.Collisions(d.TextBoxes(), 0.05) {
			t.Errorf("%s: %q meets %q", name, pair[0].S, pair[1].S)
		}
		for _, b := range d.TextBoxes() {
			if r := b.Box; r.X < 0 || r.Y < 0 || r.X+r.W > d.W || r.Y+r.H > d.H {
				t.Errorf("%s: %q leaves the page", name, b.S)
			}
		}
	}
}
