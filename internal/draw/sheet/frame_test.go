package sheet_test

import (
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"pgregory.net/rapid"
)

// Whatever a title block says, on whatever paper, its words stand inside the
// border and off each other.
func TestTitleBlockFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(sheet.Papers()).Draw(t, "paper")
		if rapid.Bool().Draw(t, "landscape") {
			p = p.Landscape()
		}
		words := rapid.StringMatching(`[A-Za-z0-9 ½,.-]{0,90}`)
		tb := sheet.TitleBlock{Title: words.Draw(t, "title"), Subject: words.Draw(t, "subject"), Caution: words.Draw(t, "caution")}
		for range rapid.IntRange(0, 8).Draw(t, "fields") {
			tb.Fields = append(tb.Fields, sheet.Field{rapid.StringMatching(`[A-Z][a-z]{0,12}`).Draw(t, "name"), words.Draw(t, "value")})
		}
		d := p.Sheet("framed", sheet.Base())
		area := d.Frame(tb)
		noCollisions(t, d)
		border := sheet.Rect{X: area.X, Y: area.Y, W: area.W, H: p.H - 2*sheet.Margin}
		for _, b := range d.TextBoxes() {
			if !border.Contains(b.Box.Inset(0.05)) || b.Box.Inset(0.05).Overlaps(area) {
				t.Fatalf("%q at %.2f, border %.2f, area %.2f", b.S, b.Box, border, area)
			}
		}
	})
}

// A title too long for its room is set smaller before it loses its end.
func TestLongTitleKeepsItsEnd(t *testing.T) {
	p, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	const title = "Hole of-the-longest-name-that-there-is: template, full size"
	d := p.Portrait().Sheet("framed", sheet.Base())
	d.Frame(sheet.TitleBlock{Title: title, Subject: "A hall of ice by the river"})
	for _, b := range d.TextBoxes() {
		if b.S == title {
			return
		}
	}
	t.Errorf("the title lost its end: %v", d.TextBoxes())
}
