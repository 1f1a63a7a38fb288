package rules

import (
	"fmt"
	"slices"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
)

var forbiddenZonesKind = kind{
	name: "forbidden-zones", fields: []string{"zones", "clearance"}, windows: always,
	asks: "the whole hole keeps out of zones of these kinds; a pane that is a gate is a zone `gate`",
	read: readForbidden,
}

// forbiddenZones keeps the whole hole out of zones of some kinds, and clear of
// their ends by a distance. A pane that is a gate counts as a zone of kind "gate".
type forbiddenZones struct {
	kinds     []string
	clearance unit.Length
}

func readForbidden(m form.Map) demand {
	var d forbiddenZones
	for _, z := range m.At("zones").List(len(arena.ZoneKinds())) {
		d.kinds = append(d.kinds, z.Choice(arena.ZoneKinds()...))
	}
	if len(d.kinds) == 0 {
		m.At("zones").Failf("must name a kind of zone: %s", form.Choices(arena.ZoneKinds()))
	}
	if m.Has("clearance") {
		d.clearance = m.At("clearance").Length()
	}
	return d
}

// span is a zone or a gate on the boards.
type span struct {
	name     string
	from, to unit.Length
}

// keptOut is the rule at one arena, with what it forbids on the boards there.
type keptOut struct {
	forbiddenZones
	spans []span
}

func (d forbiddenZones) prepare(c *check) demand {
	var out []span
	for _, z := range c.arena.Zones {
		if slices.Contains(d.kinds, z.Kind) {
			out = append(out, span{fmt.Sprintf("zone %s (%s)", z.ID, z.Kind), z.From, zoneEnd(c.arena.Rink, z.From, z.To)})
		}
	}
	if slices.Contains(d.kinds, "gate") {
		for _, p := range c.arena.Panes {
			if p.Gate != "" {
				out = append(out, span{fmt.Sprintf("gate %s (%s)", p.ID, p.Gate), p.From, p.To()})
			}
		}
	}
	return keptOut{d, out}
}

// zoneEnd returns the end of a zone as a station at or after its start: a zone
// may run over the station 0.
func zoneEnd(r rink.Rink, from, to unit.Length) unit.Length {
	if to >= from {
		return to
	}
	return from + r.Wrap(to-from)
}

func (d keptOut) breaks(width unit.Length) []unit.Length {
	var out []unit.Length
	for _, z := range d.spans {
		out = append(out, z.from-width/2-d.clearance, z.to+width/2+d.clearance)
	}
	return out
}

// one measures the gap between the hole's rim and the nearest forbidden zone.
// Zones that were not surveyed are unknown: an arena without any says so.
func (d keptOut) one(c *check, h opening) Finding {
	f := c.finding(AlongBoards, h)
	if len(d.spans) == 0 {
		return d.surveyed(c, f.keeps(true).kept("Nothing to do: no zone is recorded that forbids %s (%s).", h.name(), form.Choices(d.kinds)), h)
	}
	var worst span
	var gap unit.Length
	for i, s := range d.spans {
		half := (s.to - s.from) / 2
		if g := abs(c.arena.Rink.Apart(s.from+half, h.Station)) - half - h.Size.W/2; i == 0 || g < gap {
			worst, gap = s, g
		}
	}
	rising := c.arena.Rink.Apart((worst.from+worst.to)/2, h.Station) >= 0
	return d.surveyed(c, f.atLeast(gap, d.clearance).
		kept("Nothing to do: %s is %s clear of %s.", h.name(), gap, worst.name).
		broken("Move %s %s or more %s, out of %s, or close it.", h.name(), say.AtLeast(d.clearance-gap), c.way(h.Station, rising), worst.name), h)
}

// surveyed doubts that a rule is kept where no zone was surveyed.
func (d keptOut) surveyed(c *check, f Finding, h opening) Finding {
	if f.Status == Fail || c.arena.ZonesSurveyed() {
		return f
	}
	return c.finding(AlongBoards, h).unknown(
		`Mark where the zones are that no opening may stand in (%s), or write "zones: []" where the rink has none: without them it is not known whether %s keeps clear.`,
		form.Choices(d.kinds), h.name())
}
