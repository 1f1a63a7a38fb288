package cut

import (
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

func TestList(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	l, err := p.List(DefaultOptions(), DefaultSpareOptions())
	if err != nil {
		t.Fatal(err)
	}
	work, exist := l.Sums()
	if work.Holes != 4 || work.Covers != 4 || exist != (Sum{}) || len(l.Rows) != 5 || len(l.Panes) != 4 {
		t.Errorf("to make %+v, exist %+v, %d rows, %d kinds", work, exist, len(l.Rows), len(l.Panes))
	}
	if no := l.Rows[4]; no.Job.Hole.ID != "edge" || len(no.Refused) == 0 || no.Work() != "not drawn" {
		t.Errorf("last row %+v", no)
	}
	sum := 0.0
	for _, r := range l.Rows[:4] {
		sum += r.Job.Mass
	}
	if work.MassKG != sum || sum < 100 {
		t.Errorf("mass %g kg, rows %g", work.MassKG, sum)
	}
}

// Twin panes share their spares; a flat pane may be turned round.
func TestTwinsShareSpares(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	h, _ := p.Arena.Hole("flat")
	twin := h
	twin.ID, twin.Pane, twin.Station = "twin", "P5", 80.7
	p.Arena.Holes = append(p.Arena.Holes[:1:1], twin)
	o := DefaultSpareOptions()
	o.BreakRate, o.CoverRate = 1, 0
	l, err := p.List(DefaultOptions(), o)
	if err != nil || len(l.Panes) != 1 || l.Panes[0].InUse() != 2 {
		t.Fatalf("%+v, %v", l.Panes, err)
	}
	// Poisson of mean 2: P(K <= 4) = 0.947, P(K <= 5) = 0.983; covers are never lost.
	if l.Panes[0].Spares != 5 || math.Abs(l.Reached-0.983436) > 1e-6 {
		t.Errorf("%d spares, %.6f sure, want 5", l.Panes[0].Spares, l.Reached)
	}
}

// What is alike to the tolerance of 2 mm is of one kind; a chain of panes, each
// 1.5 mm on, is not, since its ends are 3 mm apart: any two of a kind are alike.
func TestKindsAreAlikeToTheTolerance(t *testing.T) {
	const mm = unit.Millimetre
	for _, c := range []struct {
		name   string
		off    []unit.Length // of the hole from its place in the first pane
		kinds  [][]string
		change func(*glass.Hole)
	}{
		{"1 mm apart", []unit.Length{0, 1 * mm}, [][]string{{"h0", "h1"}}, nil},
		{"2 mm apart", []unit.Length{0, 2 * mm}, [][]string{{"h0", "h1"}}, nil},
		{"2.1 mm apart", []unit.Length{0, 2.1 * mm}, [][]string{{"h0"}, {"h1"}}, nil},
		{"a chain", []unit.Length{0, 1.5 * mm, 3 * mm}, [][]string{{"h0", "h1"}, {"h2"}}, nil},
		{"a chain in another order", []unit.Length{3 * mm, 1.5 * mm, 0}, [][]string{{"h0"}, {"h1", "h2"}}, nil},
		{"half a millimetre larger", []unit.Length{0, 0}, [][]string{{"h0", "h1"}}, func(h *glass.Hole) { h.Size.W += 0.5 * mm }},
		{"0.6 mm larger", []unit.Length{0, 0}, [][]string{{"h0"}, {"h1"}}, func(h *glass.Hole) { h.Size.W += 0.6 * mm }},
	} {
		p := shopPlan(t, unit.Metric)
		h, _ := p.Arena.Hole("flat")
		pane := p.Arena.Panes[0]
		p.Arena.Panes, p.Arena.Holes = nil, nil
		for i, off := range c.off {
			pane.ID, pane.From = fmt.Sprintf("p%d", i), unit.Length(4+2*i)
			k := h
			k.ID, k.Pane, k.Station = fmt.Sprintf("h%d", i), pane.ID, pane.From+0.5+off
			if i > 0 && c.change != nil {
				c.change(&k)
			}
			p.Arena.Panes, p.Arena.Holes = append(p.Arena.Panes, pane), append(p.Arena.Holes, k)
		}
		l, err := p.List(DefaultOptions(), DefaultSpareOptions())
		if err != nil {
			t.Fatal(err)
		}
		var got [][]string
		for _, k := range l.Panes {
			got = append(got, k.Holes)
		}
		if fmt.Sprint(got) != fmt.Sprint(c.kinds) {
			t.Errorf("%s: %v, want %v", c.name, got, c.kinds)
		}
	}
}

// Two of three panes stand already: one is made, the others are drawn as they
// are, with nothing to cut, and the list counts the two apart.
func TestWhatExistsIsNotMadeAgain(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	p.Arena.Holes = slices.Clone(p.Arena.Holes[:3])
	for _, i := range []int{0, 2} {
		p.Arena.Holes[i].State = glass.Cut
	}
	l, err := p.List(DefaultOptions(), DefaultSpareOptions())
	if err != nil {
		t.Fatal(err)
	}
	work, exist := l.Sums()
	if work.Holes != 1 || work.Panes != 1 || work.Covers != 1 || exist.Holes != 2 || exist.Panes != 2 || exist.Covers != 2 {
		t.Errorf("to make %+v, exist %+v", work, exist)
	}
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range l.Rows {
		sheets := p.Sheets(r.Job, paper)
		whole, err := p.Template(r.Job, Full)
		if err != nil {
			t.Fatal(err)
		}
		all, cut := "", 0
		for _, d := range slices.Concat(sheets, whole, []*sheet.Drawing{p.PaneOutline(r.Job)}) {
			for _, w := range wordsOf(d) {
				all += w.text + "\n"
			}
			if d.Name == "cover" || d.Name == "radius" {
				continue
			}
			for _, e := range d.Items {
				if e.Layer == sheet.LayerCut && e.Class != "" {
					if g, ok := e.Shape.(*sheet.Group); ok {
						for _, i := range g.Items {
							if strings.HasPrefix(i.Class, "cut") && d.Name != "hole" {
								cut++
							}
						}
					}
				}
			}
		}
		exists := r.Job.Hole.ID != "bent"
		for _, work := range []string{"Take the pane out", "Drill", "pilot", "Rout ", "NEVER CUT this", "and order it"} {
			if exists && strings.Contains(all, work) {
				t.Errorf("hole %s exists, and its sheets say %q", r.Job.Hole.ID, work)
			}
		}
		if exists != strings.Contains(all, "THE HOLE EXISTS") || exists != (r.Work() == "exists") || exists != (r.Job.Pilot() == 0) || exists && cut > 0 {
			t.Errorf("hole %s: exists %v, work %s, pilot %v, %d outlines to cut", r.Job.Hole.ID, exists, r.Work(), r.Job.Pilot(), cut)
		}
	}
	csv := string(csvOf(holeFields(p.Mark).Of("", l.Rows, unit.Metric)))
	for _, want := range []string{"flat,exists,cut,", "bent,make,planned,", "order,exists,cut,"} {
		if !strings.Contains(csv, want) {
			t.Errorf("the table lacks %q:\n%s", want, csv)
		}
	}
	for _, d := range p.listPages(l, paper) {
		all := ""
		for _, w := range wordsOf(d) {
			all += w.text + "\n"
		}
		for _, want := range []string{"To be made", "Existing: nothing is cut", "1 pane, 1 hole, 1 cover", "2 panes, 2 holes, 2 covers"} {
			if !strings.Contains(all, want) {
				t.Errorf("the list lacks %q:\n%s", want, all)
			}
		}
	}
}

// A hole that exists without its cover has the cover drawn, to be made; one in
// a pane with a hole still to be made stands in a pane to be made.
func TestWhatIsLackingOfAHoleThatExists(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	h, _ := p.Arena.Hole("flat")
	h.State, h.Cover = glass.Cut, unit.Known(glass.Cover{})
	second := h
	second.ID, second.State, second.Station, second.Cover = "second", glass.Planned, h.Station+300*mm, unit.Known(glass.Cover{Present: true})
	p.Arena.Holes = []glass.Hole{h, second}
	l, err := p.List(DefaultOptions(), DefaultSpareOptions())
	if err != nil {
		t.Fatal(err)
	}
	work, exist := l.Sums()
	if work.Holes != 1 || work.Panes != 1 || work.Covers != 2 || exist.Holes != 1 || exist.Panes != 0 || exist.Covers != 0 {
		t.Errorf("to make %+v, exist %+v", work, exist)
	}
	j := l.Rows[0].Job
	paper, _ := sheet.ParsePaper("a4")
	for _, w := range wordsOf(p.Sheets(j, paper)[3]) {
		if strings.Contains(w.text, "EXISTS") {
			t.Errorf("the cover's sheet says %q, and the cover is still to be made", w.text)
		}
	}
	if s := strings.Join(j.Steps(), " "); !strings.Contains(s, "Make its cover") {
		t.Errorf("steps %q", s)
	}
}

func TestListAsTable(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	l, err := p.List(DefaultOptions(), DefaultSpareOptions())
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(csvOf(holeFields(p.Mark).Of("", l.Rows, unit.Metric))))).ReadAll()
	if err != nil || len(rows) != 6 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	at := map[string]int{}
	for i, name := range rows[0] {
		at[name] = i
	}
	if got := rows[1][at["hole_left_mm"]]; got != "500" {
		t.Errorf("hole_left_mm %s", got)
	}
	if got := rows[5][at["not_drawn"]]; !strings.Contains(got, "corner radius") || rows[5][at["plan"]] != p.Mark {
		t.Errorf("not_drawn %q", got)
	}
}
