package sheet

import (
	"encoding/binary"
	"hash/crc32"
	"math"
)

func (c *pngPage) words(t Text, st Style) {
	f := c.top()
	size := t.size(st) * f.scale
	face := st.Face.font()
	s, k := math.Sincos(t.Rotate)
	dx, dy := -st.Face.Width(t.S, size)*t.Anchor.share(), t.drop(st)*f.scale
	origin := f.offset.Add(t.At.Scale(f.scale))
	pen := &glyphPen{size: size, tol: pngTolerance}
	for _, r := range t.S {
		g := face.Index(r)
		pen.x = Point{origin.X + dx*k + dy*s, origin.Y - dx*s + dy*k}
		pen.s, pen.k = s, k
		face.Outline(g, pen)
		dx += face.Advance(g) * size
	}
	c.ink.fill(c.img, f.clip, pen.parts, st.Fill.rgba())
}

// glyphPen gathers glyph outlines in pixels, turned and placed.
type glyphPen struct {
	size, tol float64
	x         Point // the glyph's origin
	s, k      float64
	parts     []chain
	last      Point
}

func (p *glyphPen) at(x, y float64) Point {
	x, y = x*p.size, y*p.size
	return Point{p.x.X + x*p.k - y*p.s, p.x.Y - x*p.s - y*p.k}
}

func (p *glyphPen) add(q Point) {
	part := &p.parts[len(p.parts)-1]
	part.pts = append(part.pts, q)
	p.last = q
}

// Move starts a contour.
func (p *glyphPen) Move(x, y float64) {
	p.parts = append(p.parts, chain{closed: true})
	p.add(p.at(x, y))
}

// Line adds a straight line.
func (p *glyphPen) Line(x, y float64) { p.add(p.at(x, y)) }

// Quad adds a quadratic curve.
func (p *glyphPen) Quad(cx, cy, x, y float64) {
	a, c, b := p.last, p.at(cx, cy), p.at(x, y)
	// A quadratic leaves its chord by a quarter of the second difference.
	n := max(1, int(math.Ceil(math.Sqrt(a.Sub(c.Scale(2)).Add(b).Dist(Point{})/4/p.tol))))
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		p.add(a.Scale(u * u).Add(c.Scale(2 * u * t)).Add(b.Scale(t * t)))
	}
}

// Close ends a contour.
func (p *glyphPen) Close() {}

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
