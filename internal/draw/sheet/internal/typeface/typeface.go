// Package typeface reads the Go fonts: widths, outlines, and subsets to embed.
// Lengths are in em (1 = the type size), y up from the baseline.
package typeface

import (
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// ID names one of the faces.
type ID uint8

// The faces.
const (
	Regular ID = iota
	Bold
	Italic
	Mono
	count
)

// asciiEnd bounds the table of letters that needs no lookup.
const asciiEnd = 128

// Face is one font, read once and never changed. Its heights are in em, the scale
// of the type size.
type Face struct {
	Name       string // PostScript name
	Raw        []byte // the whole font file
	UnitsPerEm int
	Ascent     float64 // em, of the line
	Descent    float64 // em below the baseline, positive
	CapHeight  float64 // em
	XHeight    float64 // em
	ItalicDeg  float64 // slant, degrees counter-clockwise: negative leans right
	BBox       [4]float64
	font       *sfnt.Font
	ascii      [asciiEnd]letter
}

// letter is the glyph of a character and its width in em.
type letter struct {
	glyph uint16
	width float64
}

var (
	faces [count]func() *Face = [count]func() *Face{
		Regular: sync.OnceValue(func() *Face { return read("GoRegular", goregular.TTF, 0) }),
		Bold:    sync.OnceValue(func() *Face { return read("Go-Bold", gobold.TTF, 0) }),
		Italic:  sync.OnceValue(func() *Face { return read("Go-Italic", goitalic.TTF, italicSlant) }),
		Mono:    sync.OnceValue(func() *Face { return read("GoMono", gomono.TTF, 0) }),
	}
)

// italicSlant is a nominal figure for the PDF's font descriptor, degrees.
const italicSlant = -12

// Get returns a face; one that is not known gives Regular.
func Get(id ID) *Face {
	if id >= count {
		id = Regular
	}
	return faces[id]()
}

func read(name string, raw []byte, slant float64) *Face {
	f := &Face{Name: name, Raw: raw, ItalicDeg: slant, UnitsPerEm: 2048}
	parsed, err := sfnt.Parse(raw)
	if err != nil {
		return f // cannot happen: the font is compiled in and a test reads it
	}
	f.font = parsed
	f.UnitsPerEm = int(parsed.UnitsPerEm())
	var buf sfnt.Buffer
	m, _ := parsed.Metrics(&buf, f.ppem(), font.HintingNone)
	f.Ascent, f.Descent = f.em(m.Ascent), f.em(m.Descent)
	f.CapHeight, f.XHeight = f.em(m.CapHeight), f.em(m.XHeight)
	if b, err := parsed.Bounds(&buf, f.ppem(), font.HintingNone); err == nil {
		f.BBox = [4]float64{f.em(b.Min.X), -f.em(b.Max.Y), f.em(b.Max.X), -f.em(b.Min.Y)}
	}
	for r := range asciiEnd {
		g := f.index(&buf, rune(r))
		f.ascii[r] = letter{g, f.glyphAdvance(&buf, g)}
	}
	return f
}

// ppem is the size at which one pixel is one font unit.
func (f *Face) ppem() fixed.Int26_6 { return fixed.I(f.UnitsPerEm) }

func (f *Face) em(x fixed.Int26_6) float64 { return float64(x) / 64 / float64(f.UnitsPerEm) }

func (f *Face) index(buf *sfnt.Buffer, r rune) uint16 {
	g, err := f.font.GlyphIndex(buf, r)
	if err != nil {
		return 0
	}
	return uint16(g)
}

func (f *Face) glyphAdvance(buf *sfnt.Buffer, g uint16) float64 {
	a, err := f.font.GlyphAdvance(buf, sfnt.GlyphIndex(g), f.ppem(), font.HintingNone)
	if err != nil {
		return 0
	}
	return f.em(a)
}

// Index returns the glyph for a character, 0 (the empty box) when there is none.
func (f *Face) Index(r rune) uint16 {
	if r >= 0 && r < asciiEnd {
		return f.ascii[r].glyph
	}
	var buf sfnt.Buffer
	return f.index(&buf, r)
}

// Advance returns the width of a glyph, in em, the scale of the type size.
func (f *Face) Advance(glyph uint16) float64 {
	var buf sfnt.Buffer
	return f.glyphAdvance(&buf, glyph)
}

// Width returns the width of a text set in one line without kerning, in em, the
// scale of the type size.
func (f *Face) Width(s string) float64 {
	var buf *sfnt.Buffer
	w := 0.0
	for _, r := range s {
		if r < asciiEnd {
			w += f.ascii[r].width
			continue
		}
		if buf == nil {
			buf = new(sfnt.Buffer)
		}
		w += f.glyphAdvance(buf, f.index(buf, r))
	}
	return w
}
