package rules

import (
	"example.org/rinkpane/glass"
	"example.org/rinkpane/unit"
)

// paneEdge asks for a distance between the rim and the nearest edge of the pane.
type paneEdge struct{ least Distance }

func (l paneEdge) alone(c *court, h glass.Hole) Finding {
	f := c.start(inMillis, h)
	pane, ok := c.pane(h)
	if !ok {
		return c.noPane(f, h)
	}
	least, ok := c.distance(l.least, h)
	if !ok {
		return c.lacksThickness(f, h)
	}
	left, right, down, up := c.frame(pane, h)
	edge, got := "side", min(left, right)-(h.Size.W/2).Metres()
	if v := min(down, up) - (h.Size.H / 2).Metres(); v < got {
		got, edge = v, "lower"
		if up < down {
			edge = "upper"
		}
	}
	f = f.weigh(got, least.Metres(), got-least.Metres())
	if f.Status == Pass {
		return c.say(f, "Nothing to do: the rim of hole %s lies %s from the nearest edge of pane %s, at least %s is due.", h.ID, c.l(unit.Length(got)), pane.ID, c.l(least))
	}
	return c.say(f, "Move hole %s %s or more away from the %s edge of pane %s: its rim lies %s from it, at least %s is due.",
		h.ID, c.l(least-unit.Length(got)), edge, pane.ID, c.l(unit.Length(got)), c.l(least))
}

// paneCorner asks for a distance between the rim and the nearest corner of the pane.
type paneCorner struct{ least Distance }

func (l paneCorner) alone(c *court, h glass.Hole) Finding {
	f := c.start(inMillis, h)
	pane, ok := c.pane(h)
	if !ok {
		return c.noPane(f, h)
	}
	least, ok := c.distance(l.least, h)
	if !ok {
		return c.lacksThickness(f, h)
	}
	left, right, down, up := c.frame(pane, h)
	between := rims(h)
	sharp, round := cornerGap(between[0], left, right, down, up), cornerGap(between[1], left, right, down, up)
	f = f.weigh(sharp, least.Metres(), sharp-least.Metres())
	switch {
	case f.Status == Pass:
		return c.say(f, "Nothing to do: the rim of hole %s lies %s from the nearest corner of pane %s, at least %s is due.", h.ID, c.l(unit.Length(sharp)), pane.ID, c.l(least))
	case round >= least.Metres()-slack:
		return c.lacksRadius(c.start(inMillis, h), h)
	}
	f = f.weigh(round, least.Metres(), round-least.Metres())
	return c.say(f, "Move hole %s %s or more away from the nearest corner of pane %s: its rim lies %s from it, at least %s is due.",
		h.ID, c.l(least-unit.Length(round)), pane.ID, c.l(unit.Length(round)), c.l(least))
}

// cornerGap returns the distance from an outline to the nearest of the four
// corners of its pane.
func cornerGap(o outline, left, right, down, up float64) float64 {
	best := 0.0
	for i, dx := range [2]float64{-left, right} {
		for j, dy := range [2]float64{-down, up} {
			g := o.gap(outline{x: o.x, y: o.y + dy}, dx)
			if i+j == 0 || g < best {
				best = g
			}
		}
	}
	return best
}

// cutOutShare caps the hole's width and height as a share of the pane's.
type cutOutShare struct{ most float64 }

// alone measures the greater share.
func (l cutOutShare) alone(c *court, h glass.Hole) Finding {
	f := c.start(noUnit, h)
	pane, ok := c.pane(h)
	if !ok {
		return c.noPane(f, h)
	}
	side, got, whole := "wide", h.Size.W, pane.Width
	if h.Size.H*pane.Width > h.Size.W*pane.Height {
		side, got, whole = "high", h.Size.H, pane.Height
	}
	share := (got / whole).Metres()
	f = f.weigh(share, l.most, l.most-share)
	most := unit.Length(l.most) * whole
	if f.Status == Pass {
		return c.say(f, "Nothing to do: hole %s is %s %s, in pane %s it may be %s.", h.ID, c.l(got), side, pane.ID, c.l(most))
	}
	return c.say(f, "Make hole %s at most %s %s, or move it to a larger pane: in pane %s it is %s %s.", h.ID, c.l(most), side, pane.ID, c.l(got), side)
}

// noPane answers for a hole where no pane is recorded.
func (c *court) noPane(f Finding, h glass.Hole) Finding {
	return c.say(f.unknown(), "Survey the pane of hole %s: none is recorded there.", h.ID)
}

// lacksRadius answers when the answer hangs on the hole's corner radius.
func (c *court) lacksRadius(f Finding, h glass.Hole) Finding {
	return c.say(f.unknown(), "Measure the corner radius of hole %s and record it: whether the distance is kept hangs on it.", h.ID)
}
