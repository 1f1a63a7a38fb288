package rules

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Applied is the sets in force at one arena: what a rule works out of the arena
// alone, as where its stretches lie, is worked out once. It may be shared, and
// the arena must not change meanwhile. Make one with [Sets.On].
type Applied struct {
	arena  *arena.Arena
	sets   Sets
	checks []check // one for each rule, set by set
}

// On applies the sets to an arena.
func (s Sets) On(a arena.Arena) *Applied {
	on := &Applied{arena: &a, sets: s}
	for i := range s.list {
		for j := range s.list[i].Rules {
			c := check{arena: &a, set: &s.list[i], rule: &s.list[i].Rules[j]}
			c.demand = c.rule.demand
			if d, ok := c.demand.(preparing); ok {
				c.demand = d.prepare(&c)
			}
			on.checks = append(on.checks, c)
		}
	}
	return on
}

// verdict sums findings up; without a set in force nothing is proved.
func (on *Applied) verdict(findings []Finding) Status {
	if len(on.checks) == 0 {
		return Unknown
	}
	return Verdict(findings)
}

// Alone returns what the rules on single holes say of a hole, which need not be
// one of the arena's: its place is judged, with its pane's numbers.
func (on *Applied) Alone(h glass.Hole) []Finding {
	var out []Finding
	on.alone(h, func(f Finding) bool {
		out = append(out, f)
		return true
	})
	return out
}

// Standing returns the verdict of [Applied.Alone]; it asks no further when a
// rule is broken.
func (on *Applied) Standing(h glass.Hole) Status {
	v := on.verdict(nil)
	on.alone(h, func(f Finding) bool {
		v = v.And(f.Status)
		return v != Fail
	})
	return v
}

// alone yields what the rules on single holes say until yield returns false.
func (on *Applied) alone(h glass.Hole, yield func(Finding) bool) {
	o := open(on.arena, h)
	for i := range on.checks {
		c := &on.checks[i]
		if d, ok := c.demand.(ofOne); ok {
			if f, ok := c.one(d, o); ok && !yield(f) {
				return
			}
		}
	}
}

// Groups returns the groups of places that the rules cap, set by set, rule by
// rule. A plan keeps them when no group's Has is true of more than Most holes.
func (on *Applied) Groups() []Group {
	var out []Group
	for i := range on.checks {
		if d, ok := on.checks[i].demand.(ofGroup); ok {
			out = append(out, d.groups(&on.checks[i])...)
		}
	}
	return out
}

// Reach returns how far apart along the boards two hole centres must be so that
// no rule on pairs can fail, for holes no wider than widest; below 0 when no rule
// speaks of pairs.
func (on *Applied) Reach(widest unit.Length) unit.Length {
	reach := unit.Length(-1)
	for i := range on.checks {
		if d, ok := on.checks[i].demand.(ofPair); ok {
			reach = max(reach, d.reach(on.arena, widest))
		}
	}
	return reach
}

// Conflict returns what the rules on pairs say of two holes.
func (on *Applied) Conflict(h, k glass.Hole) []Finding {
	var out []Finding
	one, other := open(on.arena, h), open(on.arena, k)
	for i := range on.checks {
		c := &on.checks[i]
		if d, ok := c.demand.(ofPair); ok {
			if f, ok := c.pair(d, one, other); ok {
				out = append(out, f)
			}
		}
	}
	return out
}
