package rules

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

var noOpeningKind = kind{
	name: "no-opening", fields: []string{"exempt", "ways-left"}, windows: always,
	asks: "there is no hole in the glass, save round ones in a zone; a low window in the boards is no hole in the glass",
	read: readNoOpening,
}

// noOpening allows no hole in the glass but those exempted by name.
type noOpening struct {
	exempt []exemption
	ways   []string // the ways left to a photographer
}

// exemption is a round hole in a zone that the document allows.
type exemption struct {
	name      string // "the scorekeeper's hole"
	zone      string // kind of zone that it must lie in
	diameter  unit.Length
	tolerance unit.Length
	most      int
}

func readNoOpening(m form.Map) demand {
	var d noOpening
	if m.Has("exempt") {
		for _, n := range m.At("exempt").List(maxEntries) {
			e := n.Map("name", "zone", "diameter", "tolerance", "most")
			d.exempt = append(d.exempt, exemption{
				name: e.At("name").Text(), zone: e.At("zone").Choice(arena.ZoneKinds()...),
				diameter: e.At("diameter").LengthAbove(), tolerance: e.At("tolerance").Length(), most: readMost(e),
			})
		}
	}
	if m.Has("ways-left") {
		for _, w := range m.At("ways-left").List(maxEntries) {
			d.ways = append(d.ways, w.Text())
		}
	}
	return d
}

// fits says whether a hole is the exempted one; it may hang on a corner radius
// or a zone that the survey lacks.
func (e exemption) fits(c *check, h glass.Hole) Status {
	if abs(h.Size.W-e.diameter) > e.tolerance+slack || abs(h.Size.H-e.diameter) > e.tolerance+slack {
		return Fail
	}
	place := e.inZone(c, h)
	if place == Fail {
		return Fail
	}
	radius, known := h.Corner.Get()
	switch {
	case !known:
		return Unknown
	case abs(2*radius-min(h.Size.W, h.Size.H)) > e.tolerance+slack:
		return Fail
	}
	return place
}

// inZone says whether the hole's centre lies in a zone of the exemption's kind;
// unknown when the survey lists no such zone.
func (e exemption) inZone(c *check, h glass.Hole) Status {
	status := Unknown
	for _, z := range c.arena.Zones {
		if z.Kind != e.zone {
			continue
		}
		status = Fail
		half := (zoneEnd(c.arena.Rink, z.From, z.To) - z.From) / 2
		if abs(c.arena.Rink.Apart(z.From+half, h.Station)) <= half+slack {
			return Pass
		}
	}
	return status
}

func (d noOpening) one(c *check, h opening) Finding {
	f := c.finding(NoAmount, h)
	if h.low {
		return f.keeps(true).kept("Nothing to do: %s is an opening in the boards, not in the glass.", h.name())
	}
	for _, e := range d.exempt {
		switch e.fits(c, h.Hole) {
		case Pass:
			return f.keeps(true).kept("Nothing to do: hole %s is %s.", h.ID, e.name)
		case Unknown:
			return f.unknown("Record the corner radius of hole %s and the zone %q: if it is round and lies there, it is %s, which is allowed.", h.ID, e.zone, e.name)
		}
	}
	return f.keeps(false).broken("Close hole %s, or record a dispensation for rule %s in the arena (by whom, reference, date): no opening in the glass is allowed%s. %s",
		h.ID, c.rule.ID, d.but(), d.left())
}

// but names what is exempt.
func (d noOpening) but() string {
	if len(d.exempt) == 0 {
		return ""
	}
	names := make([]string, len(d.exempt))
	for i, e := range d.exempt {
		names[i] = e.name
	}
	return " but " + say.Names(names)
}

// left names the ways left.
func (d noOpening) left() string {
	if len(d.ways) == 0 {
		return "The rule set names no other way."
	}
	return "The ways left: " + form.Choices(d.ways) + "."
}

// groups caps the exempted openings.
func (d noOpening) groups(c *check) []Group {
	var out []Group
	for _, e := range d.exempt {
		out = append(out, c.group("the exemption for "+e.name, e.most, func(h glass.Hole) bool { return e.fits(c, h) == Pass }))
	}
	return out
}
