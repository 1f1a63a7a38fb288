package rules

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

var tradeKind = kind{
	name: "trade-distance", fields: []string{"of"},
	asks: "a hole keeps what the trade asks in a pane of its material: " + form.Choices(glass.TradeDistances()),
	read: func(m form.Map) demand {
		d := tradeDistance{m.At("of").Choice(glass.TradeDistances()...)}
		if d.of == glass.HoleToHole {
			return tradeApart{d}
		}
		return tradeAlone{d}
	},
}

// tradeDistance is one of the distances of the table of materials
// ([glass.Trade]), which workshops and factories go by. A pane whose material
// is not recorded is left to the rule that asks for it.
type tradeDistance struct{ of string }

func (d tradeDistance) concerns(h opening) bool {
	material, _ := h.pane.Material.Get()
	p, err := material.Properties()
	return err == nil && p.Trade.Asks(d.of)
}

// tradeAlone is a distance of one hole.
type tradeAlone struct{ tradeDistance }

func (d tradeAlone) one(c *check, h opening) Finding { return d.judge(c, h) }

// tradeApart is the distance of two holes in one pane, of which each has its own.
type tradeApart struct{ tradeDistance }

func (d tradeApart) reach(a *arena.Arena, _ unit.Length) unit.Length { return widestPane(a) }

func (d tradeApart) pair(c *check, h, k opening) (Finding, bool) {
	if h.pane.ID != k.pane.ID {
		return Finding{}, false
	}
	f, g := d.judge(c, h, k), d.judge(c, k, h)
	if f.Status.And(g.Status) != f.Status || f.Status == g.Status && g.Margin.Or(Amount{}).N < f.Margin.Or(Amount{}).N {
		f = g
	}
	return f, true
}

// thickest is the thickest pane there is: what is kept in it and in one of no
// thickness is kept whatever the pane measures.
const thickest = 60 * unit.Millimetre

// judge takes the worst of the distances, for every thickness, corner radius and
// setback that the survey leaves open.
func (d tradeDistance) judge(c *check, h opening, beside ...opening) Finding {
	pane := *h.pane
	material, _ := pane.Material.Get()
	props, _ := material.Properties() // concerns has looked
	thick, thickKnown := between(pane.Thickness, 0, thickest)
	radius, radiusKnown := between(h.Corner, 0, min(h.Size.W, h.Size.H)/2)
	back, backKnown := between(c.arena.Boards.Setback, 0, arena.MostSetback)
	open := c.finding(InPane, append([]opening{h}, beside...)...)
	f, kept, any := open.keeps(true), false, false
	for _, b := range back {
		face := c.arena.Face(pane, h.Hole, b)
		var others []glass.Neighbour
		for _, k := range beside {
			at := c.arena.Face(pane, k.Hole, b)
			others = append(others, glass.Neighbour{Hole: k.Hole, Left: at.Left, Up: at.Up})
		}
		for _, t := range thick {
			for _, r := range radius {
				l := tightest(props.Trade.Limits(face, t, h.Hole, r, others), d.of)
				if g := d.say(open, l, h, props); !any || g.Margin.Or(Amount{}).N < f.Margin.Or(Amount{}).N {
					f, any = g, true
				}
				kept = kept || l.Kept()
			}
		}
	}
	switch {
	case f.Status == Pass || !kept:
		return f
	case !thickKnown:
		return open.lacksThickness(h)
	case !radiusKnown:
		return open.lacksRadius(h)
	case !backKnown:
		return open.lacksSetback(h)
	}
	return f
}

// say tells one limit.
func (d tradeDistance) say(f Finding, l glass.Limit, h opening, m glass.Properties) Finding {
	cure := cures()[d.of]
	measure, word := f.atLeast, "at least"
	if l.AtMost {
		measure, word = f.atMost, "at most"
	}
	return measure(l.Have, l.Bound).
		kept("Nothing to do: the %s of hole %s is %s, %s %s is due in %s.", l.What, h.ID, l.Have, word, l.Bound, m.Noun()).
		broken("%s hole %s%s: in %s the %s.", cure[0], h.ID, cure[1], m.Noun(), l.Say())
}

// cures say what to do with a hole that misses a distance: before and behind its name.
func cures() map[string][2]string {
	return map[string][2]string{
		"rim-to-edge": {"Move", " or make it smaller"}, "rim-to-corner": {"Move", " away from the corner of its pane"},
		"hole-to-hole": {"Move", " or leave one of the two out"}, "fillet": {"Round the corners of", " more"},
		"hole-diameter": {"Make", " larger"}, "cut-out-share": {"Make", " smaller, or move it to a larger pane"},
	}
}

// between returns what a quantity may be: itself when known, else both ends.
func between(m unit.Maybe[unit.Length], low, high unit.Length) (values []unit.Length, known bool) {
	if v, ok := m.Get(); ok {
		return []unit.Length{v}, true
	}
	return []unit.Length{low, high}, false
}

// tightest returns the limit of a kind that is least kept.
func tightest(limits []glass.Limit, of string) (worst glass.Limit) {
	for _, l := range limits {
		if l.Of == of && (worst.Of == "" || l.Spare() < worst.Spare()) {
			worst = l
		}
	}
	return worst
}
