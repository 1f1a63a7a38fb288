package sheet_test

import (
	"fmt"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/table"
)

func flowing() *sheet.Flow {
	return sheet.NewFlow(func() (*sheet.Drawing, sheet.Rect) {
		return sheet.New("page", 120, 100, sheet.Base()), sheet.Rect{X: 10, Y: 10, W: 100, H: 80}
	})
}

// Whatever flows in stays inside the area of its sheet, and nothing is lost.
func TestFlowStaysInside(t *testing.T) {
	f := flowing()
	long := table.New("row", "text")
	for i := range 60 {
		long.Add(fmt.Sprintf("r%d", i), "some words in a cell")
	}
	f.Heading("A table")
	f.Table(long, sheet.SizeText)
	for i := range 30 {
		f.Notes(fmt.Sprintf("Sentence %d runs over more than one line, so that it has to be wrapped and moved as a whole.", i))
	}
	f.Numbered("first", "second", "third")
	f.Drawing(sheet.New("inset", 300, 90, sheet.Base()))
	f.Heading("Last")
	pages := f.Sheets()
	if len(pages) < 6 {
		t.Fatalf("%d sheets", len(pages))
	}
	rows := 0
	area := sheet.Rect{X: 10, Y: 10, W: 100, H: 80}
	for i, d := range pages {
		if b := d.Bounds(); b.H > 0 && !area.Inset(-0.5).Contains(b) {
			t.Errorf("sheet %d: %+v leaves the area", i, b)
		}
		for _, s := range texts(d) {
			if len(s) > 1 && s[0] == 'r' && s[1] >= '0' && s[1] <= '9' {
				rows++
			}
		}
	}
	if rows != 60 {
		t.Errorf("%d rows of 60 are there", rows)
	}
}

// A heading moves on with what it heads.
func TestHeadingIsNotLeftAlone(t *testing.T) {
	f := flowing()
	f.Skip(70)
	f.Heading("Below")
	if n := len(f.Sheets()); n != 2 {
		t.Errorf("%d sheets, want the heading on a second", n)
	}
	if f.Room().H > 80-5 || f.Group() == nil {
		t.Errorf("room %+v", f.Room())
	}
}

// texts returns every text of a drawing.
func texts(d *sheet.Drawing) []string {
	var out []string
	var follow func([]*sheet.Element)
	follow = func(items []*sheet.Element) {
		for _, e := range items {
			switch s := e.Shape.(type) {
			case *sheet.Group:
				follow(s.Items)
			case sheet.Text:
				out = append(out, s.S)
			}
		}
	}
	follow(d.Items)
	return out
}
