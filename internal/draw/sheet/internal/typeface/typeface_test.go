package typeface

import (
	"fmt"
	"testing"

	"golang.org/x/image/font/sfnt"
)

// Characters that drawings need must be in every face.
const needed = "0123456789½¼¾×Ø±°²µ·–—…“”‘’≤≥≈←→äöüßéåøŁžЖΩ/+-()[]%§©"

func TestFacesHoldWhatDrawingsNeed(t *testing.T) {
	for id := range count {
		f := Get(id)
		for _, r := range needed {
			if f.Index(r) == 0 {
				t.Errorf("%s lacks %c", f.Name, r)
			}
		}
	}
}

// Capitals of the Go fonts stand about 0.72 em high, within the line's ascent.
func TestMetricsAreSane(t *testing.T) {
	for id := range count {
		f := Get(id)
		if f.CapHeight < 0.68 || f.CapHeight > 0.76 || f.XHeight < 0.5 || f.XHeight > f.CapHeight || f.Ascent < f.CapHeight || f.Descent < 0.15 || f.Descent > 0.35 {
			t.Errorf("%s: capitals %g, x %g, ascent %g, descent %g em", f.Name, f.CapHeight, f.XHeight, f.Ascent, f.Descent)
		}
		if got, want := f.Width("Ax½"), f.Advance(f.Index('A'))+f.Advance(f.Index('x'))+f.Advance(f.Index('½')); got != want {
			t.Errorf("%s: width %g, want %g", f.Name, got, want)
		}
	}
}

// outline is a pen that writes down what it is told.
type outline struct{ s string }

func (o *outline) Move(x, y float64)         { o.s += fmt.Sprintf("M%g %g", x, y) }
func (o *outline) Line(x, y float64)         { o.s += fmt.Sprintf("L%g %g", x, y) }
func (o *outline) Quad(cx, cy, x, y float64) { o.s += fmt.Sprintf("Q%g %g %g %g", cx, cy, x, y) }
func (o *outline) Close()                    { o.s += "Z" }

// A subset must read as a font, with the same letters and widths as the whole.
func TestSubsetKeepsLetters(t *testing.T) {
	for id := range count {
		f := Get(id)
		var glyphs []uint16
		for _, r := range needed {
			glyphs = append(glyphs, f.Index(r))
		}
		raw := f.Subset(glyphs, true)
		_, err := sfnt.Parse(raw)
		if err != nil {
			t.Fatalf("%s: %v", f.Name, err)
		}
		if len(raw) > len(f.Raw)/2 {
			t.Errorf("%s: subset of %d bytes, whole %d", f.Name, len(raw), len(f.Raw))
		}
		sub := read(f.Name, raw, f.ItalicDeg)
		for _, r := range needed {
			g := f.Index(r)
			var want, got outline
			f.Outline(g, &want)
			sub.Outline(g, &got)
			if got.s != want.s || sub.Index(r) != g || sub.Advance(g) != f.Advance(g) {
				t.Errorf("%s: %c differs in the subset", f.Name, r)
			}
		}
		var left outline
		sub.Outline(f.Index('Q'), &left)
		if left.s != "" {
			t.Errorf("%s: the subset kept Q", f.Name)
		}
	}
}

func TestChecksumOfTheWholeFile(t *testing.T) {
	// OpenType, "head": the whole file sums to this figure.
	if got := checksum(Get(Regular).Subset([]uint16{5, 6}, false)); got != 0xB1B0AFBA {
		t.Errorf("checksum %X", got)
	}
}

// Subsetting counts on glyphs that stand by themselves: in the "glyf" table a
// glyph built of others has a negative number of contours.
func TestNoGlyphIsBuiltOfOthers(t *testing.T) {
	seen := 0
	for id := range count {
		tab := tables(Get(id).Raw)
		for g := range numGlyphs(tab) {
			if data := glyphData(tab, uint16(g)); len(data) > 0 && data[0] >= 0x80 {
				t.Errorf("%s: glyph %d is built of others", Get(id).Name, g)
			}
			seen++
		}
	}
	if seen < 2000 {
		t.Errorf("looked at %d glyphs", seen)
	}
}
