package sheet

import (
	"slices"
	"testing"

	"golang.org/x/image/font/sfnt"
)

func TestWebFontHoldsItsLetters(t *testing.T) {
	small := Regular.WebFont("Rink ½")
	if whole := Regular.FontFile(); len(small) > len(whole)/3 {
		t.Errorf("six letters take %d bytes of the font's %d", len(small), len(whole))
	}
	font, err := sfnt.Parse(small)
	if err != nil {
		t.Fatal(err)
	}
	whole, err := sfnt.Parse(Regular.FontFile())
	if err != nil {
		t.Fatal(err)
	}
	var buf, all sfnt.Buffer
	for letter, want := range map[rune]bool{'R': true, 'k': true, '½': true, 'Z': false} {
		g, err := font.GlyphIndex(&buf, letter)
		if err != nil {
			t.Fatal(err)
		}
		outline, err := font.LoadGlyph(&buf, g, 1000<<6, nil)
		if want {
			g, err := whole.GlyphIndex(&all, letter)
			if err != nil {
				t.Fatal(err)
			}
			if full, err := whole.LoadGlyph(&all, g, 1000<<6, nil); err != nil || !slices.Equal(full, outline) {
				t.Errorf("letter %c is drawn otherwise than in the whole font (%v)", letter, err)
			}
		}
		if err != nil || (len(outline) > 0) != want {
			t.Errorf("letter %c has an outline of %d parts, %v; expected one: %v", letter, len(outline), err, want)
		}
	}
}
