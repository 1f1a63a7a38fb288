package card

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// What the cards say, whichever way they are shown.
func TestCardsSay(t *testing.T) {
	var out strings.Builder
	for _, c := range cards(t, "nov-07", map[string]string{"B2": "B2-1"}) {
		gameLine, who := c.Head()
		fmt.Fprintf(&out, "%s | %s\n", gameLine, who)
		for _, turn := range c.Turns {
			fmt.Fprintf(&out, "  %d %s: %q, %s attack here, mount %q, then %q; %s\n", turn.Period, turn.At.Format("15:04"), turn.Hole, turn.Attacks, turn.Lens.ID, turn.Next, turn.Why.In(unit.Imperial))
		}
		for _, p := range c.Posts {
			fmt.Fprintln(&out, "  "+p.Mount())
		}
		for _, lines := range [][]string{c.Ends(-1), c.Ends(+1), c.Duties(unit.Imperial), c.Nexts(), strings.Split(strings.TrimSpace(c.Exposure(unit.Imperial).Text()), "\n")} {
			for _, s := range lines {
				fmt.Fprintln(&out, "  "+s)
			}
		}
		for _, s := range c.Assumed() {
			fmt.Fprintln(&out, "  "+s.In(unit.Imperial))
		}
	}
	golden(t, "cards.txt", out.String())
}

// Everything on a card can be read: no text meets another or leaves the page, with four
// periods and two lenses too, and the last line of the duties is there.
func TestCardsHaveRoom(t *testing.T) {
	met := 0
	for _, id := range []string{"nov-07", "nov-21"} {
		for _, c := range cards(t, id, nil) {
			for _, dark := range []bool{false, true} {
				met++
				d := c.Drawing(unit.Imperial, dark)
				boxes := d.TextBoxes()
				for _, pair := range sheet.Collisions(boxes, 0.05) {
					t.Errorf("%s, %s: %q meets %q", id, c.Person.ID, pair[0].S, pair[1].S)
				}
				last := false
				for _, b := range boxes {
					last = last || strings.Contains(b.S, "play.")
					if r := b.Box; r.X < 0 || r.Y < 0 || r.X+r.W > d.W || r.Y+r.H > d.H {
						t.Errorf("%s, %s: %q leaves the page", id, c.Person.ID, b.S)
					}
				}
				if !last {
					t.Errorf("%s, %s: the duties are cut short", id, c.Person.ID)
				}
			}
		}
	}
	if met < 12 {
		t.Errorf("met %d cards only", met)
	}
}

// The PDF is read back by poppler: a page a card for a phone, four on a sheet of paper.
func TestCardsReadBack(t *testing.T) {
	a4, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	all := cards(t, "nov-07", nil)
	for name, c := range map[string]struct {
		o     Options
		pages int
		size  string
	}{"phone": {Options{Dark: true}, len(all), "297.638 x 419.528 pts"}, "paper": {Options{Paper: a4}, 1, "595.276 x 841.89 pts (A4)"}} {
		data, err := PDF(t.Context(), all, c.o)
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(t.TempDir(), name+".pdf")
		if err := os.WriteFile(file, data, 0o666); err != nil {
			t.Fatal(err)
		}
		info, err := exec.CommandContext(t.Context(), "pdfinfo", file).CombinedOutput()
		if err != nil {
			t.Fatalf("pdfinfo: %v: %s", err, info)
		}
		for _, want := range []string{fmt.Sprintf("Pages:           %d\n", c.pages), "Page size:       " + c.size} {
			if !strings.Contains(string(info), want) {
				t.Errorf("%s: no %q in\n%s", name, want, info)
			}
		}
		text, err := exec.CommandContext(t.Context(), "pdftotext", "-layout", file, "-").CombinedOutput()
		if err != nil {
			t.Fatalf("pdftotext: %v: %s", err, text)
		}
		for _, want := range []string{"Cleo Marsh, Herons club", "attack here", "Keep clear behind", "no seat"} {
			if !strings.Contains(string(text), want) {
				t.Errorf("%s: %q cannot be read in\n%s", name, want, text)
			}
		}
	}
	if _, err := PDF(t.Context(), nil, Options{}); err == nil {
		t.Error("a PDF without a card")
	}
}

func TestAssumedEndsAreSaid(t *testing.T) {
	c := cards(t, "nov-07", nil)[0]
	c.Game.EndsAssumed = true
	if got := c.Assumed(); len(got) == 0 || got[0].In(unit.Metric) != "Ends as the arena says; the game says none." {
		t.Errorf("said %v", got)
	}
}

// TestWhoDidNotComeHasNoCard gives a seat to somebody who is known to have stayed away.
func TestWhoDidNotComeHasNoCard(t *testing.T) {
	r := rink(t)
	g, ok := r.season.Game("nov-07")
	if !ok {
		t.Fatal("the example has no such game")
	}
	seats := append(slices.Clone(given), seat.Seat{Period: 1, Hole: "A4", Who: "finn"})
	all, err := r.Cards(g, seats, nil)
	if err != nil || len(all) == 0 {
		t.Fatalf("%d cards, %v", len(all), err)
	}
	if slices.ContainsFunc(all, func(c Card) bool { return c.Person.ID == "finn" }) {
		t.Error("finn did not come and has a card")
	}
	for who, want := range map[string]bool{"finn": false, "cleo": true} {
		if _, got, err := r.Card(g, seats, nil, who); got != want || err != nil {
			t.Errorf("%s has a card: %v, %v", who, got, err)
		}
	}
}
