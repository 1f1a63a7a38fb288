package typeface

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Pen receives a glyph's outline in em, y up. Each part is closed.
type Pen interface {
	Move(x, y float64)
	Line(x, y float64)
	Quad(cx, cy, x, y float64)
	Close()
}

// Outline draws a glyph with a pen.
func (f *Face) Outline(glyph uint16, pen Pen) {
	var buf sfnt.Buffer
	segs, err := f.font.LoadGlyph(&buf, sfnt.GlyphIndex(glyph), f.ppem(), nil)
	if err != nil {
		return
	}
	pt := func(p fixed.Point26_6) (float64, float64) { return f.em(p.X), -f.em(p.Y) }
	open := false
	for _, s := range segs {
		x, y := pt(s.Args[0])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if open {
				pen.Close()
			}
			pen.Move(x, y)
			open = true
		case sfnt.SegmentOpLineTo:
			pen.Line(x, y)
		case sfnt.SegmentOpQuadTo:
			ex, ey := pt(s.Args[1])
			pen.Quad(x, y, ex, ey)
		}
	}
	if open {
		pen.Close()
	}
}
