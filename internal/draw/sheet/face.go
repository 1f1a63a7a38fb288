package sheet

import "example.org/rinkpane/internal/draw/sheet/internal/typeface"

// Face is a type face. The zero value says nothing and prints as Regular.
type Face uint8

// The faces, all from the Go fonts (Bigelow & Holmes, BSD licence).
const (
	_ Face = iota
	Regular
	Bold
	Italic
	Mono
)

func (f Face) font() *typeface.Face { return typeface.Get(typeface.ID(max(f, Regular) - Regular)) }

// Width returns the width in millimetres of a line of text at a type size in millimetres.
func (f Face) Width(s string, size float64) float64 { return f.font().Width(s) * size }

// FitSize returns the largest size from most down to least, in millimetres, at
// which a text is no wider than width; least when none is.
func (f Face) FitSize(s string, most, least, width float64) float64 {
	if w := f.Width(s, most); w > width {
		return max(least, most*width/w)
	}
	return most
}

// CapHeight returns the height of the capitals in millimetres at a type size in millimetres.
func (f Face) CapHeight(size float64) float64 { return f.font().CapHeight * size }

// Descent returns how far tails hang below the baseline, in millimetres, at a type size in millimetres.
func (f Face) Descent(size float64) float64 { return f.font().Descent * size }

// FontFile returns the whole font file (TrueType), for a page that serves it.
func (f Face) FontFile() []byte { return f.font().Raw }

// Family returns the CSS font family list of the face.
func (f Face) Family() string {
	if f == Mono {
		return `"Go Mono",monospace`
	}
	return `Go,"Helvetica Neue",Arial,sans-serif`
}

// Box returns the upright box that a text fills, tails included, in millimetres.
// style is the text's resolved style. A rotated text gives the box round it.
func (t Text) Box(style Style) Rect { return turnedBox(t.At, t.level(style), t.Rotate) }

// level is the box of the text before it is turned, relative to its point.
func (t Text) level(style Style) Rect {
	size := t.size(style)
	w := style.Face.Width(t.S, size)
	up, down := style.Face.CapHeight(size), style.Face.Descent(size)
	x0 := -w * t.Anchor.share()
	y0 := t.drop(style) - up
	return Rect{x0, y0, w, up + down}
}

func (t Text) size(style Style) float64 {
	if t.Size > 0 {
		return t.Size
	}
	if style.Size > 0 {
		return style.Size
	}
	return defaultSize
}

// defaultSize is the type size in millimetres where neither text nor class names one.
const defaultSize = 3

// drop is how far the baseline lies below the text's point, in millimetres.
func (t Text) drop(style Style) float64 {
	up := style.Face.CapHeight(t.size(style))
	switch t.VAlign {
	case Centre:
		return up / 2
	case Top:
		return up
	}
	return 0
}

// share is the part of the text's width that lies before its point.
func (a Anchor) share() float64 { return float64(a) / 2 }

// familyName is the face's family as the embedded font is called.
func (f Face) familyName() string {
	if f == Mono {
		return `"Go Mono"`
	}
	return "Go"
}
