package sheet_test

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"pgregory.net/rapid"
)

// Lines a spacing apart cover an area of length times spacing: the hatch of a
// rounded rectangle with a hole measures the area of its ring.
func TestHatchMeasuresTheArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Float64Range(20, 80).Draw(t, "w"), rapid.Float64Range(20, 80).Draw(t, "h")
		r := rapid.Float64Range(0, 9).Draw(t, "r")
		angle := rapid.Float64Range(-3, 3).Draw(t, "angle")
		var p sheet.Path
		p.Add(sheet.RoundRect(sheet.Rect{X: 5, Y: 7, W: w, H: h}, r))
		p.Add(sheet.RoundRect(sheet.Rect{X: 10, Y: 12, W: w - 12, H: h - 12}, 2))
		area := w*h - (4-math.Pi)*r*r - ((w-12)*(h-12) - (4-math.Pi)*4)
		const spacing = 0.05
		total := 0.0
		for _, l := range sheet.Hatch(p, angle, spacing) {
			total += l.A.Dist(l.B)
		}
		if math.Abs(total*spacing/area-1) > 0.01 {
			t.Fatalf("hatch measures %g mm2, want %g", total*spacing, area)
		}
	})
}

func TestHatchOfNothing(t *testing.T) {
	if n := len(sheet.Hatch(sheet.Path{}, 0, 1)); n != 0 {
		t.Errorf("%d lines in an empty outline", n)
	}
	var p sheet.Path
	p.Add(sheet.RoundRect(sheet.Rect{W: 10, H: 10}, 0))
	for _, spacing := range []float64{0, -1, math.NaN()} {
		if n := len(sheet.Hatch(p, 0, spacing)); n != 0 {
			t.Errorf("%d lines at spacing %g", n, spacing)
		}
	}
	if n := len(sheet.Hatch(p, 0, 1e-9)); n == 0 || n > 6000 {
		t.Errorf("%d lines at a spacing of 1 fm", n)
	}
}
