package rules

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

var leastSeparationKind = kind{
	name: "least-separation", fields: []string{"least", "between"},
	asks: "two holes are so far apart along the boards, between their `centres` or `rims`",
	read: func(m form.Map) demand {
		d := leastSeparation{least: m.At("least").LengthAbove()}
		if m.Has("between") {
			d.rims = m.At("between").Choice("centres", "rims") == "rims"
		}
		return d
	},
}

type leastSeparation struct {
	least unit.Length
	rims  bool // between the rims, not the centres
}

func (d leastSeparation) reach(_ *arena.Arena, widest unit.Length) unit.Length {
	if d.rims {
		return d.least + widest
	}
	return d.least
}

func (d leastSeparation) pair(c *check, h, k opening) (Finding, bool) {
	got := abs(c.arena.Rink.Apart(h.Station, k.Station))
	between := "centre to centre"
	if d.rims {
		got -= (h.Size.W + k.Size.W) / 2
		between = "rim to rim"
	}
	return c.finding(AlongBoards, h, k).atLeast(got, d.least).
		kept("Nothing to do: holes %s and %s are %s apart along the boards, %s, at least %s is due.", h.ID, k.ID, got, between, d.least).
		broken("Move hole %s or %s so that they are %s farther apart, or close one: they are %s apart along the boards, %s, at least %s is due.",
			h.ID, k.ID, say.AtLeast(d.least-got), max(got, 0), between, d.least), true
}

var holeToHoleKind = kind{
	name: "hole-to-hole", fields: []string{"least"},
	asks: "the rims of two holes in one pane are so far apart",
	read: func(m form.Map) demand { return holeToHole{readLeast(m)} },
}

type holeToHole struct{ least Distance }

func (d holeToHole) reach(a *arena.Arena, _ unit.Length) unit.Length { return widestPane(a) }

// widestPane is the reach of a rule on holes in one pane.
func widestPane(a *arena.Arena) (most unit.Length) {
	for _, p := range a.Panes {
		most = max(most, p.Width)
	}
	return most
}

func (d holeToHole) pair(c *check, h, k opening) (Finding, bool) {
	if !h.inPane || !k.inPane || h.pane.ID != k.pane.ID {
		return Finding{}, false
	}
	p := h.pane
	f := c.finding(InPane, h, k)
	least, ok := d.least.Of(p.Thickness)
	if !ok {
		return f.lacksThickness(h), true
	}
	dx := c.arena.Rink.Apart(h.Station, k.Station)
	a, b := rims(h), rims(k)
	sharp, round := a[0].Gap(b[0], dx), a[1].Gap(b[1], dx)
	if sharp < least-slack && round >= least-slack {
		return f.lacksRadius(h), true
	}
	return f.atLeast(sharp, least).
		kept("Nothing to do: the rims of holes %s and %s are %s apart in pane %s, at least %s is due.", h.ID, k.ID, sharp, p.ID, least).
		broken("Move hole %s or %s so that their rims are %s farther apart, or leave one out: in pane %s they are %s apart, at least %s is due.",
			h.ID, k.ID, say.AtLeast(least-sharp), p.ID, max(sharp, 0), least), true
}

// rims returns a hole's rims for the least and the greatest corner radius that
// the survey leaves open: the same twice when the radius is recorded.
func rims(h opening) [2]glass.Rim {
	if r, known := h.Corner.Get(); known {
		return [2]glass.Rim{glass.RimOf(h.Hole, r), glass.RimOf(h.Hole, r)}
	}
	return [2]glass.Rim{glass.RimOf(h.Hole, 0), glass.RimOf(h.Hole, min(h.Size.W, h.Size.H)/2)}
}

var noOverlapKind = kind{
	name: "no-overlap",
	asks: "no two holes meet, in one pane or in two; only those that do are told",
	read: func(form.Map) demand { return noOverlap{} },
}

type noOverlap struct{}

func (noOverlap) reach(_ *arena.Arena, widest unit.Length) unit.Length { return widest }

func (noOverlap) pair(c *check, h, k opening) (Finding, bool) {
	gap := rims(h)[1].Gap(rims(k)[1], c.arena.Rink.Apart(h.Station, k.Station))
	if gap > 0 {
		return Finding{}, false
	}
	return c.finding(NoAmount, h, k).keeps(false).
		broken("Move hole %s or %s, or leave one out: the two meet, and the pane would have one hole of both.", h.ID, k.ID), true
}
