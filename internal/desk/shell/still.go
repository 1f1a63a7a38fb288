package shell

import (
	"html/template"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/arena"
)

// Still draws an arena's map on which nothing can be pressed.
func Still(a arena.Arena) template.HTML {
	d := chart.PlanMap(chart.Content{Arena: a, Bare: true}, MapWidth)
	quiet(d.Items)
	return template.HTML(sheet.InlineSVG(d)) // the writer escapes every text in it
}

func quiet(items []*sheet.Element) {
	for _, e := range items {
		e.Role = ""
		if g, ok := e.Shape.(*sheet.Group); ok {
			quiet(g.Items)
		}
	}
}
