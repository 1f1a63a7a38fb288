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

// wordsOf gathers every text of a drawing, in the order in which they are drawn.
func wordsOf(d *sheet.Drawing) []boxedText {
	flat := *d
	flat.Layers = nil
	var out []boxedText
	for _, b := range flat.TextBoxes() {
		out = append(out, boxedText{b.S, b.Box})
	}
	return out
}

// checkWords fails when texts of a drawing lie on one another, off the paper or
// past its frame, or when a dimension's line crosses a dimension's text. What stands
// across the sheet beneath the rest is left out.
func checkWords(t *testing.T, name string, d *sheet.Drawing) int {
	t.Helper()
	all := slices.DeleteFunc(d.TextBoxes(), func(b sheet.TextBox) bool { return strings.HasPrefix(b.Class, "across") })
	frame := sheet.Rect{W: d.W, H: d.H}
	if slices.Contains(d.Layers, sheet.LayerFrame) {
		frame = d.Border()
	}
	for _, b := range all {
		if !frame.Contains(b.Box) && !strings.HasPrefix(b.S, "each bar 100 mm") && !strings.HasPrefix(b.S, "each bar 4 in") {
			t.Errorf("%s: %q leaves the frame: %+v", name, b.S, b.Box)
		}
	}
	for _, two := range sheet.Collisions(all, 0.15) {
		t.Errorf("%s: %q lies on %q", name, two[1].S, two[0].S)
	}
	lines := dimLines(nil, d.Items, sheet.Point{}, 1)
	for _, b := range all {
		for _, l := range lines {
			if (b.Class == "dim-text" || strings.HasSuffix(b.Class, "datum-letter")) && crosses(l, b.Box.Inset(0.2)) {
				t.Errorf("%s: a dimension's line from %v to %v crosses %q", name, l.A, l.B, b.S)
			}
		}
	}
	return len(all)
}

// dimLines gathers the lines of dimensions as they are printed.
func dimLines(out []sheet.Line, items []*sheet.Element, offset sheet.Point, scale float64) []sheet.Line {
	for _, e := range items {
		switch s := e.Shape.(type) {
		case *sheet.Group:
			k := s.Scale
			if k == 0 {
				k = 1
			}
			out = dimLines(out, s.Items, offset.Add(s.Offset.Scale(scale)), scale*k)
		case sheet.Line:
			if e.Class == "dim" {
				out = append(out, sheet.Line{A: offset.Add(s.A.Scale(scale)), B: offset.Add(s.B.Scale(scale))})
			}
		}
	}
	return out
}

// crosses reports whether an upright or level line enters a box.
func crosses(l sheet.Line, r sheet.Rect) bool {
	x0, x1, y0, y1 := min(l.A.X, l.B.X), max(l.A.X, l.B.X), min(l.A.Y, l.B.Y), max(l.A.Y, l.B.Y)
	return r.W > 0 && r.H > 0 && x0 < r.X+r.W && x1 > r.X && y0 < r.Y+r.H && y1 > r.Y
}

// windowJobs are those of a plan's low windows; to trace their patches takes longest of all.
func windowJobs(t *testing.T, p ShopOrder) (out []WindowJob) {
	t.Helper()
	for _, w := range p.Arena.Windows {
		job, err := p.WindowJob(w, builtInKit(t))
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, job)
	}
	return out
}

// drawingsOf returns every drawing that a plan makes on a paper.
func drawingsOf(t *testing.T, p ShopOrder, windows []WindowJob, paperName string) []*sheet.Drawing {
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
	for _, job := range windows {
		out = append(append(out, p.windowPages(job, paper)...), p.WindowOutline(job))
	}
	return out
}

// TestNoTextOverlaps looks at every drawing on every paper of the contract.
func TestNoTextOverlaps(t *testing.T) {
	texts := 0
	for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
		p := shopPlan(t, sys)
		windows := windowJobs(t, p)
		for _, paper := range []string{"a4", "a3", "letter", "tabloid"} {
			for _, d := range drawingsOf(t, p, windows, paper) {
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
				for _, d := range drawingsOf(t, p, nil, paper) {
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
		d := p.Sheets(j, paper)[1]
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
