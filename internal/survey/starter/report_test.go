package starter_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/survey/starter"
)

// bare is a sound arena that knows as little as one can.
const bare = `rinkpane: arena 1
name: Bare
units: metric
rink: {length: 40 m, width: 20 m, corner-radius: 6 m}
boards: {height: 1.1 m}
panes:
  - {id: P1, from: 10 m, width: 2 m, height: 1.5 m}
  - {id: P2, from: 12.1 m, width: 2 m, height: 1.5 m}
  - {id: P3, from: 90 m, width: 2 m, height: 1.5 m}
holes:
  - {id: H1, station: 11 m, height: 1.5 m, size: 140 x 114 mm}
  - {id: H2, station: 13 m, height: 1.5 m, size: 140 x 114 mm, state: off}
low-windows:
  - {id: W1, station: 30 m, height: 0.5 m, size: 300 x 200 mm, kind: panel}
  - {id: W2, station: 31 m, height: 0.5 m, size: 300 x 200 mm, kind: opening}
`

func read(t testing.TB, text string) arena.Arena {
	t.Helper()
	d, err := arena.Read("t.yaml", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	a, err := d.Check()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func has(gaps []starter.Gap, part, field string) (starter.Gap, bool) {
	for _, g := range gaps {
		if g.Part == part && g.Field == field {
			return g, true
		}
	}
	return starter.Gap{}, false
}

// Each gap closes when its number is added, and only that one.
func TestEachGapCloses(t *testing.T) {
	rep := starter.Missing(read(t, bare))
	cases := []struct{ part, field, of, holes, old, new string }{
		{"rink", "markings", "", "", "corner-radius: 6 m}", "corner-radius: 6 m, markings: {goal-line: 4 m}}"},
		{"boards", "ledge", "", "", "height: 1.1 m}", "height: 1.1 m, ledge: 200 mm}"},
		{"boards", "setback", "", "", "height: 1.1 m}", "height: 1.1 m, setback: 20 mm}"},
		{"panes", "thickness", "P1 P2 P3", "H1", "panes:", "glass: {thickness: 12 mm}\npanes:"},
		{"panes", "material", "P1 P2 P3", "H1", "panes:", "glass: {material: acrylic}\npanes:"},
		{"holes", "corner-radius", "H1", "", "size: 140 x 114 mm}\n  - {id: H2", "size: 140 x 114 mm, corner-radius: 9 mm}\n  - {id: H2"},
		{"holes", "rounding", "H1", "", "size: 140 x 114 mm}\n  - {id: H2", "size: 140 x 114 mm, rounding: 2 mm}\n  - {id: H2"},
		{"holes", "cover", "H1", "", "size: 140 x 114 mm}\n  - {id: H2", "size: 140 x 114 mm, cover: none}\n  - {id: H2"},
		{"low-windows", "thickness", "W1", "", "kind: panel", "kind: panel, thickness: 10 mm"},
		{"low-windows", "material", "W1", "", "kind: panel", "kind: panel, material: acrylic"},
		{"low-windows", "rounding", "W2", "", "kind: opening", "kind: opening, rounding: 2 mm"},
		{"low-windows", "cover", "W2", "", "kind: opening", "kind: opening, cover: none"},
		{"zones", "bench", "", "", "holes:", "zones: [{id: z, kind: bench, from: 1 m, to: 5 m}]\nholes:"},
		{"zones", "penalty-box", "", "", "holes:", "zones: [{id: z, kind: penalty-box, from: 1 m, to: 5 m}]\nholes:"},
		{"zones", "gate", "", "", "holes:", "zones: [{id: z, kind: gate, from: 1 m, to: 5 m}]\nholes:"},
		{"light", "mains", "", "", "holes:", "light: {mains: 50 Hz}\nholes:"},
		{"light", "readings", "", "", "holes:", "light: {readings: [" + strings.Repeat("{x: 0 m, y: 0 m, light: 900}, ", 9) + "]}\nholes:"},
	}
	if len(rep.Gaps) != len(cases) {
		t.Errorf("%d gaps, expected %d", len(rep.Gaps), len(cases))
	}
	for _, c := range cases {
		g, there := has(rep.Gaps, c.part, c.field)
		if !there || strings.Join(g.Of, " ") != c.of || strings.Join(g.Holes, " ") != c.holes || g.Costs == "" || g.Cure == "" {
			t.Errorf("%s %s: %v %+v", c.part, c.field, there, g)
		}
		if !strings.Contains(bare, c.old) {
			t.Fatalf("%q is not in the bare arena", c.old)
		}
		better := starter.Missing(read(t, strings.Replace(bare, c.old, c.new, 1)))
		if _, still := has(better.Gaps, c.part, c.field); still || len(better.Gaps) != len(rep.Gaps)-1 {
			t.Errorf("%s %s: told, yet %d gaps stay of %d", c.part, c.field, len(better.Gaps), len(rep.Gaps))
		}
	}
}

func TestCoverGaps(t *testing.T) {
	rep := starter.Missing(read(t, strings.Replace(bare, "size: 140 x 114 mm}\n  - {id: H2", "size: 140 x 114 mm, cover: yes}\n  - {id: H2", 1)))
	for _, field := range []string{"cover.material", "cover.tether"} {
		if g, ok := has(rep.Gaps, "holes", field); !ok || strings.Join(g.Of, " ") != "H1" {
			t.Errorf("%s: %+v", field, g)
		}
	}
}

func TestUnsurveyedBoards(t *testing.T) {
	a := read(t, bare)
	per := a.Rink.Perimeter()
	tell := func(a arena.Arena) string {
		var parts []string
		for _, s := range starter.Missing(a).Unsurveyed {
			parts = append(parts, fmt.Sprintf("%.2f-%.2f", s.From.Metres(), s.To.Metres()))
		}
		return strings.Join(parts, " ")
	}
	around := fmt.Sprintf("14.10-90.00 92.00-%.2f", (per + 10).Metres())
	if got := tell(a); got != around {
		t.Errorf("got %s, want %s: the 100 mm between P1 and P2 are a post", got, around)
	}
	// Before a bench no glass is due; this one passes the red line.
	benches := read(t, bare+"zones: [{id: z, kind: bench, from: 105 m, to: 8 m}]\n")
	want := fmt.Sprintf("14.10-90.00 92.00-105.00 %.2f-%.2f", (per + 8).Metres(), (per + 10).Metres())
	if got := tell(benches); got != want {
		t.Errorf("with a bench: got %s, want %s", got, want)
	}
	if rep := starter.Missing(benches); max(rep.Open-(per-97), per-97-rep.Open) > 1e-9 {
		t.Errorf("open before the bench: %v, want %v", rep.Open, per-97)
	}
	if got := starter.Missing(read(t, bare[:strings.Index(bare, "panes:")])); len(got.Unsurveyed) != 1 || got.Unsurveyed[0].Length() != per {
		t.Errorf("without panes: %+v", got.Unsurveyed)
	}
}

func ExampleMissing() {
	d, err := arena.Read("my.yaml", strings.NewReader(`rinkpane: arena 1
name: Pond
units: metric
rink: {standard: international}
boards: {height: 107 cm, ledge: 18 cm, setback: 3 cm}
light: {mains: 50 Hz}
zones:
  - {id: bench, kind: bench, from: 1 m, to: 11 m}
  - {id: box, kind: penalty-box, from: 76 m, to: 80 m}
  - {id: ice, kind: gate, from: 122 m, to: 126 m}
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := d.Check()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, g := range starter.Missing(a).Gaps {
		fmt.Println(g.Part, g.Field+":", g.Costs)
	}
	// Output:
	// light readings: no light table: shutter, stop and ISO are not told for any hole
}

func ExampleBegin() {
	r, _ := rink.Standard("north-american")
	text, a, err := starter.Begin(starter.Layout{Rink: r, Standard: "north-american", Pane: 4 * unit.Foot, Units: unit.Imperial})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strings.SplitN(string(text), "\n", 2)[0])
	fmt.Println(len(a.Panes), "panes,", len(a.Holes), "planned holes")
	// Output:
	// rinkpane: arena 1
	// 127 panes, 6 planned holes
}
