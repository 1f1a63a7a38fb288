package rules

import (
	"fmt"
	"slices"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// forbiddenZones keeps the whole hole out of zones of some kinds, and clear of
// their ends by a distance. A pane that is a gate counts as a zone of kind "gate".
type forbiddenZones struct {
	kinds     []string
	clearance unit.Length
}

// span is a zone or a gate on the boards.
type span struct {
	name     string
	from, to unit.Length
}

// spans returns what the rule forbids on the arena's boards.
func (l forbiddenZones) spans(c *court) []span {
	var out []span
	for _, z := range c.arena.Zones {
		if slices.Contains(l.kinds, z.Kind) {
			out = append(out, span{fmt.Sprintf("zone %s (%s)", z.ID, z.Kind), z.From, zoneEnd(c.arena.Rink, z.From, z.To)})
		}
	}
	if slices.Contains(l.kinds, "gate") {
		for _, p := range c.arena.Panes {
			if p.Gate != "" {
				out = append(out, span{fmt.Sprintf("gate %s (%s)", p.ID, p.Gate), p.From, p.To()})
			}
		}
	}
	return out
}

// zoneEnd returns the end of a zone as a station at or after its start: a zone
// may run over the station 0.
func zoneEnd(r rink.Rink, from, to unit.Length) unit.Length {
	if to >= from {
		return to
	}
	return from + r.Wrap(to-from)
}

// alone measures the gap between the hole's rim and the nearest forbidden zone.
func (l forbiddenZones) alone(c *court, h glass.Hole) Finding {
	f := c.start(AlongBoards, h)
	spans := l.spans(c)
	if len(spans) == 0 {
		return f.decide(true).say("Nothing to do: no zone is recorded that forbids hole %s (%s).", h.ID, form.Choices(l.kinds))
	}
	var worst span
	var gap unit.Length
	for i, s := range spans {
		half := (s.to - s.from) / 2
		if g := abs(c.arena.Rink.Apart(s.from+half, h.Station)) - half - h.Size.W/2; i == 0 || g < gap {
			worst, gap = s, g
		}
	}
	f = f.weigh(gap.Metres(), l.clearance.Metres(), (gap - l.clearance).Metres())
	if f.Status == Pass {
		return f.say("Nothing to do: hole %s is %s clear of %s.", h.ID, gap, worst.name)
	}
	rising := c.arena.Rink.Apart((worst.from+worst.to)/2, h.Station) >= 0
	return f.say("Move hole %s %s or more %s, out of %s, or close it.", h.ID, say.AtLeast(l.clearance-gap), c.heading(h.Station, rising), worst.name)
}
