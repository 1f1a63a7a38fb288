package sheet

import (
	"encoding/binary"
	"hash/crc32"
	"math"
)

func (c *pngPage) words(t Text, st Style) {
	f := c.top()
	var parts []chain
	for _, part := range t.outline(st).flatten(pngTolerance / f.scale) {
		parts = append(parts, f.chain(part))
	}
	c.ink.fill(c.img, f.clip, parts, st.Fill.rgba())
}

// outline returns the text's letters as a path, inside by the non-zero rule.
func (t Text) outline(st Style) Path {
	face, size := st.Face.font(), t.size(st)
	s, k := math.Sincos(t.Rotate)
	pen := glyphPen{x: -st.Face.Width(t.S, size) * t.Anchor.share()}
	pen.at = func(x, y float64) Point { // em, y up from the baseline's start
		x, y = pen.x+x*size, t.drop(st)-y*size
		return Point{t.At.X + x*k + y*s, t.At.Y - x*s + y*k}
	}
	for _, r := range t.S {
		g := face.Index(r)
		face.Outline(g, &pen)
		pen.x += face.Advance(g) * size
	}
	return pen.Path
}

// glyphPen draws letters one after another, each beginning at x millimetres.
type glyphPen struct {
	Path
	x    float64
	at   func(x, y float64) Point
	last Point
}

// Move starts a contour.
func (p *glyphPen) Move(x, y float64) { p.MoveTo(p.to(x, y)) }

// Line adds a straight line.
func (p *glyphPen) Line(x, y float64) { p.LineTo(p.to(x, y)) }

// Quad adds a quadratic curve as the cubic that it is.
func (p *glyphPen) Quad(cx, cy, x, y float64) {
	a, c := p.last, p.at(cx, cy).Scale(2)
	b := p.to(x, y)
	p.CubicTo(a.Add(c).Scale(1.0/3), b.Add(c).Scale(1.0/3), b)
}

func (p *glyphPen) to(x, y float64) Point {
	p.last = p.at(x, y)
	return p.last
}

// withDensity adds the chunk that says how many pixels make a metre (PNG
// specification, pHYs), after the header chunk.
func withDensity(png []byte, dpi float64) []byte {
	const afterHeader = 8 + 25
	perMetre := uint32(math.Round(dpi / 0.0254))
	chunk := binary.BigEndian.AppendUint32(nil, 9)
	chunk = append(chunk, "pHYs"...)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = append(chunk, 1)
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
	out := make([]byte, 0, len(png)+len(chunk))
	out = append(out, png[:afterHeader]...)
	out = append(out, chunk...)
	return append(out, png[afterHeader:]...)
}
