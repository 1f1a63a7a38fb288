package rules

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

var inOnePaneKind = kind{
	name: "in-one-pane",
	asks: "the whole hole lies within one pane, across no stanchion",
	read: func(form.Map) demand { return inOnePane{} },
}

type inOnePane struct{}

func (inOnePane) one(c *check, h opening) Finding {
	f := c.finding(NoAmount, h)
	pane, ok := c.pane(h)
	if !ok {
		return f.lacksPane(h)
	}
	e := c.edges(pane, h)
	over, side := -e.Left, "left"
	if -e.Right > over {
		over, side = -e.Right, "right"
	}
	return f.keeps(over < 0).
		kept("Nothing to do: hole %s lies within pane %s.", h.ID, pane.ID).
		broken("Move hole %s along the boards or make it smaller: it reaches %s past the %s edge of pane %s, across the stanchion.", h.ID, over, side, pane.ID)
}

// edges returns how far the hole's outline, taken as a sharp rectangle, stands
// inside its pane.
func (c *check) edges(p glass.Pane, h opening) glass.Edges {
	return glass.EdgesOf(c.arena.Boards, p, h.Hole, c.arena.Rink.Perimeter())
}

var paneEdgeKind = kind{
	name: "pane-edge", fields: []string{"least"},
	asks: "the rim keeps away from the pane's edges",
	read: func(m form.Map) demand { return paneEdge{readLeast(m)} },
}

type paneEdge struct{ least Distance }

func (d paneEdge) one(c *check, h opening) Finding {
	f := c.finding(InPane, h)
	pane, ok := c.pane(h)
	if !ok {
		return f.lacksPane(h)
	}
	least, ok := c.distance(d.least, h)
	if !ok {
		return f.lacksThickness(h)
	}
	e := c.edges(pane, h)
	got, edge := e.Least(), "side"
	switch got {
	case e.Bottom:
		edge = "lower"
	case e.Top:
		edge = "upper"
	}
	return f.atLeast(got, least).
		kept("Nothing to do: the rim of hole %s lies %s from the nearest edge of pane %s, at least %s is due.", h.ID, got, pane.ID, least).
		broken("Move hole %s %s or more away from the %s edge of pane %s: its rim lies %s from it, at least %s is due.",
			h.ID, say.AtLeast(least-got), edge, pane.ID, got, least)
}

var paneCornerKind = kind{
	name: "pane-corner", fields: []string{"least"},
	asks: "the rim keeps away from the pane's corners",
	read: func(m form.Map) demand { return paneCorner{readLeast(m)} },
}

type paneCorner struct{ least Distance }

func (d paneCorner) one(c *check, h opening) Finding {
	f := c.finding(InPane, h)
	pane, ok := c.pane(h)
	if !ok {
		return f.lacksPane(h)
	}
	least, ok := c.distance(d.least, h)
	if !ok {
		return f.lacksThickness(h)
	}
	e := c.edges(pane, h)
	open := rims(h)
	sharp, round := cornerGap(h, open[0], e), cornerGap(h, open[1], e)
	if sharp < least-slack && round >= least-slack {
		return f.lacksRadius(h)
	}
	return f.atLeast(sharp, least).
		kept("Nothing to do: the rim of hole %s lies %s from the nearest corner of pane %s, at least %s is due.", h.ID, sharp, pane.ID, least).
		broken("Move hole %s %s or more away from the nearest corner of pane %s: its rim lies %s from it, at least %s is due.",
			h.ID, say.AtLeast(least-sharp), pane.ID, sharp, least)
}

// cornerGap returns the distance from the rim to the nearest of the four
// corners of its pane.
func cornerGap(h opening, rim glass.Rim, e glass.Edges) unit.Length {
	across := min(e.Left, e.Right) + h.Size.W/2
	up := min(e.Bottom, e.Top) + h.Size.H/2
	return rim.Gap(glass.Rim{Y: rim.Y + up}, across)
}

var cutOutShareKind = kind{
	name: "cut-out-share", fields: []string{"most"},
	asks: "the hole takes no more of the pane's width and height than a share, as `1/3` or `0.25`",
	read: func(m form.Map) demand { return cutOutShare{form.Parse(m.At("most"), parseShare)} },
}

type cutOutShare struct{ most float64 }

// one measures the greater share.
func (d cutOutShare) one(c *check, h opening) Finding {
	f := c.finding(Share, h)
	pane, ok := c.pane(h)
	if !ok {
		return f.lacksPane(h)
	}
	side, got, whole := "wide", h.Size.W, pane.Width
	if h.Size.H*pane.Width > h.Size.W*pane.Height {
		side, got, whole = "high", h.Size.H, pane.Height
	}
	share := float64(got / whole)
	most := unit.Length(d.most) * whole
	return f.margin(share, d.most, d.most-share).
		kept("Nothing to do: hole %s is %s %s, in pane %s it may be %s.", h.ID, got, side, pane.ID, most).
		broken("Make hole %s at most %s %s, or move it to a larger pane: in pane %s it is %s %s.", h.ID, say.AtMost(most), side, pane.ID, got, side)
}
