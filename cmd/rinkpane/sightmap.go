package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
)

// The map's width on paper and how finely a PNG shows it.
const (
	mapWidthMM = 260
	mapDPI     = 150
)

// drawReach draws the map: for one hole how many of the lenses reach each
// place, for several from how many holes some lens does.
func drawReach(a *app, ar arena.Arena, reaches []sight.Reach, f sightFlags) error {
	if len(reaches) == 0 {
		return fmt.Errorf("--map: there is no working hole to draw")
	}
	layer := 0
	if _, asked := f.height.Get(); asked {
		layer = len(reaches[0].Layers) - 1
	}
	height := reaches[0].Layers[layer].Height.Format(ar.Units)
	title, picked := fmt.Sprintf("Holes that reach, %s above the ice", height), ""
	if len(reaches) == 1 {
		picked = reaches[0].Hole
		title = fmt.Sprintf("Lenses that reach from %s, %s above the ice", picked, height)
	}
	p := chart.Content{Arena: ar, Heat: chart.HeatOf(title, layer, reaches...), Picked: picked}
	return drawMap(a, chart.PlanMap(p, mapWidthMM), f.out, f.force)
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
func drawMap(a *app, d *sheet.Drawing, out string, force bool) error {
	lacking(a, d.Lacking())
	if mapKind(out) == ".svg" {
		return writeFile(out, sheet.SVG(d), force)
	}
	data, err := sheet.PNG(d, mapDPI)
	if err != nil {
		return fmt.Errorf("--map %s: %w", out, err)
	}
	return writeFile(out, data, force)
}
