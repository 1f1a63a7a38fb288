package sheet_test

import (
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

func TestMeasure(t *testing.T) {
	for _, c := range []struct {
		l      unit.Length
		mm, in string
	}{
		{5.5 * unit.Inch, "139.7 mm", "5 1/2 in"},
		{114 * unit.Millimetre, "114 mm", "4.488 in"},
		{1.5875 * unit.Millimetre, "1.6 mm", "1/16 in"},
		{15.9 * unit.Millimetre, "15.9 mm", "5/8 in"}, // 0.025 mm off: a sixteenth
		{16 * unit.Millimetre, "16 mm", "0.630 in"},   // 0.125 mm off: no sixteenth
		{12.04 * unit.Foot, "3669.8 mm", "144.480 in"},
		{12 * unit.Foot, "3657.6 mm", "12 ft"},
	} {
		if mm, in := sheet.Measure(c.l); mm != c.mm || in != c.in {
			t.Errorf("Measure(%g m) = %q, %q; want %q, %q", c.l.Metres(), mm, in, c.mm, c.in)
		}
	}
}

// However a dimension lies, its texts keep off its line and off each other.
func TestDimensionTextsKeepApart(t *testing.T) {
	n := 0
	for _, to := range []sheet.Point{{X: 180, Y: 100}, {X: 20, Y: 100}, {X: 100, Y: 30}, {X: 100, Y: 170}, {X: 104, Y: 100}, {X: 100, Y: 98}, {X: 100.5, Y: 100}} {
		for _, off := range []float64{12, -12, 0} {
			d := sheet.New("dim", 200, 200, sheet.Base())
			g, _ := d.Group(sheet.LayerDim, "")
			g.Dim(sheet.Dimension{A: sheet.Pt(100, 100), B: to, Off: off, Text: "139.7 mm", Under: "5 1/2 in"})
			noCollisions(t, d)
			if got := len(d.TextBoxes()); got != 2 {
				t.Errorf("%d texts", got)
			}
			for _, e := range g.Items {
				l, ok := e.Shape.(sheet.Line)
				if !ok {
					continue
				}
				for _, b := range d.TextBoxes() {
					line := sheet.Rect{X: min(l.A.X, l.B.X), Y: min(l.A.Y, l.B.Y), W: max(l.A.X, l.B.X) - min(l.A.X, l.B.X), H: max(l.A.Y, l.B.Y) - min(l.A.Y, l.B.Y)}
					if b.Box.Inset(0.05).Overlaps(line.Inset(-0.01)) {
						t.Errorf("to %v, off %g: %q at %.2f stands on the line %.2f", to, off, b.S, b.Box, line)
					}
					n++
				}
			}
		}
	}
	if n < 100 {
		t.Errorf("%d pairs looked at", n)
	}
}
