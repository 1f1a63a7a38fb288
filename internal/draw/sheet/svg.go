package sheet

import (
	"encoding/base64"
	"maps"
	"slices"
	"strconv"
)

// SVG returns the drawing as a standalone SVG file: width and height in
// millimetres, a user unit of 1 mm, the style sheet and the fonts in use
// embedded. Coordinates are rounded to 0.01 mm.
func SVG(d *Drawing) []byte {
	w := &svgWriter{d: d.pictured(Lack.viewers), standalone: true}
	return w.file()
}

// InlineSVG returns the drawing as an svg element for a web page. It names
// classes only: the page brings the rules (see [Stylesheet.CSS]) and the size,
// and serves the Go fonts if the text is to fit as drawn. No style attributes
// are used, so that a strict content security policy lets it pass.
func InlineSVG(d *Drawing) []byte {
	w := &svgWriter{d: d}
	return w.file()
}

// InlineLayers returns what stands on some layers of a drawing, as [InlineSVG]
// writes it within the layer's group: for a page that changes these and leaves the rest.
func InlineLayers(d *Drawing, layers ...string) map[string][]byte {
	out, look := make(map[string][]byte), newStyler(d.Styles)
	for _, name := range layers {
		w := &svgWriter{d: d, look: look}
		w.layer(name)
		out[name] = w.b
	}
	return out
}

type svgWriter struct {
	d          *Drawing
	b          []byte
	standalone bool
	clips      int
	glyphs     glyphUse
	look       *styler
}

func (w *svgWriter) file() []byte {
	w.b = make([]byte, 0, 1<<14)
	body := &svgWriter{d: w.d, standalone: w.standalone, glyphs: glyphUse{}, look: newStyler(w.d.Styles)}
	body.layers()
	w.head()
	if w.standalone {
		w.styles(body.glyphs)
	}
	w.b = append(w.b, body.b...)
	w.str("</svg>\n")
	return w.b
}

func (w *svgWriter) head() {
	d := w.d
	if w.standalone {
		w.str(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	}
	w.str(`<svg xmlns="http://www.w3.org/2000/svg"`)
	if w.standalone {
		w.num(` width="`, d.W)
		w.num(`mm" height="`, d.H)
		w.str(`mm"`)
	} else {
		w.attr("class", "sheet sheet-"+d.Name)
	}
	w.num(` viewBox="0 0 `, d.W)
	w.num(" ", d.H)
	w.str(`" fill="none" stroke="none" stroke-linejoin="round" fill-rule="evenodd"`)
	if slices.ContainsFunc(d.Items, interactive) {
		w.attr("role", "group")
	} else {
		w.attr("role", "img")
	}
	if d.Title != "" {
		w.attr("aria-label", d.Title)
	}
	w.str(">\n")
	if d.Title != "" {
		w.str("<title>")
		w.text(d.Title)
		w.str("</title>\n")
	}
	if d.Desc != "" {
		w.str("<desc>")
		w.text(d.Desc)
		w.str("</desc>\n")
	}
}

func interactive(e *Element) bool {
	if g, ok := e.Shape.(*Group); ok && slices.ContainsFunc(g.Items, interactive) {
		return true
	}
	return e.Role != "" || e.Link != ""
}

func (w *svgWriter) styles(use glyphUse) {
	w.str("<style>\ntext{font-kerning:none;white-space:pre}\n")
	for _, f := range slices.Sorted(maps.Keys(use)) {
		w.str("@font-face{font-family:" + f.familyName() + ";font-weight:" + f.weight() + ";font-style:" + f.slant() +
			";src:url(data:font/ttf;base64,")
		w.b = base64.StdEncoding.AppendEncode(w.b, f.font().Subset(use.glyphs(f), true))
		w.str(")}\n")
	}
	w.str(w.d.Styles.css("", false))
	w.str("</style>\n")
	w.num(`<rect width="`, w.d.W)
	w.num(`" height="`, w.d.H)
	w.str(`" fill="#fff"/>` + "\n")
}

func (w *svgWriter) layers() {
	for _, name := range w.d.LayerOrder() {
		w.str("<g")
		if name != "" {
			w.attr("class", "layer")
			w.attr("data-layer", name)
		}
		w.str(">\n")
		w.layer(name)
		w.str("</g>\n")
	}
}

// layer writes the elements of one layer.
func (w *svgWriter) layer(name string) {
	for _, e := range w.d.Items {
		if e.Layer == name {
			w.element(e, styled{})
		}
	}
}

func (w *svgWriter) element(e *Element, base styled) {
	if g, ok := e.Shape.(*Group); ok && len(g.Items) == 0 && e.Part != nil {
		return // an empty cell of a table: PDF alone tells cells
	}
	st := w.look.resolve(e.Class, base)
	if e.Link != "" && safeLink(e.Link) {
		w.str("<a")
		w.attr("href", e.Link)
		w.str(">")
	}
	w.shape(e, st)
	if e.Link != "" && safeLink(e.Link) {
		w.str("</a>")
	}
	w.str("\n")
}

// common writes the attributes that every element may have.
func (w *svgWriter) common(e *Element) {
	if e.ID != "" {
		w.attr("id", e.ID)
	}
	if e.Class != "" {
		w.attr("class", e.Class)
	}
	for _, k := range slices.Sorted(maps.Keys(e.Data)) {
		w.attr("data-"+attrName(k), e.Data[k])
	}
	if e.Role != "" {
		w.attr("role", e.Role)
		if e.Role == "button" {
			w.str(` tabindex="0"`)
		}
		if e.Title != "" {
			w.attr("aria-label", e.Title)
		}
	}
}

// finish closes an element's start tag, with its title as its only child.
func (w *svgWriter) finish(e *Element, tag string) {
	if e.Title == "" {
		w.str("/>")
		return
	}
	w.str(">")
	w.title(e)
	w.str("</" + tag + ">")
}

func (w *svgWriter) title(e *Element) {
	if e.Title != "" {
		w.str("<title>")
		w.text(e.Title)
		w.str("</title>")
	}
}

func (w *svgWriter) str(s string) { w.b = append(w.b, s...) }

func (w *svgWriter) num(before string, v float64) {
	w.b = append(w.b, before...)
	w.b = appendMM(w.b, v)
}

func (w *svgWriter) point(before string, p Point) {
	w.num(before, p.X)
	w.num(" ", p.Y)
}

// rect opens a tag with a place and a size, the last attribute still open.
func (w *svgWriter) rect(tag string, r Rect) {
	w.num(tag+` x="`, r.X)
	w.num(`" y="`, r.Y)
	w.num(`" width="`, r.W)
	w.num(`" height="`, r.H)
}

func (w *svgWriter) attr(name, value string) {
	w.b = append(w.b, ' ')
	w.b = append(w.b, name...)
	w.b = append(w.b, '=', '"')
	w.text(value)
	w.b = append(w.b, '"')
}

// text writes escaped text; characters that XML forbids become a replacement mark.
func (w *svgWriter) text(s string) {
	for _, r := range s {
		switch {
		case r == '<':
			w.str("&lt;")
		case r == '>':
			w.str("&gt;")
		case r == '&':
			w.str("&amp;")
		case r == '"':
			w.str("&quot;")
		case r < ' ' && r != '\t' && r != '\n', r == 0xFFFE, r == 0xFFFF:
			w.str("\uFFFD")
		default:
			w.b = append(w.b, string(r)...)
		}
	}
}

func (w *svgWriter) clipID() string {
	w.clips++
	return "clip-" + attrName(w.d.Name) + "-" + strconv.Itoa(w.clips)
}
