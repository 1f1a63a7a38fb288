package cut

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// twinPlan is the shop's plan with four holes in one wide pane: "flat" to be made, one
// beside it that exists, one on the other side at another height to be made, and one that
// may not be made.
func twinPlan(t testing.TB) ShopOrder {
	t.Helper()
	p := shopPlan(t, unit.Metric)
	h, _ := p.Arena.Hole("flat")
	p.Arena.Panes = slices.Clone(p.Arena.Panes)
	for i, pane := range p.Arena.Panes {
		if pane.ID == h.Pane {
			p.Arena.Panes[i].From, p.Arena.Panes[i].Width = pane.From-0.5, pane.Width+1
		}
	}
	p.Arena.Holes = []glass.Hole{h}
	for i, k := range []struct {
		id        string
		along, up unit.Length
		state     glass.State
		corner    unit.Length
	}{{"there", 0.3, 0, glass.Cut, 13 * mm}, {"higher", -0.35, 0.2, glass.Planned, 13 * mm}, {"sharp", 0.7, 0, glass.Planned, 2 * mm}} {
		n := h
		n.ID, n.Station, n.Height, n.State, n.Corner = k.id, h.Station+k.along, h.Height+k.up, k.state, unit.Known(k.corner)
		n.Size.W -= unit.Length(i) * 5 * mm
		p.Arena.Holes = append(p.Arena.Holes, n)
	}
	return p
}

// A pane has one sheet with every hole on it, told apart by line and words and
// dimensioned from the datum edges; it is the same whichever of its holes is asked for,
// and the set's sheets are counted through.
func TestOneSheetForAllHolesOfAPane(t *testing.T) {
	p := twinPlan(t)
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	of := map[string][]*sheet.Drawing{}
	for _, id := range []string{"flat", "higher", "there"} {
		of[id] = p.Sheets(jobOf(t, p, id, DefaultOptions()), paper)
	}
	one := of["flat"]
	for id, other := range of {
		if len(other) != len(one) || string(sheet.SVG(other[0])) != string(sheet.SVG(one[0])) {
			t.Errorf("the pane's set by hole %s is another than by hole flat", id)
		}
	}
	var said []string
	for _, w := range wordsOf(one[0]) {
		said = append(said, w.text)
	}
	all := strings.Join(said, " ")
	for _, w := range []string{"Pane P1, holes higher, flat, there, sharp", fmt.Sprintf("1 of %d", len(one)),
		"650 mm", "1000 mm", "1300 mm", "1700 mm", "430 mm", "630 mm", // from datum A, from datum B
		"Hole flat, to be made: ", "Hole there, exists: ", "Hole sharp, not drawn: ", "Hole there: EXISTS", "Hole sharp: NOT DRAWN", "corner radius is 2 mm"} {
		if !strings.Contains(all, w) {
			t.Errorf("the sheet lacks %q", w)
		}
	}
	looks := map[string]int{}
	var follow func(layer string, e *sheet.Element)
	follow = func(layer string, e *sheet.Element) {
		if g, ok := e.Shape.(*sheet.Group); ok {
			for _, i := range g.Items {
				follow(cmp.Or(i.Layer, layer), i)
			}
			return
		}
		looks[layer+" "+e.Class]++
	}
	for _, e := range one[0].Items {
		follow(e.Layer, e)
	}
	// Each hole stands in two views.
	if looks["CUT cut"] != 4 || looks["DATUM exists"] != 2 || looks["DATUM beside"] != 2 {
		t.Errorf("outlines by line: %v", looks)
	}
	for _, d := range one {
		checkWords(t, d.Title, d)
	}
	if last := one[len(one)-1]; !slices.ContainsFunc(wordsOf(last), func(w boxedText) bool { return w.text == fmt.Sprintf("%d of %d", len(one), len(one)) }) {
		t.Errorf("the last sheet is not numbered %d of %d", len(one), len(one))
	}
}

// A hole to be made beside one that is not allowed: the pane's sheet says so of the one.
func TestPaneIsMarkedByEachOfItsHoles(t *testing.T) {
	p := twinPlan(t)
	j := jobOf(t, p, "flat", DefaultOptions())
	if m := p.paneJob(j).marks(); m.word != "" || m.bad || len(m.why) != 2 {
		t.Errorf("marks %+v", m)
	}
	pane := p.paneJob(j)
	pane.jobs[0].NotPassed = append(pane.jobs[0].NotPassed, say.Make("too near"))
	m := pane.marks()
	if m.word != "NOT PASSED" || !m.bad || m.why[0].In(unit.Metric) != "Hole higher: NOT PASSED: too near." {
		t.Errorf("marks %+v: %s", m, m.why[0].In(unit.Metric))
	}
}
