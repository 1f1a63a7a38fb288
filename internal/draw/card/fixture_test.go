package card

import (
	"bytes"
	"context"
	"flag"
	"io"
	"os"
	"path"
	"strings"
	"sync"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
)

var update = flag.Bool("update", false, "write the golden files anew")

// golden compares a text with the file that was looked at.
func golden(t *testing.T, name, got string) {
	t.Helper()
	file := path.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s changed; read it, and if it is good run go test ./internal/draw/card -update.\ngot:\n%s\nwant:\n%s", file, got, want)
	}
}

const exampleName = "games/quillhaven.yaml"

// read reads the example with some of its text replaced.
func read(t *testing.T, old, new string) game.Season {
	t.Helper()
	text, err := examples.Games.ReadFile(exampleName)
	if err != nil {
		t.Fatal(err)
	}
	if old != "" && !strings.Contains(string(text), old) {
		t.Fatalf("the example does not say %q", old)
	}
	text = bytes.Replace(text, []byte(old), []byte(new), 1)
	s, err := game.Read(exampleName, bytes.NewReader(text), func(p string) (io.ReadCloser, error) {
		return examples.Files.Open(path.Join("games", p))
	})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// prepared is what the example's cards stand on, made once for all tests.
var prepared sync.Map

func rink(t *testing.T) Rink {
	t.Helper()
	if r, ok := prepared.Load(exampleName); ok {
		return r.(Rink)
	}
	r, err := Prepare(context.Background(), read(t, "", ""))
	if err != nil {
		t.Fatal(err)
	}
	prepared.Store(exampleName, r)
	return r
}

// given are seats of the example's first game.
var given = []seat.Seat{
	{Period: 1, Hole: "B1", Who: "tv2"}, {Period: 2, Hole: "B1", Who: "tv2"}, {Period: 3, Hole: "B1", Who: "tv2"},
	{Period: 1, Hole: "B2", Who: "cleo"}, {Period: 2, Hole: "A3", Who: "cleo"}, {Period: 3, Hole: "B2", Who: "cleo"},
	{Period: 1, Hole: "A3", Who: "dov"}, {Period: 2, Hole: "B2", Who: "dov"}, {Period: 3, Hole: "A3", Who: "dov"},
	{Period: 1, Hole: "B3", Who: "ada"}, {Period: 3, Hole: "B3", Who: "ada"},
}

// cards are those of a game of the example with the given seats.
func cards(t *testing.T, id string, covers map[string]string) []Card {
	t.Helper()
	r := rink(t)
	g, ok := r.season.Game(id)
	if !ok {
		t.Fatalf("no game %s", id)
	}
	out, err := r.Cards(g, given, covers)
	if err != nil {
		t.Fatal(err)
	}
	return out
}
