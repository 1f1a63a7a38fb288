package rules

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

var holeSizeKind = kind{
	name: "hole-size", fields: []string{"size", "tolerance"}, windows: whereAsked,
	asks: "width and height are these, within the tolerance",
	read: func(m form.Map) demand {
		return holeSize{size: m.At("size").Size(), tolerance: m.At("tolerance").Length()}
	},
}

type holeSize struct {
	size      unit.Size
	tolerance unit.Length
}

// one measures the greater deviation of width and height.
func (d holeSize) one(c *check, h opening) Finding {
	off := max(abs(h.Size.W-d.size.W), abs(h.Size.H-d.size.H))
	return c.finding(InPane, h).atMost(off, d.tolerance).
		kept("Nothing to do: %s is %s wide and high, within %s of %s.", h.name(), h.Size, d.tolerance, d.size).
		broken("Make %s %s wide and high, within %s: it is %s.", h.name(), d.size, d.tolerance, h.Size)
}

func (d holeSize) shape(_ arena.Arena, h *glass.Hole) { h.Size = d.size }

var sizeAtMostKind = kind{
	name: "size-at-most", fields: []string{"size"}, windows: whereAsked,
	asks: "neither width nor height is larger",
	read: func(m form.Map) demand { return sizeAtMost{m.At("size").Size()} },
}

type sizeAtMost struct{ size unit.Size }

// one measures the side that is nearer its cap.
func (d sizeAtMost) one(c *check, h opening) Finding {
	side, got, most := "wide", h.Size.W, d.size.W
	if d.size.H-h.Size.H < most-got {
		side, got, most = "high", h.Size.H, d.size.H
	}
	return c.finding(InPane, h).atMost(got, most).
		kept("Nothing to do: %s is %s wide and high, no more than %s.", h.name(), h.Size, d.size).
		broken("Make %s at most %s %s: it is %s %s.", h.name(), say.AtMost(most), side, got, side)
}

func (d sizeAtMost) shape(_ arena.Arena, h *glass.Hole) {
	h.Size = unit.Size{W: min(h.Size.W, d.size.W), H: min(h.Size.H, d.size.H)}
}
