package rules

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

var heightRangeKind = kind{
	name: "height-range", fields: []string{"of", "above", "least", "most"}, windows: whereAsked,
	asks: "the hole's `centre` or `rim` lies between two heights above the `ice` or the `boards`",
	read: readHeightRange,
}

// heightRange asks that the hole's centre, or its whole rim, lie between two heights.
type heightRange struct {
	rim         bool // the whole hole counts, not only its centre
	boards      bool // measured from the top of the boards, not from the ice
	least, most unit.Maybe[unit.Length]
}

func readHeightRange(m form.Map) demand {
	d := heightRange{least: m.At("least").MaybeLength(), most: m.At("most").MaybeLength()}
	if m.Has("of") {
		d.rim = m.At("of").Choice("centre", "rim") == "rim"
	}
	if m.Has("above") {
		d.boards = m.At("above").Choice("ice", "boards") == "boards"
	}
	least, hasLeast := d.least.Get()
	most, hasMost := d.most.Get()
	if !hasLeast && !hasMost {
		m.Failf("a height-range needs least, most or both")
	}
	if hasLeast && hasMost && least > most {
		m.At("most").Failf("is below least; change one of them")
	}
	return d
}

// one measures the height that is nearer its limit.
func (d heightRange) one(c *check, h opening) Finding {
	low, high := h.Height, h.Height
	part, from := "centre", "the ice"
	if d.rim {
		low, high = low-h.Size.H/2, high+h.Size.H/2
		part = "rim"
	}
	if d.boards {
		low, high = low-c.arena.Boards.Height, high-c.arena.Boards.Height
		from = "the top of the boards"
	}
	got, limit, margin := d.nearer(low, high)
	f := c.finding(InPane, h).margin(got.Metres(), limit.Metres(), margin.Metres()).
		kept("Nothing to do: the %s of %s lies %s above %s, within the limits by %s.", part, h.name(), got, from, max(margin, 0))
	if got < limit {
		return f.broken("Raise %s by %s or more: its %s lies %s above %s, at least %s is due.", h.name(), say.AtLeast(-margin), part, got, from, limit)
	}
	return f.broken("Lower %s by %s or more: its %s lies %s above %s, at most %s is allowed.", h.name(), say.AtLeast(-margin), part, got, from, limit)
}

// nearer returns the height, limit and margin of the side with the smaller margin.
func (d heightRange) nearer(low, high unit.Length) (got, limit, margin unit.Length) {
	least, hasLeast := d.least.Get()
	most, hasMost := d.most.Get()
	if hasLeast && (!hasMost || low-least <= most-high) {
		return low, least, low - least
	}
	return high, most, most - high
}

// shape puts the hole's centre in the middle of the range, or as far inside
// its one limit as the hole is high.
func (d heightRange) shape(a arena.Arena, h *glass.Hole) {
	base := unit.Length(0)
	if d.boards {
		base = a.Boards.Height
	}
	least, hasLeast := d.least.Get()
	most, hasMost := d.most.Get()
	switch {
	case hasLeast && hasMost:
		h.Height = base + (least+most)/2
	case hasLeast:
		h.Height = max(h.Height, base+least+h.Size.H)
	default:
		h.Height = min(h.Height, base+most-h.Size.H)
	}
}
