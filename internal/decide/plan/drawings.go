package plan

import (
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// Sizes of the folder's drawings.
const (
	mapWidth   = 400.0 // mm: an A3 sheet across
	stripWidth = 400.0
	stripRows  = 4 // one for each corner
)

// fanDepth is how deep into the rink a hole's wedge is drawn where it is one of
// several: all of them to the far boards would cover one another. Own choice.
const fanDepth = 8 * unit.Metre

// Chart returns what the drawings show, lengths in the system's units. The hole
// picked, "" for none, has its wedge drawn to the far boards.
func (p Plan) Chart(sys unit.System, picked string) chart.Plan {
	c := chart.Plan{
		Arena: p.arena, Permitted: p.permitted, Undecided: p.undecided,
		Picked: picked,
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
		c.Notes[h.ID] = best.Lens
		if best.PanClear != nil {
			turn := unit.Angle(*best.PanClear) * unit.Degree
			fan := chart.Wedge{Hole: h.ID, Left: turn, Right: turn, Depth: fanDepth}
			if h.ID == picked {
				fan.Depth = 0
			}
			c.Reach = append(c.Reach, fan)
		}
	}
	return c
}

// drawings returns the plan map and the boards strip as SVG.
func (p Plan) drawings(sys unit.System) []File {
	c := p.Chart(sys, "")
	return []File{
		{"plan-map.svg", sheet.SVG(chart.PlanMap(c, mapWidth))},
		{"boards-strip.svg", sheet.SVG(chart.BoardsStrip(c, stripWidth, stripRows))},
	}
}
