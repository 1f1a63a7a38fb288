package cut

import (
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Limit is one distance that a hole must keep, with what it keeps.
type Limit struct {
	What   string // "rim to the left edge" ...
	Have   unit.Length
	Least  unit.Length // or most, when AtMost is set
	AtMost bool
	Source string
}

// slack is what a distance may fall short of its limit by, for rounding in
// the survey's own numbers.
const slack = 1e-6 * unit.Metre

// Kept reports whether the limit is kept.
func (l Limit) Kept() bool {
	if l.AtMost {
		return l.Have <= l.Least+slack
	}
	return l.Have >= l.Least-slack
}

// Sources of the limits.
const (
	fabricators  = "fabricators' guides: centre of a hole 1.5 diameters or more from an edge (told of polycarbonate; acrylic from memory)"
	asFromAnEdge = "own reading of the fabricators' guides: a neighbour's rim is kept away from as an edge is, one diameter of material between rims"
	noSharp      = "fabricators' guides: no sharp inside corners; the numbers are an own choice"
	tradeTable   = "a glazing shop's table of limits for tempered glass; laminated glass is held to the same"
)

// diameters is how far a hole's centre stays from an edge, in its own widths
// or heights.
const diameters = 1.5

// Least corner radius in plastics: 6 mm, and half the pane's thickness.
const (
	leastRadius = 6 * unit.Millimetre
	radiusShare = 0.5
)

// limitsFor returns the limits of a hole in a pane of a material.
func limitsFor(m glass.Material, t unit.Length, f Face, h glass.Hole, r unit.Length) []Limit {
	if m == glass.Acrylic || m == glass.Polycarbonate {
		return plasticLimits(t, f, h, r)
	}
	return glassLimits(t, f, h, r)
}

func plasticLimits(t unit.Length, f Face, h glass.Hole, r unit.Length) []Limit {
	w, high := h.Size.W*diameters, h.Size.H*diameters
	return []Limit{
		{What: "hole's centre to the left edge", Have: f.Left, Least: w, Source: fabricators},
		{What: "hole's centre to the right edge", Have: f.Right(), Least: w, Source: fabricators},
		{What: "hole's centre to the top of the boards", Have: f.Up, Least: high, Source: fabricators},
		{What: "hole's centre to the top edge", Have: f.Down(), Least: high, Source: fabricators},
		{What: "corner radius", Have: r, Least: max(leastRadius, radiusShare*t), Source: noSharp},
	}
}

// The trade's limits for tempered glass, in thicknesses t but for the sixteenth of an inch.
const (
	edgeThicknesses   = 2.0
	cornerThicknesses = 6.5
	holeThicknesses   = 2.0 // between the rims of two holes
	filletThicknesses = 1.0
	sideShare         = 1.0 / 3 // a cut-out is at most a third of its side
	diameterPlus      = unit.Inch / 16
)

// glassLimits follows the trade's table: rim to edge at least 2 t, rim to
// corner at least 6.5 t, fillet at least t, hole at least t + 1/16 in, at most a
// third of the pane's side. The rim is nearest to a pane's corner on the
// hole's own rounded corner.
func glassLimits(t unit.Length, f Face, h glass.Hole, r unit.Length) []Limit {
	w, high := h.Size.W/2, h.Size.H/2
	edge := t * edgeThicknesses
	out := []Limit{
		{What: "rim to the left edge", Have: f.Left - w, Least: edge, Source: tradeTable},
		{What: "rim to the right edge", Have: f.Right() - w, Least: edge, Source: tradeTable},
		{What: "rim to the bottom edge at the boards", Have: f.Up - high, Least: edge, Source: tradeTable},
		{What: "rim to the top edge", Have: f.Down() - high, Least: edge, Source: tradeTable},
		{What: "rim to the nearest corner", Have: nearestCorner(f, h, r), Least: t * cornerThicknesses, Source: tradeTable},
		{What: "corner fillet", Have: r, Least: t * filletThicknesses, Source: tradeTable},
		{What: "smaller side of the hole", Have: min(h.Size.W, h.Size.H), Least: t + diameterPlus, Source: tradeTable},
		{What: "hole's width", Have: h.Size.W, Least: f.Width * sideShare, AtMost: true, Source: tradeTable},
		{What: "hole's height", Have: h.Size.H, Least: f.Height * sideShare, AtMost: true, Source: tradeTable},
	}
	return out
}

// nearestCorner returns the distance from the hole's rim to the nearest corner
// of the pane: to the centre of the fillet less its radius.
func nearestCorner(f Face, h glass.Hole, r unit.Length) unit.Length {
	dx := min(f.Left, f.Right()) - h.Size.W/2 + r
	dy := min(f.Up, f.Down()) - h.Size.H/2 + r
	return hypot(dx, dy) - r
}

// broken returns a sentence for each limit that is not kept.
func broken(limits []Limit, sys unit.System) []string {
	var out []string
	for _, l := range limits {
		if l.Kept() {
			continue
		}
		word, way := "at least", "short"
		if l.AtMost {
			word, way = "at most", "over"
		}
		out = append(out, fmt.Sprintf("%s is %s, %s %s (%s by %s)", l.What, l.Have.FormatFine(sys), word, l.Least.FormatFine(sys),
			way, abs(l.Have-l.Least).FormatFine(sys)))
	}
	return out
}
