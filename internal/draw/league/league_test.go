package league_test

import (
	"bytes"
	"fmt"
	"testing"

	"example.org/rinkpane/internal/decide/league"
	drawn "example.org/rinkpane/internal/draw/league"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// TestEachArenaIsInTheOutline finds each arena by the reader's outline, also where several
// stand on one page.
func TestEachArenaIsInTheOutline(t *testing.T) {
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	var l league.League
	for i := range 5 {
		a.Name = fmt.Sprintf("Hall %d", i)
		l.Rows = append(l.Rows, league.Row{File: "hall.yaml", Arena: unit.Known(a), Answer: unit.Known(league.Answer{Value: 0.5})})
	}
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	data, pages, err := drawn.Book{League: l, Title: "Halls", Paper: paper}.PDF(t.Context())
	if err != nil || pages >= len(l.Rows) {
		t.Fatalf("%d pages, %v", pages, err)
	}
	for _, r := range l.Rows {
		if n := bytes.Count(data, []byte("<</Title ("+r.Name()+")")); n != 1 {
			t.Errorf("%s stands %d times in the outline", r.Name(), n)
		}
	}
}
