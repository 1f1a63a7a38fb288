package rules

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
)

var cornerRadiusKind = kind{
	name: "corner-radius", fields: []string{"least"}, windows: always,
	asks: "the outline's corners are so round",
	read: func(m form.Map) demand { return cornerRadius{readLeast(m)} },
}

type cornerRadius struct{ least Distance }

func (d cornerRadius) concerns(_ *check, h opening) bool { return d.least.concerns(h) }

func (d cornerRadius) one(c *check, h opening) Finding {
	f := c.finding(InPane, h)
	radius, known := h.Corner.Get()
	if !known {
		return f.unknown("Measure the corner radius of %s and record it: the rule asks for %s at least.", h.name(), d.least)
	}
	least, ok := c.distance(d.least, h)
	if !ok {
		return f.lacksThickness(h)
	}
	return f.atLeast(radius, least).
		kept("Nothing to do: the corners of %s are rounded to %s, at least %s is due.", h.name(), radius, least).
		broken("Round the corners of %s to a radius of %s or more: they have %s.", h.name(), say.AtLeast(least), radius)
}

var edgeRoundingKind = kind{
	name: "edge-rounding", fields: []string{"least"}, windows: always,
	asks: "the edges on both faces are so round",
	read: func(m form.Map) demand { return edgeRounding{readLeast(m)} },
}

type edgeRounding struct{ least Distance }

func (d edgeRounding) concerns(_ *check, h opening) bool { return d.least.concerns(h) }

func (d edgeRounding) one(c *check, h opening) Finding {
	f := c.finding(InPane, h)
	rounding, known := h.Rounding.Get()
	if !known {
		return f.unknown("Look whether the edges of %s are rounded and record by how much: the rule asks for %s at least.", h.name(), d.least)
	}
	least, ok := c.distance(d.least, h)
	if !ok {
		return f.lacksThickness(h)
	}
	return f.atLeast(rounding, least).
		kept("Nothing to do: the edges of %s are rounded to %s, at least %s is due.", h.name(), rounding, least).
		broken("Round the edges of %s to %s or more on both faces: they have %s.", h.name(), say.AtLeast(least), rounding)
}
