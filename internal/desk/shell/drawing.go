package shell

import (
	"html/template"

	"example.org/rinkpane/internal/draw/sheet"
)

// MapWidth is the width of a plan map on a page, in millimetres of the drawing: a
// page scales it, so it sets how large words are against the rink.
const MapWidth = 230.0

// Inline returns a drawing for a page. What stands for a hole on it is a link to
// the page with the hole picked, so that it can be picked without a script. The
// writer escapes every text in it.
func Inline(d *sheet.Drawing, at Address) template.HTML {
	LinkHoles(d.Items, at)
	return template.HTML(sheet.InlineSVG(d))
}

// LinkHoles makes what stands for a hole a link to the page with the hole picked.
func LinkHoles(items []*sheet.Element, at Address) {
	for _, e := range items {
		if hole := e.Data["hole"]; hole != "" && e.Role == "button" {
			e.Role, e.Link = "", at.Pick(hole).URL()
			continue
		}
		if g, ok := e.Shape.(*sheet.Group); ok {
			LinkHoles(g.Items, at)
		}
	}
}
