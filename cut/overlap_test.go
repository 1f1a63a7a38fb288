package cut

import (
	"fmt"
	"slices"
	"testing"

	"example.org/rinkpane/glass"
	"example.org/rinkpane/sheet"
	"example.org/rinkpane/unit"
)

// words is a text of a drawing with the box that it fills.
type words struct {
	text string
	box  sheet.Rect
}

// wordsOf gathers every text of a drawing; groups are followed.
func wordsOf(d *sheet.Drawing) []words {
	var out []words
	var follow func(items []*sheet.Element, base sheet.Style, offset sheet.Point)
	follow = func(items []*sheet.Element, base sheet.Style, offset sheet.Point) {
		for _, e := range items {
			style := d.Styles.Resolve(e.Class, base)
			switch s := e.Shape.(type) {
			case *sheet.Group:
				follow(s.Items, style, offset.Add(s.Offset))
			case sheet.Text:
				box := s.Box(style)
				box.X, box.Y = box.X+offset.X, box.Y+offset.Y
				out = append(out, words{s.S, box})
			}
		}
	}
	follow(d.Items, sheet.Style{}, sheet.Point{})
	return out
}

// checkWords fails when texts of a drawing lie on one another or off the paper.
func checkWords(t *testing.T, name string, d *sheet.Drawing) int {
	t.Helper()
	all := wordsOf(d)
	paper := sheet.Rect{W: d.W, H: d.H}
	for i, a := range all {
		if !paper.Contains(a.box) {
			t.Errorf("%s: %q leaves the paper: %+v", name, a.text, a.box)
		}
		for _, b := range all[:i] {
			if a.box.Inset(0.15).Overlaps(b.box.Inset(0.15)) {
				t.Errorf("%s: %q lies on %q", name, a.text, b.text)
			}
		}
	}
	return len(all)
}

// drawingsOf returns every drawing that a plan makes on a paper.
func drawingsOf(t *testing.T, p Plan, paperName string) []*sheet.Drawing {
	t.Helper()
	paper, err := sheet.ParsePaper(paperName)
	if err != nil {
		t.Fatal(err)
	}
	l, err := p.List(DefaultOptions(), DefaultSpareOptions())
	if err != nil {
		t.Fatal(err)
	}
	out := p.listPages(l, paper)
	for _, r := range l.Rows {
		if len(r.Refused) > 0 {
			continue
		}
		out = append(out, p.Sheets(r.Job, paper)...)
		whole, err := p.Template(r.Job, Full)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, whole...)
		out = append(out, p.PaneOutline(r.Job), p.CoverOutline(r.Job))
	}
	for _, w := range p.Arena.Windows {
		job, err := p.WindowJob(w, builtInKit(t))
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, p.windowPage(job, paper), p.WindowOutline(job))
	}
	return out
}

// TestNoTextOverlaps looks at every drawing on every paper of the contract.
func TestNoTextOverlaps(t *testing.T) {
	texts := 0
	for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
		for _, paper := range []string{"a4", "a3", "letter", "tabloid"} {
			for _, d := range drawingsOf(t, shopPlan(t, sys), paper) {
				texts += checkWords(t, fmt.Sprintf("%s %s %s", sys, paper, d.Title), d)
			}
		}
	}
	if texts < 5000 {
		t.Fatalf("only %d texts met", texts)
	}
}

// TestNoTextOverlapsInOddSizes tries holes and panes of unusual sizes.
func TestNoTextOverlapsInOddSizes(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	n := 0
	for _, c := range []struct{ w, h, r, paneW, paneH, left, up, thick float64 }{
		{100, 100, 20, 900, 1500, 450, 400, 12},
		{320, 240, 30, 2400, 1800, 1300, 700, 20},
		{90, 60, 10, 700, 1200, 300, 300, 10},
		{200, 90, 25, 1800, 900, 900, 450, 30},
		{120, 180, 40, 1200, 2440, 300, 1400, 25.4},
	} {
		mm := func(v float64) unit.Length { return unit.Length(v) * unit.Millimetre }
		pane := p.Arena.Panes[0]
		pane.Width, pane.Height, pane.Thickness = mm(c.paneW), mm(c.paneH), unit.Known(mm(c.thick))
		q := p
		q.Arena.Panes = []glass.Pane{pane}
		h := glass.Hole{
			ID: "odd", Pane: pane.ID, Station: pane.From + mm(c.left), Height: p.Arena.Boards.Height + mm(c.up),
			Size: unit.Size{W: mm(c.w), H: mm(c.h)}, Corner: unit.Known(mm(c.r)), Rounding: unit.Known(mm(2)),
		}
		q.Arena.Holes, q.Arena.Windows = []glass.Hole{h}, nil
		if _, err := q.Job(h, DefaultOptions()); err != nil {
			t.Fatal(err)
		}
		for _, paper := range []string{"a4", "a3"} {
			for _, d := range drawingsOf(t, q, paper) {
				checkWords(t, fmt.Sprintf("%v on %s: %s", c, paper, d.Title), d)
				n++
			}
		}
	}
	if n < 70 {
		t.Fatalf("only %d drawings met", n)
	}
}

// TestNeighboursAreDrawnApart looks at the drawing of a pane with three holes.
func TestNeighboursAreDrawnApart(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	h, _ := p.Arena.Hole("flat")
	for i, along := range []unit.Length{0.3, -0.3} {
		k := h
		k.ID, k.Station, k.Size.W = fmt.Sprintf("twin-%d", i+1), h.Station+along, 0.1
		p.Arena.Holes = append(slices.Clone(p.Arena.Holes), k)
	}
	p.Arena.Panes = slices.Clone(p.Arena.Panes)
	for i, pane := range p.Arena.Panes {
		if pane.ID == h.Pane {
			p.Arena.Panes[i].From, p.Arena.Panes[i].Width = pane.From-0.5, pane.Width+1
		}
	}
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	d := p.Sheets(jobOf(t, p, "flat", DefaultOptions()), paper)[0]
	checkWords(t, d.Title, d)
	var said []string
	for _, w := range wordsOf(d) {
		said = append(said, w.text)
	}
	if !slices.Contains(said, "Dashed: holes twin-1, twin-2 of the same pane. Each has a sheet of its own.") || !slices.Contains(said, "twin-2") {
		t.Errorf("the neighbours are not told: %q", said)
	}
}
