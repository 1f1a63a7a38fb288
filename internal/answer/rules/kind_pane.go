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
	if !h.inPane {
		return f.lacksPane(h)
	}
	e := c.edges(h)
	over, side := -e.Left, "left"
	if -e.Right > over {
		over, side = -e.Right, "right"
	}
	return f.keeps(over < 0).
		kept("Nothing to do: hole %s lies within pane %s.", h.ID, h.pane.ID).
		broken("Move hole %s along the boards or make it smaller: it reaches %s past the %s edge of pane %s, across the stanchion.", h.ID, over, side, h.pane.ID)
}

// edges returns how far the hole's outline, taken as a sharp rectangle, stands
// inside its pane.
func (c *check) edges(h opening) glass.Edges {
	return glass.EdgesOf(c.arena.Boards, *h.pane, h.Hole, c.arena.Rink.Perimeter())
}

var paneEdgeKind = awayKind("pane-edge", "edge", toEdge)

// toEdge is the way to the nearest edge.
func toEdge(_ opening, _ glass.Rim, e glass.Edges) (unit.Length, string) {
	got := e.Least()
	switch got {
	case e.Bottom:
		return got, "lower"
	case e.Top:
		return got, "upper"
	}
	return got, "side"
}

var paneCornerKind = awayKind("pane-corner", "corner", toCorner)

// toCorner is the way from the rim to the nearest of the pane's four corners.
func toCorner(h opening, rim glass.Rim, e glass.Edges) (unit.Length, string) {
	across := min(e.Left, e.Right) + h.Size.W/2
	up := min(e.Bottom, e.Top) + h.Size.H/2
	return rim.Gap(glass.Rim{Y: rim.Y + up}, across), "nearest"
}

// away keeps the rim away from what bounds the pane.
type away struct {
	least Distance
	from  string // "edge" or "corner"
	// way measures from a rim, and says which edge or corner it measured to.
	way func(opening, glass.Rim, glass.Edges) (unit.Length, string)
}

func awayKind(name, from string, way func(opening, glass.Rim, glass.Edges) (unit.Length, string)) kind {
	return kind{
		name: name, fields: []string{"least"}, asks: "the rim keeps away from the pane's " + from + "s",
		read: func(m form.Map) demand { return away{readLeast(m), from, way} },
	}
}

func (d away) one(c *check, h opening) Finding {
	f := c.finding(InPane, h)
	if !h.inPane {
		return f.lacksPane(h)
	}
	least, ok := d.least.Of(h.pane.Thickness)
	if !ok {
		return f.lacksThickness(h)
	}
	e, open := c.edges(h), rims(h)
	got, which := d.way(h, open[0], e)
	if round, _ := d.way(h, open[1], e); got < least-slack && round >= least-slack {
		return f.lacksRadius(h)
	}
	return f.atLeast(got, least).
		kept("Nothing to do: the rim of hole %s lies %s from the nearest %s of pane %s, at least %s is due.", h.ID, got, d.from, h.pane.ID, least).
		broken("Move hole %s %s or more away from the %s %s of pane %s: its rim lies %s from it, at least %s is due.",
			h.ID, say.AtLeast(least-got), which, d.from, h.pane.ID, got, least)
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
	if !h.inPane {
		return f.lacksPane(h)
	}
	pane := h.pane
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
