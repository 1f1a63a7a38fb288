package main

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/arena"
)

// The map's width on paper and how finely a PNG shows it.
const (
	mapWidthMM = 260
	mapDPI     = 150
)

// drawReach draws the map: for one hole how many of the lenses reach each
// place, for several from how many holes some lens does.
func drawReach(ar arena.Arena, reaches []sight.Reach, f sightFlags) error {
	if len(reaches) == 0 {
		return fmt.Errorf("--map: there is no working hole to draw")
	}
	layer := 0
	if _, asked := f.height.Get(); asked {
		layer = len(reaches[0].Layers) - 1
	}
	p := chart.Content{Arena: ar, Heat: reachHeat(ar, reaches, layer)}
	if len(reaches) == 1 {
		p.Picked = reaches[0].Hole
	}
	return drawMap(chart.PlanMap(p, mapWidthMM), f.out, f.force)
}

func mapKind(name string) string { return strings.ToLower(filepath.Ext(name)) }

// mayDraw says before the work whether a map can be written to a file; ""
// draws none.
func mayDraw(out string, force bool) error {
	switch {
	case out == "":
		return nil
	case mapKind(out) != ".svg" && mapKind(out) != ".png":
		return fmt.Errorf("--map %s: the name must end in .png or .svg", form.Quote(out))
	}
	return mayWrite(out, force)
}

// drawMap writes a map as its file's name asks.
func drawMap(d *sheet.Drawing, out string, force bool) error {
	if mapKind(out) == ".svg" {
		return writeFile(out, sheet.SVG(d), force)
	}
	data, err := sheet.PNG(d, mapDPI)
	if err != nil {
		return fmt.Errorf("--map %s: %w", out, err)
	}
	return writeFile(out, data, force)
}

func reachHeat(ar arena.Arena, reaches []sight.Reach, layer int) *chart.Heat {
	g := reaches[0].Grid
	corner := g.At(0, 0).Sub(geom.Vec2{X: g.Step / 2, Y: g.Step / 2})
	h := &chart.Heat{Corner: corner, Step: g.Step, Cols: g.Columns, Rows: g.Rows}
	height := reaches[0].Layers[layer].Height.Format(ar.Units)
	if len(reaches) == 1 {
		h.Values = reaches[0].Parts(layer)
		h.Title = fmt.Sprintf("Lenses that reach from %s, %s above the ice", reaches[0].Hole, height)
		h.Low, h.High, h.Counts = "none", fmt.Sprintf("all %d", len(reaches[0].Lenses)), len(reaches[0].Lenses)
		return h
	}
	h.Values = holeParts(reaches, layer)
	h.Title = fmt.Sprintf("Holes that reach, %s above the ice", height)
	h.Low, h.High, h.Counts = "none", fmt.Sprintf("all %d", len(reaches)), len(reaches)
	return h
}

// holeParts returns for each cell the share of holes from which some lens reaches it.
func holeParts(reaches []sight.Reach, layer int) []float64 {
	out := make([]float64, reaches[0].Grid.Columns*reaches[0].Grid.Rows)
	for i := range reaches {
		for j, v := range reaches[i].Parts(layer) {
			switch {
			case math.IsNaN(v):
				out[j] = v
			case v > 0:
				out[j] += 1 / float64(len(reaches))
			}
		}
	}
	return out
}
