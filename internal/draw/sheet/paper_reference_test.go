package sheet_test

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
)

// ISO 216:2007, A series: A0 has an area of 1 m2 and sides as 1 to the square
// root of two, 841 x 1189 mm; each further size halves the longer side, rounded
// down to whole millimetres. (Rule and A0 from memory; the chain is computed.)
func TestISO216(t *testing.T) {
	w, h := 841.0, 1189.0
	if got := w * h / 1e6; math.Abs(got-1) > 1e-4 {
		t.Fatalf("A0 has %g m2", got)
	}
	for i, name := range []string{"a0", "a1", "a2", "a3", "a4", "a5"} {
		p, err := sheet.ParsePaper(name)
		if err != nil {
			t.Fatal(err)
		}
		if p.W != w || p.H != h {
			t.Errorf("A%d: %g x %g mm, want %g x %g", i, p.W, p.H, w, h)
		}
		w, h = math.Floor(h/2), w
	}
}

// ANSI/ASME Y14.1: A 8.5 x 11 in, B 11 x 17, C 17 x 22, D 22 x 34, E 34 x 44
// (from memory); each is two of the one before side by side.
func TestANSIPaper(t *testing.T) {
	w, h := 8.5, 11.0
	for _, name := range []string{"Letter", "tabloid", "ansi-c", "ANSI-D", "ansi-e"} {
		p, err := sheet.ParsePaper(name)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(p.W-w*25.4) > 1e-9 || math.Abs(p.H-h*25.4) > 1e-9 {
			t.Errorf("%s: %g x %g mm, want %g x %g in", name, p.W, p.H, w, h)
		}
		w, h = h, 2*w
	}
}

func TestPaperTurns(t *testing.T) {
	p, err := sheet.ParsePaper("a3")
	if err != nil {
		t.Fatal(err)
	}
	if l := p.Landscape(); l.W != 420 || l.H != 297 || l.Landscape() != l || l.Portrait() != p {
		t.Errorf("landscape %+v", l)
	}
	if _, err := sheet.ParsePaper("foolscap"); err == nil {
		t.Error("foolscap has a size")
	}
}

// ISO 128-20: widths step by the square root of two, and are rounded.
func TestLineWidthsStepByRootTwo(t *testing.T) {
	series := []float64{sheet.W13, sheet.W18, sheet.W25, sheet.W35, sheet.W50, sheet.W70, sheet.W100, sheet.W140, sheet.W200}
	for i, w := range series {
		if exact := 0.5 * math.Pow(2, float64(i-4)/2); math.Abs(w/exact-1) > 0.05 {
			t.Errorf("width %g mm, series has %.3f", w, exact)
		}
	}
}
