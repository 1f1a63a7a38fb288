package arena

import (
	"strings"
	"testing"
)

const rows = `rinkpane: arena 1
name: Rows
units: imperial
rink: {standard: north-american}
boards: {height: 42 in}
glass: {height: 6 ft}
panes:
  # the first row
  - {id: P007, from: 10 ft, width: 4 ft, count: 5, gate: x}   # five
  - id: side1
    width: 3 ft
    count: 2
  - {id: last, width: 1 ft}
`

func readRows(t *testing.T, text string) (*Document, Arena) {
	t.Helper()
	d, err := Read("rows.yaml", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	a, err := d.Check()
	if err != nil {
		t.Fatal(err)
	}
	return d, a
}

// A line with a count stands for so many panes side by side, each with its own id.
func TestARowIsSoManyPanes(t *testing.T) {
	_, a := readRows(t, rows)
	var got []string
	for _, p := range a.Panes {
		got = append(got, p.ID+" "+p.From.Measured(a.Units).Exact(a.Units))
	}
	want := "P007 10 ft|P008 14 ft|P009 18 ft|P010 22 ft|P011 26 ft|side1 30 ft|side2 33 ft|last 36 ft"
	if s := strings.Join(got, "|"); s != want {
		t.Errorf("%s, expected %s", s, want)
	}
}

// A pane set apart changes no pane, whichever of its row it is; comments stay.
func TestSettingApartChangesNoPane(t *testing.T) {
	d, was := readRows(t, rows)
	for _, c := range []struct{ id, lines string }{
		{"P007", "  - {id: P007, from: 10 ft, width: 4 ft, gate: x}   # five\n  - {id: P008, width: 4 ft, count: 4, gate: x}\n"},
		{"P008", "  - {id: P007, from: 10 ft, width: 4 ft, gate: x}   # five\n  - {id: P008, width: 4 ft, gate: x}\n  - {id: P009, width: 4 ft, count: 3, gate: x}\n"},
		{"P009", "count: 2, gate: x}   # five\n  - {id: P009, width: 4 ft, gate: x}\n  - {id: P010, width: 4 ft, count: 2, gate: x}\n"},
		{"P011", "count: 4, gate: x}   # five\n  - {id: P011, width: 4 ft, gate: x}\n  - id: side1\n"},
		{"side2", "  - id: side1\n    width: 3 ft\n  - id: side2\n    width: 3 ft\n  - {id: last"},
		{"last", "  - {id: last, width: 1 ft}\n"},
	} {
		next, err := d.Apart(c.id)
		if err != nil {
			t.Errorf("%s: %v", c.id, err)
			continue
		}
		is, err := next.Check()
		if err != nil || len(is.Panes) != len(was.Panes) {
			t.Errorf("%s: %v, %d panes", c.id, err, len(is.Panes))
			continue
		}
		for i, p := range is.Panes {
			if d := p.From - was.Panes[i].From; p.ID != was.Panes[i].ID || p.Width != was.Panes[i].Width || d > 1e-9 || d < -1e-9 {
				t.Errorf("%s: %+v became %+v", c.id, was.Panes[i], p)
			}
		}
		if !strings.Contains(string(next.Bytes()), c.lines) || !next.Has("panes["+c.id+"]") {
			t.Errorf("%s:\n%s", c.id, next.Bytes())
		}
	}
	if _, err := d.Apart("P012"); err == nil || !strings.Contains(err.Error(), "no pane") {
		t.Errorf("a pane that is not there: %v", err)
	}
}

// What a row cannot be is told with place and cure.
func TestRowsThatCannotBe(t *testing.T) {
	for _, c := range []struct{ old, new, says string }{
		{"count: 5", "count: 0", `panes[P007].count: "0"; write a whole number from 1 to 2000`},
		{"count: 5", "count: five", "write a whole number"},
		{"{id: last, width: 1 ft}", "{id: last, width: 1 ft, count: 2}", `panes[last].id: "last" ends in no number for the row to count on from; write one, as in last1`},
		{"id: side1", "id: P010", "panes[P010].id: \"P010\" is the id of an earlier one"},
		{"{id: last, width: 1 ft}", "{id: side2, width: 1 ft}", "is the id of an earlier one"},
		{"count: 5", "count: 500", "ends "},
		{"count: 2", "count: 1999", "makes 2004 panes in all; at most 2000 are read"},
	} {
		if strings.Count(rows, c.old) != 1 {
			t.Fatalf("%q stands there %d times", c.old, strings.Count(rows, c.old))
		}
		d, err := Read("rows.yaml", strings.NewReader(strings.Replace(rows, c.old, c.new, 1)))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := d.Check(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", c.new, err)
		}
	}
}

// What a rink says of its games is what the sampler plays; benches come from the
// zones whose names begin with home and guest.
func TestGamesOfTheRink(t *testing.T) {
	_, a := readRows(t, rows+`zones:
  - {id: home-bench, kind: bench, from: 50 ft, to: 70 ft}
  - {id: guest-bench, kind: bench, from: 240 ft, to: 270 ft}
game: {officials: 3, benches: opposite}
`)
	g := a.Playing().Game
	home, known := g.Home.Get()
	guests, too := g.Guests.Get()
	if !known || !too || g.Officials != 3 || !g.Opposite || g.CrossIce || home.Half < 3 || home.Half > 3.1 || home.Middle < 18 || guests.Middle > 5 {
		t.Errorf("%+v, home %+v, guests %+v", g, home, guests)
	}
	if _, bare := readRows(t, rows); bare.Playing().Game != (Arena{}).Game {
		t.Error("a rink that says nothing has games of its own")
	}
}
