package rules

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

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

// fits says whether a hole is the exempted one; it may hang on a corner radius
// or a zone that the survey lacks.
func (e exemption) fits(c *court, h glass.Hole) Status {
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
func (e exemption) inZone(c *court, h glass.Hole) Status {
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

func (l noOpening) alone(c *court, h glass.Hole) Finding {
	f := c.start(NoAmount, h)
	for _, e := range l.exempt {
		switch e.fits(c, h) {
		case Pass:
			return f.decide(true).say("Nothing to do: hole %s is %s.", h.ID, e.name)
		case Unknown:
			return f.unknown().say("Record the corner radius of hole %s and the zone %q: if it is round and lies there, it is %s, which is allowed.", h.ID, e.zone, e.name)
		}
	}
	return f.decide(false).say("Close hole %s, or record a dispensation for rule %s in the arena (by whom, reference, date): no opening in the glass is allowed%s. %s",
		h.ID, c.rule.ID, l.but(), l.left())
}

// but names what is exempt.
func (l noOpening) but() string {
	if len(l.exempt) == 0 {
		return ""
	}
	names := make([]string, len(l.exempt))
	for i, e := range l.exempt {
		names[i] = e.name
	}
	return " but " + say.Names(names)
}

// left names the ways left.
func (l noOpening) left() string {
	if len(l.ways) == 0 {
		return "The rule set names no other way."
	}
	return "The ways left: " + form.Choices(l.ways) + "."
}

// groups caps the exempted openings.
func (l noOpening) groups(c *court) []Group {
	var out []Group
	for _, e := range l.exempt {
		at := *c
		out = append(out, c.group("the exemption for "+e.name, e.most, func(h glass.Hole) bool { return e.fits(&at, h) == Pass }))
	}
	return out
}
