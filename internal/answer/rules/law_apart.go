package rules

import (
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// leastSeparation asks for a distance along the boards between two holes.
type leastSeparation struct {
	least unit.Length
	rims  bool // between the rims, not the centres
}

func (l leastSeparation) reach(_ *arena.Arena, widest unit.Length) unit.Length {
	if l.rims {
		return l.least + widest
	}
	return l.least
}

func (l leastSeparation) pair(c *court, h, k glass.Hole) (Finding, bool) {
	if c.concerns(h) == notConcerned || c.concerns(k) == notConcerned {
		return Finding{}, false
	}
	got := abs(c.arena.Rink.Apart(h.Station, k.Station))
	between := "centre to centre"
	if l.rims {
		got -= (h.Size.W + k.Size.W) / 2
		between = "rim to rim"
	}
	f := c.start(AlongBoards, h, k).weigh(got.Metres(), l.least.Metres(), (got - l.least).Metres())
	if f.Status == Pass {
		return f.say("Nothing to do: holes %s and %s are %s apart along the boards, %s, at least %s is due.", h.ID, k.ID, got, between, l.least), true
	}
	return f.say("Move hole %s or %s so that they are %s farther apart, or close one: they are %s apart along the boards, %s, at least %s is due.",
		h.ID, k.ID, say.AtLeast(l.least-got), max(got, 0), between, l.least), true
}

// holeToHole asks for a distance between the rims of two holes in one pane.
type holeToHole struct{ least Distance }

// reach is the widest pane: the rule speaks of holes in one pane.
func (l holeToHole) reach(a *arena.Arena, _ unit.Length) (most unit.Length) {
	for _, p := range a.Panes {
		most = max(most, p.Width)
	}
	return most
}

func (l holeToHole) pair(c *court, h, k glass.Hole) (Finding, bool) {
	p, ok := c.pane(h)
	q, ok2 := c.pane(k)
	if !ok || !ok2 || p.ID != q.ID || c.concerns(h) == notConcerned {
		return Finding{}, false
	}
	f := c.start(InPane, h, k)
	least, ok := l.least.Of(p.Thickness)
	if !ok {
		return c.lacksThickness(f, h), true
	}
	dx := c.arena.Rink.Apart(h.Station, k.Station)
	a, b := rims(h), rims(k)
	sharp, round := a[0].Gap(b[0], dx).Metres(), a[1].Gap(b[1], dx).Metres()
	f = f.weigh(sharp, least.Metres(), sharp-least.Metres())
	switch {
	case f.Status == Pass:
		return f.say("Nothing to do: the rims of holes %s and %s are %s apart in pane %s, at least %s is due.", h.ID, k.ID, unit.Length(sharp), p.ID, least), true
	case round >= least.Metres()-slack:
		return c.lacksRadius(c.start(InPane, h, k), h), true
	}
	f = f.weigh(round, least.Metres(), round-least.Metres())
	return f.say("Move hole %s or %s so that their rims are %s farther apart, or leave one out: in pane %s they are %s apart, at least %s is due.",
		h.ID, k.ID, say.AtLeast(least-unit.Length(round)), p.ID, unit.Length(max(round, 0)), least), true
}
