package sheet_test

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
)

func same(t *testing.T, what string, got, want sheet.Rect) {
	t.Helper()
	if math.Abs(got.X-want.X)+math.Abs(got.Y-want.Y)+math.Abs(got.W-want.W)+math.Abs(got.H-want.H) > 0.02 {
		t.Errorf("%s: %.3f, want %.3f", what, got, want)
	}
}

func TestBounds(t *testing.T) {
	d := sheet.New("b", 100, 100, sheet.Base())
	if got := d.Bounds(); got != (sheet.Rect{}) {
		t.Errorf("nothing drawn fills %v", got)
	}
	// A quarter of a circle of 10 about (50, 50), from the right to the top.
	d.Add("", "edge", sheet.Arc{C: sheet.Pt(50, 50), R: 10, Sweep: math.Pi / 2})
	same(t, "quarter", d.Bounds(), sheet.Rect{X: 50, Y: 40, W: 10, H: 10})
	g, _ := d.Group("", "")
	g.Offset, g.Scale, g.Clip = sheet.Pt(10, 20), 2, &sheet.Rect{W: 5, H: 50}
	g.Add("edge", sheet.Circle{C: sheet.Pt(0, 10), R: 10})
	// The clipped half of the circle, 5 wide and 20 high, twice as large at (10, 20).
	same(t, "with the group", d.Bounds(), sheet.Rect{X: 10, Y: 20, W: 50, H: 40})
}

func TestPlaceOneDrawingOnAnother(t *testing.T) {
	inner := sheet.New("inner", 40, 20, sheet.Stylesheet{{"mine", sheet.Style{Stroke: sheet.RGB(9, 9, 9), Width: 1}}})
	inner.Layers = []string{"low", "high"}
	inner.Add("high", "mine", sheet.Circle{C: sheet.Pt(20, 10), R: 5})
	inner.Add("low", "mine", sheet.Line{A: sheet.Pt(0, 0), B: sheet.Pt(40, 20)})
	page := sheet.New("page", 200, 100, sheet.Base())
	page.Place("figure", inner, sheet.Pt(100, 50), 1.5)
	same(t, "placed", page.Bounds(), sheet.Rect{X: 100, Y: 50, W: 60, H: 30})
	svg := string(sheet.SVG(page))
	if !strings.Contains(svg, ".mine{") {
		t.Error("the inner drawing's class has no rule on the page")
	}
	if line, circle := strings.Index(svg, "M0 0L40 20"), strings.Index(svg, "<circle"); line < 0 || line > circle {
		t.Error("the inner drawing's layers are out of order")
	}
}

// A text's box turns with it: a quarter turn swaps its sides and keeps its middle.
func TestTextBoxTurns(t *testing.T) {
	st := sheet.Style{Face: sheet.Bold, Size: 4}
	at := sheet.Pt(50, 50)
	for _, anchor := range []sheet.Anchor{sheet.Start, sheet.Middle, sheet.End} {
		level := sheet.Text{At: at, S: "½ Wide words", Anchor: anchor, VAlign: sheet.Centre}
		up := level
		up.Rotate = math.Pi / 2
		a, b := level.Box(st), up.Box(st)
		// (dx, dy) from the point turns to (dy, -dx).
		same(t, "turned", b, sheet.Rect{X: at.X + (a.Y - at.Y), Y: at.Y - (a.X - at.X) - a.W, W: a.H, H: a.W})
	}
}

func TestViewMapsTheRink(t *testing.T) {
	v := sheet.View{Origin: sheet.Pt(100, 50), Scale: 4}
	// 3 m along y is 12 mm up.
	if got := v.At(0, 3); got.Dist(sheet.Pt(100, 38)) > 1e-9 {
		t.Errorf("%v", got)
	}
	if got := v.Len(2.5); got != 10 {
		t.Errorf("2.5 m are %g mm", got)
	}
}
