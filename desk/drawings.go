package desk

import (
	"html/template"

	"example.org/rinkpane/chart"
	"example.org/rinkpane/plan"
	"example.org/rinkpane/sheet"
	"example.org/rinkpane/unit"
)

// Sizes of the drawings on a page, in millimetres of the drawing: a page scales
// them, so they set how large words are against the rink.
const (
	mapWidth   = 230.0
	stripWidth = 1150.0
)

// drawings returns the plan map and the boards strip of an arena as SVG for the
// page. Their holes are links, so that they can be picked without a script.
func drawings(p plan.Plan, at address, sys unit.System) (rinkMap, strip template.HTML) {
	c := p.Chart(sys, at.hole)
	c.Bare = true
	return inline(chart.PlanMap(c, mapWidth), at), inline(chart.BoardsStrip(c, stripWidth, 1), at)
}

// inline returns a drawing for the page. The writer escapes every text in it.
func inline(d *sheet.Drawing, at address) template.HTML {
	linkHoles(d.Items, at)
	return template.HTML(sheet.InlineSVG(d))
}

// linkHoles makes what stands for a hole a link to the page with the hole picked.
func linkHoles(items []*sheet.Element, at address) {
	for _, e := range items {
		if hole := e.Data["hole"]; hole != "" && e.Role == "button" {
			e.Role, e.Link = "", at.Hole(hole).URL()
			continue
		}
		if g, ok := e.Shape.(*sheet.Group); ok {
			linkHoles(g.Items, at)
		}
	}
}
