package sheet_test

import (
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/table"
	"pgregory.net/rapid"
)

// noCollisions fails when two texts of a drawing meet, or one leaves the sheet.
func noCollisions(t interface{ Errorf(string, ...any) }, d *sheet.Drawing) {
	boxes := d.TextBoxes()
	for _, c := range sheet.Collisions(boxes, 0.05) {
		t.Errorf("%q at %.1f meets %q at %.1f", c[0].S, c[0].Box, c[1].S, c[1].Box)
	}
	for _, b := range boxes {
		if !(sheet.Rect{W: d.W, H: d.H}).Contains(b.Box) {
			t.Errorf("%q at %.1f leaves the sheet of %g x %g", b.S, b.Box, d.W, d.H)
		}
	}
}

func TestPartsDoNotCollide(t *testing.T) {
	d := parts()
	if n := len(d.TextBoxes()); n < 30 {
		t.Fatalf("%d texts", n)
	}
	noCollisions(t, d)
}

func TestTableFitsItsText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cols := rapid.IntRange(1, 6).Draw(t, "columns")
		cell := rapid.StringMatching(`[a-zA-Z0-9½° -]{0,40}`)
		row := rapid.SliceOfN(cell, cols, cols)
		drawn := table.New(row.Draw(t, "head")...)
		for i := range drawn.Columns {
			drawn.Columns[i].Right = rapid.Bool().Draw(t, "right")
		}
		for _, words := range rapid.SliceOfN(row, 0, 8).Draw(t, "rows") {
			drawn.Add(words...)
		}
		drawn.Strong = rapid.SliceOfN(rapid.Bool(), 0, 8).Draw(t, "strong")
		width := rapid.Float64Range(60, 250).Draw(t, "width")
		l := sheet.FitTable(drawn, sheet.SizeText, width)
		if l.Width() > width+1e-6 {
			t.Fatalf("%g mm wide, room for %g", l.Width(), width)
		}
		h := l.Height(0, l.Rows())
		d := sheet.New("table", width+20, h+20, sheet.Base())
		g, _ := d.Group("", "")
		if got := l.Draw(g, sheet.Pt(10, 10), 0, l.Rows()); got-h > 1e-9 || h-got > 1e-9 {
			t.Fatalf("drew %g mm, said %g", got, h)
		}
		noCollisions(t, d)
		inside := sheet.Rect{X: 10 - 1e-6, Y: 10, W: l.Width() + 2e-6, H: h}
		for _, b := range d.TextBoxes() {
			if !inside.Contains(b.Box) {
				t.Fatalf("%q at %.2f leaves the table %.2f", b.S, b.Box, inside)
			}
		}
	})
}

// Pages of a table hold all rows, none too high.
func TestTableBreaksOverPages(t *testing.T) {
	long := partsTable()
	for range 6 {
		long.Rows = append(long.Rows, long.Rows...)
	}
	l := sheet.FitTable(long, sheet.SizeText, 90)
	const page = 60.0
	pages, from := 0, 0
	for from < l.Rows() {
		n := l.Fits(from, page)
		if n == 0 || l.Height(from, n) > page {
			t.Fatalf("page %d holds %d rows, %g mm", pages, n, l.Height(from, n))
		}
		from += n
		pages++
	}
	if from != l.Rows() || pages < 10 {
		t.Errorf("%d rows on %d pages, want %d rows", from, pages, l.Rows())
	}
}
