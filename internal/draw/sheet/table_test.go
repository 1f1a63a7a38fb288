package sheet_test

import (
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
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
		table := sheet.Table{
			Head: row.Draw(t, "head"), Rows: rapid.SliceOfN(row, 0, 8).Draw(t, "rows"),
			Align:   rapid.SliceOfN(rapid.SampledFrom([]sheet.Anchor{sheet.Start, sheet.Middle, sheet.End}), cols, cols).Draw(t, "align"),
			Classes: rapid.SliceOfN(rapid.SampledFrom([]string{"", "strong"}), 0, 8).Draw(t, "classes"),
		}
		width := rapid.Float64Range(60, 250).Draw(t, "width")
		l := table.Fit(width)
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
	table := partsTable()
	for range 6 {
		table.Rows = append(table.Rows, table.Rows...)
	}
	l := table.Fit(90)
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
