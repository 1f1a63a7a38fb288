package rules

import (
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// paneEdge asks for a distance between the rim and the nearest edge of the pane.
type paneEdge struct{ least Distance }

func (l paneEdge) alone(c *court, h glass.Hole) Finding {
	f := c.start(InPane, h)
	pane, ok := c.pane(h)
	if !ok {
		return c.noPane(f, h)
	}
	least, ok := c.distance(l.least, h)
	if !ok {
		return c.lacksThickness(f, h)
	}
	e := c.edges(pane, h)
	got, edge := e.Least(), "side"
	switch got {
	case e.Bottom:
		edge = "lower"
	case e.Top:
		edge = "upper"
	}
	f = f.weigh(got.Metres(), least.Metres(), (got - least).Metres())
	if f.Status == Pass {
		return f.say("Nothing to do: the rim of hole %s lies %s from the nearest edge of pane %s, at least %s is due.", h.ID, got, pane.ID, least)
	}
	return f.say("Move hole %s %s or more away from the %s edge of pane %s: its rim lies %s from it, at least %s is due.",
		h.ID, say.AtLeast(least-got), edge, pane.ID, got, least)
}

// paneCorner asks for a distance between the rim and the nearest corner of the pane.
type paneCorner struct{ least Distance }

func (l paneCorner) alone(c *court, h glass.Hole) Finding {
	f := c.start(InPane, h)
	pane, ok := c.pane(h)
	if !ok {
		return c.noPane(f, h)
	}
	least, ok := c.distance(l.least, h)
	if !ok {
		return c.lacksThickness(f, h)
	}
	e := c.edges(pane, h)
	sharp, round := cornerGap(h, 0, e), cornerGap(h, min(h.Size.W, h.Size.H)/2, e)
	if radius, known := h.Corner.Get(); known {
		sharp = cornerGap(h, radius, e)
		round = sharp
	}
	f = f.weigh(sharp, least.Metres(), sharp-least.Metres())
	switch {
	case f.Status == Pass:
		return f.say("Nothing to do: the rim of hole %s lies %s from the nearest corner of pane %s, at least %s is due.", h.ID, unit.Length(sharp), pane.ID, least)
	case round >= least.Metres()-slack:
		return c.lacksRadius(c.start(InPane, h), h)
	}
	f = f.weigh(round, least.Metres(), round-least.Metres())
	return f.say("Move hole %s %s or more away from the nearest corner of pane %s: its rim lies %s from it, at least %s is due.",
		h.ID, say.AtLeast(least-unit.Length(round)), pane.ID, unit.Length(round), least)
}

// cornerGap returns the distance in metres from the rim, with a corner radius,
// to the nearest of the four corners of its pane.
func cornerGap(h glass.Hole, radius unit.Length, e glass.Edges) float64 {
	r := glass.RimOf(h, radius)
	across := min(e.Left, e.Right) + h.Size.W/2
	up := min(e.Bottom, e.Top) + h.Size.H/2
	return r.Gap(glass.Rim{Y: r.Y + up}, across).Metres()
}

// cutOutShare caps the hole's width and height as a share of the pane's.
type cutOutShare struct{ most float64 }

// alone measures the greater share.
func (l cutOutShare) alone(c *court, h glass.Hole) Finding {
	f := c.start(NoAmount, h)
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
		return f.say("Nothing to do: hole %s is %s %s, in pane %s it may be %s.", h.ID, got, side, pane.ID, most)
	}
	return f.say("Make hole %s at most %s %s, or move it to a larger pane: in pane %s it is %s %s.", h.ID, say.AtMost(most), side, pane.ID, got, side)
}

// noPane answers for a hole where no pane is recorded.
func (c *court) noPane(f Finding, h glass.Hole) Finding {
	return f.unknown().say("Survey the pane of hole %s: none is recorded there.", h.ID)
}

// lacksRadius answers when the answer hangs on the hole's corner radius.
func (c *court) lacksRadius(f Finding, h glass.Hole) Finding {
	return f.unknown().say("Measure the corner radius of hole %s and record it: whether the distance is kept hangs on it.", h.ID)
}
