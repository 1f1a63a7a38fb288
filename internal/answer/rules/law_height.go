package rules

import (
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// heightRange asks that the hole's centre, or its whole rim, lie between two heights.
type heightRange struct {
	rim         bool // the whole hole counts, not only its centre
	boards      bool // measured from the top of the boards, not from the ice
	least, most unit.Maybe[unit.Length]
}

// alone measures the height that is nearer its limit.
func (l heightRange) alone(c *court, h glass.Hole) Finding {
	f := c.start(InPane, h)
	low, high := h.Height, h.Height
	part, from := "centre", "the ice"
	if l.rim {
		low, high = low-h.Size.H/2, high+h.Size.H/2
		part = "rim"
	}
	if l.boards {
		low, high = low-c.arena.Boards.Height, high-c.arena.Boards.Height
		from = "the top of the boards"
	}
	got, limit, margin := l.nearer(low, high)
	f = f.weigh(got.Metres(), limit.Metres(), margin.Metres())
	switch {
	case f.Status == Pass:
		return f.say("Nothing to do: the %s of hole %s lies %s above %s, within the limits by %s.", part, h.ID, got, from, max(margin, 0))
	case got < limit:
		return f.say("Raise hole %s by %s or more: its %s lies %s above %s, at least %s is due.", h.ID, say.AtLeast(-margin), part, got, from, limit)
	}
	return f.say("Lower hole %s by %s or more: its %s lies %s above %s, at most %s is allowed.", h.ID, say.AtLeast(-margin), part, got, from, limit)
}

// nearer returns the height, limit and margin of the side with the smaller margin.
func (l heightRange) nearer(low, high unit.Length) (got, limit, margin unit.Length) {
	least, hasLeast := l.least.Get()
	most, hasMost := l.most.Get()
	if hasLeast && (!hasMost || low-least <= most-high) {
		return low, least, low - least
	}
	return high, most, most - high
}
