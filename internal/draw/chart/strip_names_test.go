package chart_test

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
)

// No landmark and no way from a label down to a hole runs through the name of a pane that
// is wide enough to let it by.
func TestPaneNamesOnTheStripAreNotCrossed(t *testing.T) {
	names := 0
	for name, a := range arenas(t) {
		for _, rows := range []int{3, 4} {
			d := chart.BoardsStrip(planOf(t, a), 250, rows)
			var upright []sheet.Line
			var follow func(items []*sheet.Element)
			follow = func(items []*sheet.Element) {
				for _, e := range items {
					switch s := e.Shape.(type) {
					case *sheet.Group:
						follow(s.Items)
					case sheet.Line:
						if e.Class == "landmark" {
							upright = append(upright, s)
						}
					case sheet.Polyline:
						if n := len(s.Vertices); e.Class == "leader" && n > 1 {
							upright = append(upright, sheet.Line{A: s.Vertices[n-2].Point, B: s.Vertices[n-1].Point})
						}
					}
				}
			}
			follow(d.Items)
			if len(upright) < 10 {
				t.Fatalf("%s: %d lines", name, len(upright))
			}
			for _, b := range d.TextBoxes() {
				if b.Class != "glass-text" || b.Box.H <= b.Box.W {
					continue
				}
				names++
				for _, l := range upright {
					low, high := math.Min(l.A.Y, l.B.Y), math.Max(l.A.Y, l.B.Y)
					if in := b.Box.Inset(0.1); l.A.X > in.X && l.A.X < in.X+in.W && low < in.Y+in.H && high > in.Y {
						t.Errorf("%s in %d rows: a line at %.1f runs through %s at %+v", name, rows, l.A.X, b.S, b.Box)
					}
				}
			}
		}
	}
	if names < 300 {
		t.Fatalf("%d turned names", names)
	}
}
