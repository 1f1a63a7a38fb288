package sheet

import (
	"bytes"
	"encoding/base64"
	"image/png"
	"math"
	"strings"
)

func (w *svgWriter) shape(e *Element, st styled) {
	switch s := e.Shape.(type) {
	case Circle:
		w.num(`<circle cx="`, s.C.X)
		w.num(`" cy="`, s.C.Y)
		w.num(`" r="`, s.R)
		w.str(`"`)
		w.common(e)
		w.finish(e, "circle")
	case outlined:
		w.path(e, s.path())
	case Text:
		w.words(e, s, st.Style)
	case Image:
		w.image(e, s)
	case *Group:
		w.group(e, s, st)
	}
}

func (w *svgWriter) path(e *Element, p Path) {
	w.str(`<path d="`)
	var at, start Point
	for _, s := range p.Steps {
		switch s.Op {
		case MoveTo:
			w.point("M", s.P)
			start = s.P
		case LineTo:
			w.point("L", s.P)
		case ArcTo:
			w.arc(at, s)
		case CubicTo:
			w.point("C", s.C1)
			w.point(" ", s.C2)
			w.point(" ", s.P)
		case ClosePath:
			w.str("Z")
			s.P = start
		}
		at = s.P
	}
	w.str(`"`)
	w.common(e)
	w.finish(e, "path")
}

// arc writes an elliptical arc command. SVG's sweep flag 1 turns clockwise as seen.
func (w *svgWriter) arc(from Point, s Step) {
	a := arcOf(from, s.P, s.Bulge)
	w.num("A", a.R)
	w.num(" ", a.R)
	large, sweep := " 0 0", " 1 "
	if math.Abs(a.Sweep) > math.Pi {
		large = " 0 1"
	}
	if a.Sweep > 0 {
		sweep = " 0 "
	}
	w.str(large + sweep)
	w.point("", s.P)
}

// words writes one line of text. A size of the text's own that differs from its
// class's is reached by scaling, because a class rule would win over an attribute.
func (w *svgWriter) words(e *Element, t Text, st Style) {
	size, k := t.size(st), 1.0
	if st.Size > 0 {
		k = size / st.Size
	}
	y := t.At.Y + t.drop(st)
	w.str("<text")
	if k != 1 || t.Rotate != 0 {
		w.str(` transform="`)
		if t.Rotate != 0 {
			w.b = appendRounded(append(w.b, "rotate("...), -t.Rotate*180/math.Pi, 4)
			w.point(" ", t.At)
			w.str(")")
		}
		if k != 1 {
			w.point("translate(", Point{t.At.X, y})
			w.b = appendRounded(append(w.b, ")scale("...), k, 5)
			w.str(")")
		}
		w.str(`"`)
	}
	if k == 1 {
		w.num(` x="`, t.At.X)
		w.num(`" y="`, y)
		w.str(`"`)
	}
	if st.Size == 0 {
		w.num(` font-size="`, size)
		w.str(`"`)
	}
	w.str([...]string{"", ` text-anchor="middle"`, ` text-anchor="end"`}[t.Anchor])
	if w.standalone && t.S != "" {
		w.num(` textLength="`, st.Face.Width(t.S, size/k))
		w.str(`" lengthAdjust="spacingAndGlyphs"`)
		w.glyphs.add(st.Face, t.S)
	}
	w.common(e)
	w.str(">")
	w.title(e)
	w.text(t.S)
	w.str("</text>")
}

func (w *svgWriter) image(e *Element, m Image) {
	linked := m.Address != "" && !w.standalone && safeLink(m.Address)
	var buf bytes.Buffer
	if !linked && (m.Img == nil || png.Encode(&buf, m.Img) != nil) {
		return
	}
	w.rect("<image", m.Rect)
	w.str(`" preserveAspectRatio="none" image-rendering="pixelated"`)
	if linked {
		w.attr("href", m.Address)
	} else {
		w.str(` href="data:image/png;base64,`)
		w.b = base64.StdEncoding.AppendEncode(w.b, buf.Bytes())
		w.str(`"`)
	}
	w.common(e)
	w.finish(e, "image")
}

func (w *svgWriter) group(e *Element, g *Group, st styled) {
	clip := ""
	if g.Clip != nil {
		clip = w.clipID()
		w.str(`<clipPath id="` + clip + `">`)
		w.rect("<rect", *g.Clip)
		w.str(`"/></clipPath>`)
	}
	w.str("<g")
	if g.Offset != (Point{}) || g.factor() != 1 {
		w.point(` transform="translate(`, g.Offset)
		w.str(")")
		if g.factor() != 1 {
			w.b = appendRounded(append(w.b, "scale("...), g.factor(), 6)
			w.str(")")
		}
		w.str(`"`)
	}
	if clip != "" {
		w.str(` clip-path="url(#` + clip + `)"`)
	}
	w.common(e)
	w.str(">")
	w.title(e)
	w.str("\n")
	for _, item := range g.Items {
		w.element(item, st)
	}
	w.str("</g>")
}

// attrName keeps of a name what an attribute or id may hold.
func attrName(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '-', r == '_':
			return r
		case r >= 'A' && r <= 'Z':
			return r + ('a' - 'A')
		}
		return '-'
	}, s)
}

// safeLink reports whether a link leads within the document, to a path of the
// same site, or to an http address: never to a script.
func safeLink(s string) bool {
	return strings.HasPrefix(s, "#") || strings.HasPrefix(s, "/") ||
		strings.HasPrefix(s, "https://") || strings.HasPrefix(s, "http://")
}
