package holes

import (
	"html/template"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
)

// Sizes of the drawings on a page, in millimetres of the drawing: a page scales
// them, so they set how large words are against the rink.
const stripWidth = 1150.0

// frames tells the page's modules where the rink lies on its drawings.
type frames struct {
	Map   chart.MapFrame
	Strip chart.StripFrame
}

// drawings returns the plan map and the boards strip of an arena as SVG for the
// page. Their holes are links, so that they can be picked without a script.
func drawings(v liveView) (rinkMap, strip template.HTML, at frames) {
	c := v.chart()
	onMap := c
	onMap.Heat = v.heat()
	at = frames{c.MapFrame(shell.MapWidth), c.StripFrame(stripWidth)}
	return shell.Inline(chart.PlanMap(onMap, shell.MapWidth), v.Address), shell.Inline(chart.BoardsStrip(c, stripWidth, 1), v.Address), at
}

// movingLayers are the layers that change when a hole moves.
var (
	movingOnMap   = []string{"reach", "holes", "labels"}
	movingOnStrip = []string{"holes"}
)

// movedLayers returns the layers of the drawings that a moved hole changes, by
// the names that the page's modules know: "map/reach".
func movedLayers(v liveView) map[string]string {
	c, out := v.chart(), map[string]string{}
	for _, of := range []struct {
		name   string
		d      *sheet.Drawing
		layers []string
	}{
		{"map/", chart.PlanMap(c, shell.MapWidth), movingOnMap},
		{"strip/", chart.BoardsStrip(c, stripWidth, 1), movingOnStrip},
	} {
		shell.LinkHoles(of.d.Items, v.Address)
		for layer, svg := range sheet.InlineLayers(of.d, of.layers...) {
			out[of.name+layer] = string(svg)
		}
	}
	return out
}
