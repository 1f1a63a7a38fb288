package book

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/words"
)

// No word of any page is set much smaller than a caption, pictures included;
// however long the rink's name, every page tells the plan's whole revision.
func TestEveryPageCanBeRead(t *testing.T) {
	long := strings.Replace(example(t, "brennholm"), "\nplace: Brennholm", "\nplace: By-the-very-long-river-under-the-very-high-hill, third rink from the left", 1)
	c := content(t, long, "a4", unit.Metric)
	least := (sheet.Regular.CapHeight(sheet.SizeSmall) + sheet.Regular.Descent(sheet.SizeSmall)) * 0.7
	pages := 0
	for _, ch := range chaptersOf(t, c) {
		for _, d := range ch.pages {
			pages++
			marked := false
			for _, b := range d.TextBoxes() {
				if h := min(b.Box.W, b.Box.H); h < least && len(b.S) > 3 {
					t.Errorf("%s: %q is %.2f mm high, a caption %.2f", d.Title, b.S, h, least)
				}
				marked = marked || strings.Contains(b.S, "plan "+c.Mark)
			}
			if !marked {
				t.Errorf("%s: no plan revision", d.Title)
			}
		}
	}
	if pages < 20 {
		t.Fatalf("%d pages", pages)
	}
}

func TestGuardInPlainWords(t *testing.T) {
	for perHour, want := range map[float64]string{0: "0", 4.7e-8: "under 0.001", 3.9e-5: "0.039", 0.0042: "4.2", 0.123: "123"} {
		if got := words.PerThousandHours(puck.Passes{PerHour: perHour}); got != want {
			t.Errorf("%g an hour: %q, want %q", perHour, got, want)
		}
	}
	if got := closes(unit.Known(51.4 * unit.Degree)); got != "closes at 51 deg" {
		t.Error(got)
	}
	if got := closes(unit.Maybe[unit.Angle]{}); got != "never opens" {
		t.Error(got)
	}
}
