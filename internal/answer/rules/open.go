package rules

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Interval is a piece of the boards, in stations: From lies in [0, perimeter),
// To >= From may pass the perimeter.
type Interval struct{ From, To unit.Length }

// Alone returns what the rules on single holes say of a hole, which need not be
// one of the arena's: its place is judged, with its pane's numbers.
func (s Sets) Alone(a arena.Arena, h glass.Hole) []Finding {
	var out []Finding
	s.each(a, func(c *check) {
		if d, ok := c.rule.demand.(ofOne); ok {
			if f, ok := c.one(d, opening{Hole: h}); ok {
				out = append(out, f)
			}
		}
	})
	return out
}

// Standing returns the verdict of [Sets.Alone].
func (s Sets) Standing(a arena.Arena, h glass.Hole) Status { return Verdict(s.Alone(a, h)) }

// Groups returns the groups of places that the rules cap, set by set, rule by
// rule. A plan keeps them when no group's Has is true of more than Most holes.
func (s Sets) Groups(a arena.Arena) []Group {
	var out []Group
	s.each(a, func(c *check) {
		if d, ok := c.rule.demand.(ofGroup); ok {
			out = append(out, d.groups(c)...)
		}
	})
	return out
}

// Reach returns how far apart along the boards two hole centres must be so that
// no rule on pairs can fail, for holes no wider than widest; below 0 when no rule
// speaks of pairs.
func (s Sets) Reach(a arena.Arena, widest unit.Length) unit.Length {
	reach := unit.Length(-1)
	s.each(a, func(c *check) {
		if d, ok := c.rule.demand.(ofPair); ok {
			reach = max(reach, d.reach(&a, widest))
		}
	})
	return reach
}

// Conflict returns what the rules on pairs say of two holes.
func (s Sets) Conflict(a arena.Arena, h, k glass.Hole) []Finding {
	var out []Finding
	s.each(a, func(c *check) {
		if d, ok := c.rule.demand.(ofPair); ok {
			if f, ok := c.pair(d, opening{Hole: h}, opening{Hole: k}); ok {
				out = append(out, f)
			}
		}
	})
	return out
}

// each visits every rule of every set on an arena.
func (s Sets) each(a arena.Arena, visit func(c *check)) {
	for i := range s {
		for j := range s[i].Rules {
			visit(&check{arena: &a, set: &s[i], rule: &s[i].Rules[j]})
		}
	}
}
