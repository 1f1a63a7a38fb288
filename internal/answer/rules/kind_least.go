package rules

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// atLeast asks that a length of the opening itself be no less than a distance.
type atLeast struct {
	least Distance
	of    func(glass.Hole) unit.Maybe[unit.Length]
	// The sentences: of a length that is not recorded (name, limit), of one that is
	// kept (name, length, limit) and of one that is not (name, limit, length).
	lacking, kept, broken string
}

// leastKind is a kind that asks so.
func leastKind(k kind, what atLeast) kind {
	k.fields = []string{"least"}
	k.read = func(m form.Map) demand {
		d := what // a rule's own: others are read at the same time
		d.least = readLeast(m)
		return d
	}
	return k
}

// concerns leaves a low window out, which has no pane to take a multiple of.
func (d atLeast) concerns(h opening) bool { return !h.low || d.least.Thicknesses == 0 }

func (d atLeast) one(c *check, h opening) Finding {
	f := c.finding(InPane, h)
	got, known := d.of(h.Hole).Get()
	if !known {
		return f.unknown(d.lacking, h.name(), d.least)
	}
	least, ok := d.least.Of(h.pane.Thickness)
	if !ok {
		return f.lacksThickness(h)
	}
	return f.atLeast(got, least).kept(d.kept, h.name(), got, least).broken(d.broken, h.name(), say.AtLeast(least), got)
}

var cornerRadiusKind = leastKind(kind{
	name: "corner-radius", windows: always, asks: "the outline's corners are so round",
}, atLeast{
	of:      func(h glass.Hole) unit.Maybe[unit.Length] { return h.Corner },
	lacking: "Measure the corner radius of %s and record it: the rule asks for %s at least.",
	kept:    "Nothing to do: the corners of %s are rounded to %s, at least %s is due.",
	broken:  "Round the corners of %s to a radius of %s or more: they have %s.",
})

var edgeRoundingKind = leastKind(kind{
	name: "edge-rounding", windows: always, asks: "the edges on both faces are so round",
}, atLeast{
	of:      func(h glass.Hole) unit.Maybe[unit.Length] { return h.Rounding },
	lacking: "Look whether the edges of %s are rounded and record by how much: the rule asks for %s at least.",
	kept:    "Nothing to do: the edges of %s are rounded to %s, at least %s is due.",
	broken:  "Round the edges of %s to %s or more on both faces: they have %s.",
})

var holeLeastKind = leastKind(kind{
	name: "hole-least", windows: whereAsked, asks: "the smaller side is no smaller",
}, atLeast{
	of:     func(h glass.Hole) unit.Maybe[unit.Length] { return unit.Known(min(h.Size.W, h.Size.H)) },
	kept:   "Nothing to do: %s measures %s across where it is smallest, at least %s is due.",
	broken: "Make %s at least %s wide and high: it measures %s across where it is smallest.",
})
