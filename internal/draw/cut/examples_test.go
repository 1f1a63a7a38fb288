package cut

import (
	"bytes"
	"errors"
	"math"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/arena"
)

// On every sheet of the examples' drawings, on the papers of the contract, words keep off
// one another, off the lines of dimensions and inside the frame; no sheet runs over, and
// every sheet has its check bars.
func TestSheetsOfTheExamples(t *testing.T) {
	sheets := 0
	for name, papers := range map[string][]string{"brennholm.yaml": {"a4"}, "quillhaven.yaml": {"letter", "a3"}, "sorrel-flats.yaml": {"tabloid", "a4"}} {
		text, err := examples.Files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		doc, err := arena.Read(name, bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		a, err := doc.Check()
		if err != nil {
			t.Fatal(err)
		}
		p := NewShopOrder(a, doc.Bytes(), nil)
		for _, on := range papers {
			paper, err := sheet.ParsePaper(on)
			if err != nil {
				t.Fatal(err)
			}
			for i, h := range a.Working() {
				o := DefaultOptions()
				if i%2 == 1 {
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
					checkWords(t, name+" "+on+" "+d.Title, d)
					checkScaleBars(t, name+" "+on+" "+d.Title, d)
					if len(d.Name) > 5 && d.Name[len(d.Name)-5:] == "-more" {
						t.Errorf("%s %s: %s runs over to another sheet", name, on, d.Title)
					}
				}
			}
		}
	}
	if sheets < 100 {
		t.Fatalf("only %d sheets met", sheets)
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
