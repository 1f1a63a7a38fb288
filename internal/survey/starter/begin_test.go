package starter_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/survey/starter"
)

// The sentence about panes, as people write it.
func TestReadWish(t *testing.T) {
	for text, want := range map[string]string{
		"": "0 0",
		"126 panes of 4 ft, 6 ft at the ends, gates at 20 ft and 180 ft": "126 1.2192 ends 1.8288 | 6.096/0 54.864/0",
		"panes of 1.2 m; 1.5 m in the corners, a gate of 3 m at 40 m.":   "0 1.2 corners 1.5 | 40/3",
		"4 ft":                                     "0 1.2192",
		"130 panes":                                "130 0",
		"120 equal panes 1.2 m wide":               "120 1.2",
		"1.2 m, and 900 mm at end A":               "0 1.2 end A 0.9",
		"panes of 5 ft, gates at 10 m, 20 m":       "0 1.524 | 10/0 20/0",
		"Panes of 1.2 m, 1.5 m along the box side": "0 1.2 box side 1.5",
	} {
		w, err := starter.ReadWish(text)
		got := fmt.Sprintf("%d %g", w.Count, w.Width.Metres())
		for _, name := range starter.Stretches() {
			if l := w.At[name]; l > 0 {
				got += fmt.Sprintf(" %s %.5g", name, l.Metres())
			}
		}
		for i, g := range w.Gates {
			if i == 0 {
				got += " |"
			}
			got += fmt.Sprintf(" %.5g/%g", g.At.Metres(), g.Width.Metres())
		}
		if err != nil || got != want {
			t.Errorf("%q: %s, %v; expected %s", text, got, err, want)
		}
	}
	for text, says := range map[string]string{
		"126 windows":            `part 1, "126 windows": not understood; write as in "126 panes of 4 ft`,
		"panes of 4":             "a bare number",
		"4 ft, 9 km at the ends": `part 2`,
		"0 panes":                "write a number from 1",
		"gates at noon":          `part 1, "gates at noon": length "noon"`,
	} {
		if _, err := starter.ReadWish(text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v", text, err)
		}
	}
}

func narrow(t *testing.T) starter.Layout {
	t.Helper()
	l, err := starter.Layout{Name: "Hall: two", Place: "Somewhere", Units: unit.Metric, Pane: 1.2}.OfSize(rink.Dimensions{Length: 60, Width: 26}, "")
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// A rink of 60 x 26 m with panes by a sentence keeps the rules; what was said and
// could not be done is told.
func TestBeginBySentence(t *testing.T) {
	l := narrow(t)
	l.Benches = starter.Opposite
	var err error
	if l.Wish, err = starter.ReadWish("126 panes of 1.2 m, 1.8 m at the ends, gates at 41.4 m"); err != nil {
		t.Fatal(err)
	}
	text, a, err := starter.Begin(l)
	if err != nil {
		t.Fatal(err)
	}
	if rep := commonPractice(t).Check(a); rep.Verdict != rules.Pass || !strings.Contains(strings.Join(rep.Notes, " "), "are guessed") {
		t.Errorf("%s, %q", rep.Verdict, rep.Notes)
	}
	for _, line := range []string{`name: "Hall: two"`, "source: guess", "count: 9", "gate: gate}", "id: gate-1, kind: gate", "corner-radius: 7.4 m"} {
		if !strings.Contains(string(text), line) {
			t.Errorf("no %q in the file", line)
		}
	}
	whole(t, a, unit.Metric)
	at := func(id string) float64 {
		for _, z := range a.Zones {
			if z.ID == id {
				return a.Rink.Point(z.From).Y
			}
		}
		return 0
	}
	if at("home-bench") >= 0 || at("guest-bench") <= 0 {
		t.Errorf("the benches stand at y %g and %g", at("home-bench"), at("guest-bench"))
	}
	if notes := strings.Join(l.Notes(a), "\n"); !strings.Contains(notes, "You said 126 panes") || !strings.Contains(notes, "2023/24, 1.2") || !strings.Contains(notes, "opposite") {
		t.Errorf("%s", notes)
	}
	rep := starter.Missing(a)
	if len(rep.Origins) != 5 || rep.Origins[3].Guess != len(a.Panes) || len(rep.Guesses) != 5 || len(rep.Doubts) != 0 {
		t.Errorf("%+v, %d guesses, %v", rep.Origins, len(rep.Guesses), rep.Doubts)
	}
	l.Wish.Gates = []starter.Gate{{At: 5}}
	if _, _, err := starter.Begin(l); err == nil || !strings.Contains(err.Error(), "stands in home-bench") {
		t.Errorf("%v", err)
	}
}

// A contractor's list is taken as it is, its source a drawing.
func TestBeginByList(t *testing.T) {
	l := narrow(t)
	var err error
	l.List, err = starter.ReadList("panes.csv", strings.NewReader("\ufeffid;Width (mm);count;gate;material\nN1;1200;10;;\nN11;900;;team;Tempered\n;1.1 m;2;;\n"))
	if err != nil {
		t.Fatal(err)
	}
	text, a, err := starter.Begin(l)
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Panes) != 13 || a.Panes[10].Gate != "team" || a.Source("panes[N3].width") != arena.Drawing {
		t.Errorf("%d panes\n%s", len(a.Panes), text)
	}
	for _, line := range []string{"- {id: N1, from: 0 m, width: 1200 mm, count: 10, source: drawing}", "- {id: N11, width: 900 mm, material: tempered, gate: team, source: drawing}", "- {id: L003, width: 1.1 m, count: 2, source: drawing}"} {
		if !strings.Contains(string(text), line) {
			t.Errorf("no %s in\n%s", line, text)
		}
	}
	for csv, says := range map[string]string{
		"":                                  "panes.csv:1: empty; the first line names the columns",
		"id,width\n":                        "no pane below the line",
		"id,breadth\nP1,4 ft\n":             "panes.csv:1:4: breadth: no such column; write id,",
		"id,height\nP1,4 ft\n":              "panes.csv:1: no column width",
		"width,width mm\n1,2\n":             "panes.csv:1:7: width: named twice",
		"width ells\n1\n":                   "no unit of length",
		"id,width\nP1,4 ft\nP2,48\n":        `panes.csv:3:4: width: length "48": a bare number`,
		"id,width\nP1,\n":                   "panes.csv:2:4: width: is missing",
		"id,width\nP1,4 ft\nP1,4 ft":        `panes.csv:3:1: id: "P1" is the id of an earlier pane`,
		"id,width,material\nP1,4 ft,wood\n": "panes.csv:2:9: material: \"wood\"; write acrylic",
		"id,width\nP1,4 ft,5\n":             "panes.csv:2:1: ",
		"width mm,count\n1200,many":         "panes.csv:2:6: count:",
	} {
		if _, err := starter.ReadList("panes.csv", strings.NewReader(csv)); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v", csv, err)
		}
	}
	for csv, says := range map[string]string{
		"width mm,count\n1200,140\n":                  "line 2: pane L001 ends",
		"id,from,width\nP1,0 m,1.2 m\nP2,1 m,1.2 m\n": "line 3: pane P2 starts at 1 m, 200 mm before the one above it ends",
	} {
		if l.List, err = starter.ReadList("panes.csv", strings.NewReader(csv)); err != nil {
			t.Fatal(err)
		}
		if _, _, err := starter.Begin(l); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v", csv, err)
		}
	}
}

// What was likely mistyped is told with its value and a cure.
func TestDoubts(t *testing.T) {
	const text = `rinkpane: arena 1
name: Slips
units: imperial
rink: {standard: north-american}
boards: {height: 4.2 in}
glass: {height: 6 ft, thickness: 5 in}
panes: [{id: P1, from: 40 ft, width: 4 ft, count: 3}]
zones:
  - {id: short, kind: bench, from: 10 ft, to: 148 in}
  - {id: box, kind: penalty-box, from: 11 ft, to: 20 ft}
  - {id: round, kind: gate, from: 60 ft, to: 50 ft}
light:
  readings:
    - {x: 0 ft, y: 0 ft, light: 1100 lx}
    - {x: 9 ft, y: 0 ft, light: 110 lx}
    - {x: 0 ft, y: 9 ft, light: 1000 lx}
`
	read := func(text string) []string {
		d, err := arena.Read("slips.yaml", strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		a, err := d.Check()
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, d := range starter.Missing(a).Doubts {
			out = append(out, d.Part+" "+d.Of+": "+d.Says.In(a.Units)+" -> "+d.Cure.In(a.Units))
		}
		return out
	}
	got := read(strings.Replace(strings.Replace(text, "height: 4.2 in", "height: 20 in", 1), "thickness: 5 in", "thickness: 2 in", 1))
	for _, want := range []string{
		"boards : the top of the boards above the ice, 20 in; 35 7/16 in to",
		"panes P1: a thickness of 2 in;",
		"zones short: a bench only 28 in long; 13 ft",
		"was 28 ft meant, and feet written as inches?",
		"zones box: it reaches 16 in into short (bench) -> let one end where the other begins",
		"zones round: a gate ", "exchange from and to",
		"light #2: a reading of 110 lx; the middle one is 1000 lx",
	} {
		if !strings.Contains(strings.Join(got, "\n"), want) {
			t.Errorf("no %q among\n%s", want, strings.Join(got, "\n"))
		}
	}
	across := read(strings.NewReplacer("height: 4.2 in", "height: 42 in", "thickness: 5 in", "thickness: 5/8 in", "from: 10 ft, to: 148 in", "from: 250 ft, to: 278 ft").Replace(text))
	if !strings.Contains(strings.Join(across, "\n"), "zones short: the benches stand on the box side") {
		t.Errorf("%s", strings.Join(across, "\n"))
	}
}
