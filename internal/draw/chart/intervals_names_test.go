package chart

import (
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
)

// TestNamesOfRowsStayOnTheDrawing: a long name makes room for itself.
func TestNamesOfRowsStayOnTheDrawing(t *testing.T) {
	c := Intervals{Name: "light", Axis: "lux", Rows: []Interval{{Name: "corner-A-bench", At: 2, Low: 1, High: 3}, {Name: "slot-A", At: 2, Low: 1, High: 3}}}
	named := 0
	for _, e := range c.Draw(178, 60).Items {
		text, ok := e.Shape.(sheet.Text)
		if !ok || text.Anchor != sheet.End {
			continue
		}
		named++
		if left := text.At.X - sheet.Regular.Width(text.S, sheet.SizeSmall); left < 0 {
			t.Errorf("%s begins %.1f mm left of the drawing", text.S, -left)
		}
	}
	if named < 2 {
		t.Errorf("%d names", named)
	}
}
