package rules

import (
	"fmt"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Check proves an arena's working holes against the sets in force: every rule
// on every hole, pair and group it concerns, in the order of the sets' rules
// and the arena's holes. Messages are in the arena's units.
func (s Sets) Check(a arena.Arena) Report {
	holes := a.Working()
	rep := Report{RuleSets: []string{}, Findings: []Finding{}, Notes: s.dispensationNotes(a)}
	for i := range s {
		rep.RuleSets = append(rep.RuleSets, s[i].ID)
		before := len(rep.Findings)
		for j := range s[i].Rules {
			c := &court{arena: &a, set: &s[i], rule: &s[i].Rules[j]}
			rep.Findings = append(rep.Findings, c.sit(holes)...)
		}
		if len(rep.Findings) == before {
			rep.Notes = append(rep.Notes, fmt.Sprintf("The rule set %s concerns no hole of this arena.", s[i].ID))
		}
	}
	rep.Verdict = Verdict(rep.Findings)
	return rep
}

// sit hears one rule on all holes.
func (c *court) sit(holes []glass.Hole) []Finding {
	var out []Finding
	if law, ok := c.rule.law.(single); ok {
		for _, h := range holes {
			if f, ok := c.hear(law, h); ok {
				out = append(out, f)
			}
		}
	}
	if law, ok := c.rule.law.(grouped); ok {
		out = append(out, c.hearGroups(law, holes)...)
	}
	if law, ok := c.rule.law.(paired); ok {
		for i, h := range holes {
			for _, k := range holes[i+1:] {
				if f, ok := c.hearPair(law, h, k); ok {
					out = append(out, f)
				}
			}
		}
	}
	return out
}

// hear judges one hole; ok is false when the set does not concern it. Where the
// pane's material decides whether it does and is not recorded, a rule that is
// kept anyhow passes.
func (c *court) hear(law single, h glass.Hole) (f Finding, ok bool) {
	concern := c.concerns(h)
	if concern == notConcerned {
		return Finding{}, false
	}
	return c.doubt(c.lift(law.alone(c, h), h), concern, h), true
}

// hearPair judges two holes.
func (c *court) hearPair(law paired, h, k glass.Hole) (f Finding, ok bool) {
	f, ok = law.pair(c, h, k)
	if !ok {
		return f, false
	}
	return c.doubt(c.lift(f, h, k), min(c.concerns(h), c.concerns(k)), h, k), true
}

// doubt turns a failure into unknown when it is not known whether the set
// concerns the holes.
func (c *court) doubt(f Finding, concern concern, holes ...glass.Hole) Finding {
	if concern == concerned || f.Status == Pass {
		return f
	}
	f.Status = Unknown
	return f.say("Find out what the pane of %s is made of and record it: the rules of %s concern %s only, and this one is not surely kept.",
		say.Names(f.Holes), c.set.ID, allowedMaterials{c.set.Materials}.text())
}

// lacking is a grouped law that may lack what tells its groups apart.
type lacking interface {
	lacking(c *court, holes []glass.Hole) (Finding, bool)
}

func (c *court) hearGroups(law grouped, holes []glass.Hole) []Finding {
	if l, ok := law.(lacking); ok {
		if f, lacks := l.lacking(c, holes); lacks {
			return []Finding{f}
		}
	}
	var out []Finding
	for _, g := range law.groups(c) {
		if f, ok := c.count(g, holes); ok {
			out = append(out, f)
		}
	}
	return out
}
