package chart

import (
	"fmt"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// fanDepth is how deep into the rink a hole's wedge is drawn where it is one of
// several: all of them to the far boards would cover one another. Own choice.
const fanDepth = 8 * unit.Metre

// OfPlan returns what the drawings of a plan show, lengths in the system's units.
// The hole picked, "" for none, has its wedge drawn to the far boards.
func OfPlan(p plan.Plan, sys unit.System, picked string) Content {
	c := Content{
		Arena: p.Arena, Permitted: p.Permitted, Undecided: p.Undecided, Picked: picked,
		Status: map[string]rules.Status{}, Notes: map[string]string{},
	}
	c.Arena.Units = sys
	for _, h := range p.Holes {
		c.Status[h.ID] = h.Status
		best, ok := h.BestFit()
		if !ok {
			c.Notes[h.ID] = "no lens fits"
			continue
		}
		c.Aim(h.ID, best, h.ID == picked)
	}
	return c
}

// Aim draws how far a lens turns in a hole with clean corners, to the far boards
// or only a little way, in place of the wedge that the hole had.
func (p *Content) Aim(hole string, f plan.LensFit, far bool) {
	p.Notes[hole] = f.Lens.ID
	turn, ok := f.Pan.Clear.Get()
	if !ok {
		return
	}
	fan := Wedge{Hole: hole, Left: turn, Right: turn, Depth: fanDepth}
	if far {
		fan.Depth = 0
	}
	for i, w := range p.Reach {
		if w.Hole == hole {
			p.Reach[i] = fan
			return
		}
	}
	p.Reach = append(p.Reach, fan)
}

// HeatOn returns a map over a grid, without a value yet.
func HeatOn(g *sight.Grid, title string) *Heat {
	half := g.Step / 2
	return &Heat{Title: title, Corner: g.At(0, 0).Sub(geom.Vec2{X: half, Y: half}), Step: g.Step, Cols: g.Columns, Rows: g.Rows}
}

// HeatOf returns the map of a layer of what holes see: of one hole how many lenses
// can be aimed at each place, of several from how many holes some lens can.
func HeatOf(title string, layer int, reaches ...sight.Reach) *Heat {
	h := HeatOn(reaches[0].Grid, title)
	h.Low = "none"
	h.Values, h.Counts = reaches[0].Parts(layer), len(reaches[0].Lenses)
	if len(reaches) > 1 {
		h.Values, h.Counts = sight.HoleParts(reaches, layer), len(reaches)
	}
	h.High = fmt.Sprintf("all %d", h.Counts)
	return h
}
