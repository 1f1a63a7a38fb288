package rules

import (
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// holeSize asks for one size, within a tolerance.
type holeSize struct {
	size      unit.Size
	tolerance unit.Length
}

// alone measures the greater deviation of width and height.
func (l holeSize) alone(c *court, h glass.Hole) Finding {
	off := max(abs(h.Size.W-l.size.W), abs(h.Size.H-l.size.H))
	f := c.start(InPane, h).weigh(off.Metres(), l.tolerance.Metres(), (l.tolerance - off).Metres())
	if f.Status == Pass {
		return f.say("Nothing to do: hole %s is %s wide and high, within %s of %s.", h.ID, h.Size, l.tolerance, l.size)
	}
	return f.say("Make hole %s %s wide and high, within %s: it is %s.", h.ID, l.size, l.tolerance, h.Size)
}

// sizeAtMost caps width and height.
type sizeAtMost struct{ size unit.Size }

// alone measures the side that is nearer its cap.
func (l sizeAtMost) alone(c *court, h glass.Hole) Finding {
	f := c.start(InPane, h)
	side, got, most := "wide", h.Size.W, l.size.W
	if l.size.H-h.Size.H < most-got {
		side, got, most = "high", h.Size.H, l.size.H
	}
	f = f.weigh(got.Metres(), most.Metres(), (most - got).Metres())
	if f.Status == Pass {
		return f.say("Nothing to do: hole %s is %s wide and high, no more than %s.", h.ID, h.Size, l.size)
	}
	return f.say("Make hole %s at most %s %s: it is %s %s.", h.ID, say.AtMost(most), side, got, side)
}

// holeLeast asks that the hole's smaller side be no smaller than a distance.
type holeLeast struct{ least Distance }

func (l holeLeast) alone(c *court, h glass.Hole) Finding {
	f := c.start(InPane, h)
	least, ok := c.distance(l.least, h)
	if !ok {
		return c.lacksThickness(f, h)
	}
	side := min(h.Size.W, h.Size.H)
	f = f.weigh(side.Metres(), least.Metres(), (side - least).Metres())
	if f.Status == Pass {
		return f.say("Nothing to do: hole %s measures %s across where it is smallest, at least %s is due.", h.ID, side, least)
	}
	return f.say("Make hole %s at least %s wide and high: it measures %s across where it is smallest.", h.ID, say.AtLeast(least), side)
}

// cornerRadius asks for rounded corners of the outline.
type cornerRadius struct{ least Distance }

func (l cornerRadius) alone(c *court, h glass.Hole) Finding {
	f := c.start(InPane, h)
	radius, known := h.Corner.Get()
	if !known {
		return f.unknown().say("Measure the corner radius of hole %s and record it: the rule asks for %s at least.", h.ID, l.least)
	}
	least, ok := c.distance(l.least, h)
	if !ok {
		return c.lacksThickness(f, h)
	}
	f = f.weigh(radius.Metres(), least.Metres(), (radius - least).Metres())
	if f.Status == Pass {
		return f.say("Nothing to do: the corners of hole %s are rounded to %s, at least %s is due.", h.ID, radius, least)
	}
	return f.say("Round the corners of hole %s to a radius of %s or more: they have %s.", h.ID, say.AtLeast(least), radius)
}

// edgeRounding asks for rounded edges on both faces of the pane.
type edgeRounding struct{ least Distance }

func (l edgeRounding) alone(c *court, h glass.Hole) Finding {
	f := c.start(InPane, h)
	rounding, known := h.Rounding.Get()
	if !known {
		return f.unknown().say("Look whether the edges of hole %s are rounded and record by how much: the rule asks for %s at least.", h.ID, l.least)
	}
	least, ok := c.distance(l.least, h)
	if !ok {
		return c.lacksThickness(f, h)
	}
	f = f.weigh(rounding.Metres(), least.Metres(), (rounding - least).Metres())
	if f.Status == Pass {
		return f.say("Nothing to do: the edges of hole %s are rounded to %s, at least %s is due.", h.ID, rounding, least)
	}
	return f.say("Round the edges of hole %s to %s or more on both faces: they have %s.", h.ID, say.AtLeast(least), rounding)
}
