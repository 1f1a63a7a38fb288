package cut

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// example is an example's arena, with what is to be changed in it and what is put instead.
func example(t *testing.T, name string, changes ...string) ShopOrder {
	t.Helper()
	text, err := examples.Files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	text = []byte(strings.NewReplacer(changes...).Replace(string(text)))
	doc, err := arena.Read(name, bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	return NewShopOrder(a, doc.Bytes(), nil)
}

// On every sheet of the examples' drawings, on the papers of the contract, with either
// hold, of every material that is asked for, words keep off one another, off the lines of
// dimensions and inside the frame; no sheet runs over, and every sheet has its check bars.
func TestSheetsOfTheExamples(t *testing.T) {
	sheets := 0
	for _, p := range []ShopOrder{
		example(t, "brennholm.yaml"), example(t, "quillhaven.yaml"), example(t, "sorrel-flats.yaml"),
		example(t, "quillhaven.yaml", "material: acrylic\n\n", "material: tempered\n\n", "thickness: 5/8 in\n", "thickness: 1/2 in\n"),
		example(t, "quillhaven.yaml", "material: acrylic\n\n", "material: laminated\n\n", "thickness: 5/8 in\n", "thickness: 1/2 in\n"),
	} {
		for i, on := range []string{"a4", "letter", "a3", "tabloid"} {
			paper, err := sheet.ParsePaper(on)
			if err != nil {
				t.Fatal(err)
			}
			for k, h := range p.Arena.Working() {
				o := DefaultOptions()
				if (i+k)%2 == 1 {
					o.Hold = Strap
				}
				j, err := p.Job(h, o)
				if no := (*Refusal)(nil); errors.As(err, &no) {
					continue
				} else if err != nil {
					t.Fatal(err)
				}
				for _, d := range p.Sheets(j, paper) {
					sheets++
					checkWords(t, p.Arena.Name+" "+on+" "+d.Title, d)
					checkScaleBars(t, p.Arena.Name+" "+on+" "+d.Title, d)
					if strings.HasSuffix(d.Name, "-more") {
						t.Errorf("%s %s: %s runs over to another sheet", p.Arena.Name, on, d.Title)
					}
				}
			}
		}
	}
	if sheets < 500 {
		t.Fatalf("only %d sheets met", sheets)
	}
}

// Four holes in one pane, each with many reasons against it: the reasons have a sheet of
// their own, each once, and what is drawn keeps its place on the pane's.
func TestReasonsHaveRoom(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	h := p.Arena.Holes[0]
	p.Arena.Holes, p.Findings = nil, nil
	for i := range 4 {
		k := h
		k.ID, k.Station = fmt.Sprintf("C%d", i+1), p.Arena.Panes[0].From+unit.Length(212+256*i)*unit.Millimetre
		k.State = glass.Planned
		p.Arena.Holes = append(p.Arena.Holes, k)
	}
	ids := []string{"C1", "C2", "C3", "C4"}
	for i, why := range []string{"the whole rink holds too many of them, more than ever stood in it before", "the corner holds too many of them, more than ever stood in it before"} {
		p.Findings = append(p.Findings, rules.Finding{Rule: fmt.Sprint("most-", i), Set: "test", Holes: ids, Status: rules.Fail, Sentence: say.Make(why)})
	}
	for _, id := range ids {
		p.Findings = append(p.Findings, rules.Finding{Rule: "cover", Set: "test", Holes: []string{id}, Status: rules.Unknown,
			Sentence: say.Make("look whether hole %s has a cover and record it: a cover is due, in whenever nobody works the hole", id)},
			rules.Finding{Rule: "stretch", Set: "test", Holes: []string{id}, Status: rules.Fail, Sentence: say.Make("move hole %s onto a stretch of boards that the rule permits, or close it", id)})
	}
	for _, on := range []string{"a4", "letter", "a3", "tabloid"} {
		paper, err := sheet.ParsePaper(on)
		if err != nil {
			t.Fatal(err)
		}
		sheets := p.Sheets(jobOf(t, p, "C2", DefaultOptions()), paper)
		for _, d := range sheets {
			checkWords(t, on+" "+d.Title, d)
		}
		said := ""
		for _, w := range wordsOf(sheets[1]) {
			said += w.text + " "
		}
		if sheets[1].Name != "reasons" || strings.Count(said, "the whole rink") != 1 || !strings.Contains(said, "Holes C1, C2, C3, C4: NOT PASSED: the whole rink") || strings.Count(said, "NOT PROVED: look") != 4 {
			t.Errorf("%s: the second sheet is %q and says %q", on, sheets[1].Name, said)
		}
		if first := wordsOf(sheets[0]); !slices.ContainsFunc(first, func(w boxedText) bool { return strings.HasPrefix(w.text, "MARKED for 9 reasons") }) {
			t.Errorf("%s: the pane's sheet does not say where the reasons are", on)
		}
	}
}

// A curved pane has one number for each place, along its shooting face: the list, the pane's
// sheet and the machine's file have the same. Only the table that says so has the other face's.
func TestACurvedPaneHasOneNumber(t *testing.T) {
	p := example(t, "quillhaven.yaml")
	j := jobOf(t, p, "A2", DefaultOptions())
	if !j.Face.Curved {
		t.Fatal("the pane is flat")
	}
	want := []string{j.front(j.Face.Width).FormatCut(unit.Imperial), j.front(j.Face.Left).FormatFine(unit.Imperial)}
	if want[0] == j.Face.Width.FormatCut(unit.Imperial) {
		t.Fatal("both faces have the same number")
	}
	l, err := p.List(DefaultOptions(), DefaultSpareOptions())
	if err != nil {
		t.Fatal(err)
	}
	paper, err := sheet.ParsePaper("letter")
	if err != nil {
		t.Fatal(err)
	}
	for what, d := range map[string]*sheet.Drawing{"list": p.listPages(l, paper)[0], "pane": p.Sheets(j, paper)[0]} {
		all := ""
		for _, w := range wordsOf(d) {
			all += w.text + " | "
		}
		for i, s := range want {
			if what == "list" && i == 0 {
				s = strings.TrimSuffix(s, " in") + " x "
			}
			if !strings.Contains(all, s) {
				t.Errorf("the %s lacks %s: %s", what, s, all)
			}
		}
	}
}

// The unit that governs stands first, the other in square brackets, on every dimension.
func TestTheOtherUnitIsInBrackets(t *testing.T) {
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	for sys, other := range map[unit.System]string{unit.Metric: " in", unit.Imperial: " mm"} {
		p, n := shopPlan(t, sys), 0
		for _, d := range p.Sheets(jobOf(t, p, "flat", DefaultOptions()), paper) {
			for _, b := range d.TextBoxes() {
				if b.Class != "dim-text" {
					continue
				}
				n++
				if open := strings.HasPrefix(b.S, "[") && strings.HasSuffix(b.S, "]"); open != strings.Contains(b.S, other) {
					t.Errorf("%v: %s has the dimension %q", sys, d.Title, b.S)
				}
			}
		}
		if n < 30 {
			t.Errorf("%d dimensions", n)
		}
	}
}

// checkScaleBars fails when a sheet lacks a bar along its foot or up its side, or when one
// is not as long as it says: of 100 mm, in ten parts, the dark ones fill 90, and the bar
// across it lies 3.5 mm out.
func checkScaleBars(t *testing.T, name string, d *sheet.Drawing) {
	t.Helper()
	only := *d
	only.Items = nil
	for _, e := range d.Items {
		only.Items = append(only.Items, barsOf(e)...)
	}
	const out = 3.5
	if b := only.Bounds(); len(only.Items) != 10 || math.Abs(b.W-90-out) > 1e-6 || math.Abs(b.H-90-out) > 1e-6 {
		t.Errorf("%s: check bars fill %+v", name, b)
	}
}

// barsOf gathers the parts of check bars at their places on the sheet.
func barsOf(e *sheet.Element) (out []*sheet.Element) {
	if e.Class == "check-dark" {
		return []*sheet.Element{e}
	}
	if g, ok := e.Shape.(*sheet.Group); ok {
		for _, i := range g.Items {
			for _, b := range barsOf(i) {
				out = append(out, &sheet.Element{Layer: e.Layer, Shape: &sheet.Group{Offset: g.Offset, Scale: g.Scale, Items: []*sheet.Element{b}}})
			}
		}
	}
	return out
}
