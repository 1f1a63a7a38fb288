package lookback_test

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"os"
	"path"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/draw/lookback"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/words"
)

var update = flag.Bool("update", false, "write the golden file anew")

// TestReportGolden tells an invented game as the page and the paper do: every sentence and
// table, and every text of the plots.
func TestReportGolden(t *testing.T) {
	const name = "games/quillhaven.yaml"
	text, err := examples.Games.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	season, err := game.Read(name, bytes.NewReader(text), func(p string) (io.ReadCloser, error) { return examples.Files.Open(path.Join("games", p)) })
	if err != nil {
		t.Fatal(err)
	}
	g, ok := season.Game("nov-07")
	if !ok {
		t.Fatal("the example has no such game")
	}
	by, err := season.Seated(t.Context(), g.ID)
	if err != nil {
		t.Fatal(err)
	}
	q := recap.About(season, g)
	q.Evening = q.Evening.Seated(season, by)
	q.Frames = recap.Invented(q.Evening, season.Arena, season.Kit, 1).Frames
	for _, s := range q.Evening.Seats {
		q.Owners[recap.InventedBody+s.Who] = recap.Owner{Who: s.Who}
	}
	q.Options = recap.Options{KeptFrom: 1}
	a, err := recap.Ask(t.Context(), q)
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	out.WriteString(words.RecapText(a, unit.Imperial))
	paper, err := sheet.ParsePaper("letter")
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range (lookback.Report{Answer: a, Units: unit.Imperial, Paper: paper}).Plots(178) {
		fmt.Fprintf(&out, "\n%s\n", d.Title)
		for _, b := range d.TextBoxes() {
			fmt.Fprintf(&out, "  %s\n", b.S)
		}
	}
	const file = "testdata/report.golden"
	if *update {
		if err := os.WriteFile(file, []byte(out.String()), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if out.String() != string(want) {
		t.Errorf("the report changed; read it, and if it is good run go test ./internal/draw/lookback -update. Got:\n%s", out.String())
	}
}
