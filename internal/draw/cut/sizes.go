package cut

import (
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/measure/unit"
)

// size is one size of a drawing with its tolerance, and what an inspection calls it.
type size struct {
	what     string
	is, plus unit.Length
	of       []custody.Quantity
}

// sizes lists the job's sizes with their tolerances.
func (j Job) sizes() []size {
	o := j.Cover.Options
	return []size{
		{"hole's width", j.Hole.Size.W, o.HoleTolerance, []custody.Quantity{custody.Width}},
		{"hole's height", j.Hole.Size.H, o.HoleTolerance, []custody.Quantity{custody.Height}},
		{"corner radius", j.Corner, radiusTolerance, []custody.Quantity{custody.CornerRadius}},
		{"edge rounding, both faces", j.Rounding, roundTolerance, []custody.Quantity{custody.RoundingRink, custody.RoundingBack}},
		{"pane's thickness (the sheet's own)", j.Thick, j.Material.ThicknessTolerance(j.Thick), []custody.Quantity{custody.Thickness}},
	}
}

// placesAndPlug lists the places and the plug's sizes with their tolerances.
func (j Job) placesAndPlug() []size {
	c := j.Cover
	return []size{
		{"left edge to centre", j.Face.Behind(j.Face.Left, j.Thick), placeTolerance, []custody.Quantity{custody.FromLeft}},
		{"top of the boards to centre", j.Face.Up, placeTolerance, []custody.Quantity{custody.AboveBoards}},
		{"plug's width", c.Plug.W, c.Options.PlugTolerance, []custody.Quantity{custody.CoverWidth}},
		{"plug's height", c.Plug.H, c.Options.PlugTolerance, []custody.Quantity{custody.CoverHeight}},
		{"plug's corner radius", c.PlugCorner, radiusTolerance, []custody.Quantity{custody.CoverRadius}},
	}
}

// Acceptance returns what an inspection holds the made hole and its cover to: the
// drawing's sizes and places with their tolerances, as measured on the shooting face.
func (j Job) Acceptance() []custody.Limits {
	var out []custody.Limits
	for _, s := range append(j.sizes(), j.placesAndPlug()...) {
		for _, q := range s.of {
			out = append(out, custody.Limits{What: q, Low: unit.Known(max(0, s.is-s.plus)), High: unit.Known(s.is + s.plus)})
		}
	}
	return out
}

// Tolerances of the drawing, plus or minus: own choices. A router holds 0.1
// to 0.2 mm (fabricators' guides); a hole is felt and covered, not pressed.
const (
	placeTolerance  = 2 * unit.Millimetre
	radiusTolerance = 0.5 * unit.Millimetre
	roundTolerance  = 1 * unit.Millimetre
)
