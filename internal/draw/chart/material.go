package chart

import (
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/glass"
)

// materialStyles has two classes for each row of the materials' table: panes
// as lines from above ("pane-...") and as fields from the side ("glass-...").
// The family has the colour; within it the first material is drawn solid, each
// further one with one dot more between its dashes.
func materialStyles() sheet.Stylesheet {
	var lines, fields sheet.Stylesheet
	met := map[glass.Family]int{}
	for _, p := range glass.Table() {
		line, field, dash := sheet.Style{}, sheet.Style{}, []float64{1.6, 0.4}
		if p.Family == glass.Mineral {
			line, field, dash = sheet.Style{Stroke: sheet.Slate}, sheet.Style{Fill: sheet.Frost, Width: sheet.W35}, []float64{2.4, 0.5}
		}
		if n := met[p.Family]; n > 0 {
			for range n - 1 {
				dash = append(dash, dash[1], dash[1])
			}
			line.Dash, field.Dash = dash, dash
		}
		met[p.Family]++
		lines = append(lines, sheet.Rule{Class: materialClass("pane", p.Name), Style: line})
		fields = append(fields, sheet.Rule{Class: materialClass("glass", p.Name), Style: field})
	}
	return append(lines, fields...)
}

// materialClass returns the class of a pane's material; what is not recorded,
// and what the table does not know, is drawn as not surveyed.
func materialClass(prefix string, m glass.Material) string {
	p, err := m.Properties()
	if err != nil {
		return prefix + "-unsaid"
	}
	return prefix + "-" + p.Slug
}
