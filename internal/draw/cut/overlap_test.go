package cut

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// boxedText is a text of a drawing with the box that it fills.
type boxedText struct {
	text string
	box  sheet.Rect
}

// wordsOf gathers every text of a drawing; groups are followed.
func wordsOf(d *sheet.Drawing) []boxedText {
	var out []boxedText
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
				out = append(out, boxedText{s.S, box})
			}
		}
	}
	follow(d.Items, sheet.Style{}, sheet.Point{})
	return out
}

// checkWords fails when texts of a drawing lie on one another, off the paper or
// past its frame.
func checkWords(t *testing.T, name string, d *sheet.Drawing) int {
	t.Helper()
	all := wordsOf(d)
	paper := sheet.Rect{W: d.W, H: d.H}
	if slices.Contains(d.Layers, sheet.LayerFrame) {
		paper = sheet.Rect{X: sheet.FilingMargin, Y: sheet.Margin, W: d.W - sheet.FilingMargin - sheet.Margin, H: d.H - 2*sheet.Margin}
		if min(d.W, d.H) < leastPaper {
			paper.X, paper.W = sheet.Margin, d.W-2*sheet.Margin
		}
	}
	for i, a := range all {
		if !paper.Contains(a.box) {
			t.Errorf("%s: %q leaves the frame: %+v", name, a.text, a.box)
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
func drawingsOf(t *testing.T, p ShopOrder, paperName string) []*sheet.Drawing {
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
		out = append(out, p.PaneOutline(r.Job), p.PlugOutline(r.Job), p.FlangeOutline(r.Job))
	}
	for _, w := range p.Arena.Windows {
		job, err := p.WindowJob(w, builtInKit(t))
		if err != nil {
			t.Fatal(err)
		}
		out = append(append(out, p.windowPage(job, paper)...), p.WindowOutline(job))
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
	n := 0
	for _, c := range oddHoles {
		for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
			p, _ := oddPlan(t, sys, c)
			for _, paper := range []string{"a4", "a3", "letter"} {
				for _, d := range drawingsOf(t, p, paper) {
					checkWords(t, fmt.Sprintf("%v on %s: %s", c, paper, d.Title), d)
					n++
				}
			}
		}
	}
	if n < 400 {
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
	if !slices.Contains(said, "Dashed: holes twin-1 and twin-2 of the same pane. Each has a sheet of its own.") || !slices.Contains(said, "twin-2") {
		t.Errorf("the neighbours are not told: %q", said)
	}
}

// oddHole is a hole and its pane in millimetres.
type oddHole struct{ w, h, r, paneW, paneH, left, up, thick float64 }

var oddHoles = []oddHole{
	{100, 100, 20, 900, 1500, 450, 400, 12},
	{320, 240, 30, 2400, 1800, 1300, 700, 20},
	{90, 60, 10, 700, 1200, 300, 300, 10},
	{200, 90, 25, 1800, 900, 900, 450, 30},
	{120, 180, 40, 1200, 2440, 300, 1400, 25.4},
	{140, 114, 57, 1200, 1800, 600, 430, 12},   // corners as round as can be
	{200, 60, 6.4, 1200, 1800, 600, 430, 12.7}, // low and long
	{40, 30, 6, 1200, 900, 600, 430, 12},       // tiny
	{300, 38, 12, 1500, 1900, 700, 620, 11},    // a slot lying
	{48, 272, 22, 1037, 2267, 412, 813, 26.5},  // a slot standing
	{142, 66, 25, 1700, 1140, 800, 373, 8},     // its radius in the middle of the curve
	{80, 80, 7.5, 2400, 2400, 1100, 280, 15},   // in a pane as wide as high
	{140, 114, 12, 1200, 1800, 600, 430, 6},    // thin
}

// oddPlan is the shop's plan with one odd hole, its id as long as ids may be.
func oddPlan(t *testing.T, sys unit.System, c oddHole) (ShopOrder, Job) {
	t.Helper()
	p := shopPlan(t, sys)
	mm := func(v float64) unit.Length { return unit.Length(v) * unit.Millimetre }
	pane := p.Arena.Panes[0]
	pane.Width, pane.Height, pane.Thickness = mm(c.paneW), mm(c.paneH), unit.Known(mm(c.thick))
	p.Arena.Panes = []glass.Pane{pane}
	h := glass.Hole{
		ID: "hole-of-odd-shape-in-an-odd-pane", Pane: pane.ID, Station: pane.From + mm(c.left), Height: p.Arena.Boards.Height + mm(c.up),
		Size: unit.Size{W: mm(c.w), H: mm(c.h)}, Corner: unit.Known(mm(c.r)), Rounding: unit.Known(mm(2)),
	}
	p.Arena.Holes, p.Arena.Windows = []glass.Hole{h}, nil
	j, err := p.Job(h, DefaultOptions())
	if err != nil {
		t.Fatal(err)
	}
	return p, j
}

// The left column of the sheet with the outline ends before the right one begins, the
// title names the whole hole, and a template's words keep off its outline and pilot holes.
func TestWordsKeepTheirPlaceInOddSizes(t *testing.T) {
	paper, err := sheet.ParsePaper("letter")
	if err != nil {
		t.Fatal(err)
	}
	met := 0
	for _, c := range oddHoles {
		p, j := oddPlan(t, unit.Imperial, c)
		d := p.detailPage(j, paper)[0]
		column := slices.IndexFunc(wordsOf(d), func(w boxedText) bool { return w.text == "Sizes and tolerances" })
		for _, w := range wordsOf(d) {
			if left := wordsOf(d)[column].box.X; strings.HasSuffix(w.text, "both faces") && w.box.X < left && w.box.X+w.box.W > left-2 {
				t.Errorf("%v: %q reaches the right column", c, w.text)
			}
		}
		sheets, err := p.Template(j, Full)
		if err != nil {
			t.Fatal(err)
		}
		d = sheets[0]
		if !slices.ContainsFunc(wordsOf(d), func(w boxedText) bool { return w.text == "Hole "+j.Hole.ID+": template, full size" }) {
			t.Errorf("%v: the title block does not name the hole", c)
		}
		hole, pilots := outlineOf(d)
		for _, w := range wordsOf(d) {
			if w.box.Overlaps(hole) && !hole.Contains(w.box) {
				t.Errorf("%v: %q lies on the outline", c, w.text)
			}
			for _, o := range pilots {
				met++
				near := sheet.Pt(min(max(o.C.X, w.box.X), w.box.X+w.box.W), min(max(o.C.Y, w.box.Y), w.box.Y+w.box.H))
				if near.Dist(o.C) < o.R {
					t.Errorf("%v: %q lies on a pilot hole", c, w.text)
				}
			}
		}
	}
	if met < 100 {
		t.Fatalf("only %d words held to pilot holes", met)
	}
}

// outlineOf returns the box of a drawing's outline and its pilot holes.
func outlineOf(d *sheet.Drawing) (hole sheet.Rect, pilots []sheet.Circle) {
	var follow func(items []*sheet.Element)
	follow = func(items []*sheet.Element) {
		for _, e := range items {
			switch s := e.Shape.(type) {
			case *sheet.Group:
				follow(s.Items)
			case sheet.Circle:
				if e.Class == "pilot" {
					pilots = append(pilots, s)
				}
			case sheet.Polyline:
				if e.Class == "cut-line" {
					x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
					for _, v := range s.Vertices {
						x0, y0, x1, y1 = min(x0, v.X), min(y0, v.Y), max(x1, v.X), max(y1, v.Y)
					}
					hole = sheet.Rect{X: x0, Y: y0, W: x1 - x0, H: y1 - y0}
				}
			}
		}
	}
	follow(d.Items)
	return hole, pilots
}
