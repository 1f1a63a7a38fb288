package card

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// season reads the example and prepares its cards, once for all tests.
func season(t *testing.T) (game.Season, Rink) {
	t.Helper()
	const name = "games/quillhaven.yaml"
	text, err := examples.Games.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	s, err := game.Read(name, bytes.NewReader(text), func(p string) (io.ReadCloser, error) {
		return examples.Files.Open(path.Join("games", p))
	})
	if err != nil {
		t.Fatal(err)
	}
	r, err := Prepare(t.Context(), s)
	if err != nil {
		t.Fatal(err)
	}
	return s, r
}

// given are seats of the first game.
var given = []seat.Seat{
	{Period: 1, Hole: "B1", Who: "tv2"}, {Period: 2, Hole: "B1", Who: "tv2"}, {Period: 3, Hole: "B1", Who: "tv2"},
	{Period: 1, Hole: "B2", Who: "cleo"}, {Period: 2, Hole: "A3", Who: "cleo"}, {Period: 3, Hole: "B2", Who: "cleo"},
	{Period: 1, Hole: "A3", Who: "dov"}, {Period: 2, Hole: "B2", Who: "dov"}, {Period: 3, Hole: "A3", Who: "dov"},
	{Period: 1, Hole: "B3", Who: "ada"}, {Period: 3, Hole: "B3", Who: "ada"},
}

func TestCards(t *testing.T) {
	s, r := season(t)
	g, _ := s.Game("nov-07")
	cards, err := r.Cards(g, given, map[string]string{"B2": "B2-1"})
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	for _, c := range cards {
		gameLine, who := c.Head()
		fmt.Fprintln(&out, gameLine+" | "+who)
		for _, turn := range c.Turns {
			fmt.Fprintf(&out, "  %d %s %s %s %s\n", turn.Period, turn.Hole, turn.Attacks, turn.Lens.ID, turn.Next)
		}
		for _, p := range c.Posts {
			fmt.Fprintln(&out, "  "+p.Mount())
		}
		for _, d := range append(c.Duties(unit.Imperial), c.Nexts()...) {
			fmt.Fprintln(&out, "  "+d)
		}
	}
	t.Log(out.String())
	if dir := os.Getenv("CARDS"); dir != "" {
		for name, o := range map[string]Options{"phone": {}, "dark": {Dark: true}} {
			data, err := PDF(t.Context(), cards, o)
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(dir+"/"+name+".pdf", data, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

func TestSheets(t *testing.T) {
	s, r := season(t)
	g, _ := s.Game("nov-07")
	cards, err := r.Cards(g, given, nil)
	if err != nil {
		t.Fatal(err)
	}
	a4, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	wall, err := WallPDF(t.Context(), Wall{s, g, given}, Options{Paper: a4, Creator: "test"})
	if err != nil {
		t.Fatal(err)
	}
	four, err := PDF(t.Context(), cards, Options{Paper: a4, Creator: "test"})
	if err != nil {
		t.Fatal(err)
	}
	cleo, _ := s.Person("cleo")
	text := Calendar(cleo, cards, time.Date(2026, 11, 1, 12, 0, 0, 0, time.UTC))
	t.Log(text)
	if dir := os.Getenv("CARDS"); dir != "" {
		os.WriteFile(dir+"/wall.pdf", wall, 0o644)
		os.WriteFile(dir+"/four.pdf", four, 0o644)
	}
}
