package rules

import (
	"fmt"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Check proves an arena's working holes and its open low windows
// against the sets in force: every rule on every opening,
// pair and group it concerns, in the order of the sets' rules and the arena's
// holes. It takes milliseconds for the largest arena that is read.
func (s Sets) Check(a arena.Arena) Report {
	on := s.On(a)
	var all []opening
	for _, h := range a.Working() {
		all = append(all, open(on.arena, h))
	}
	for _, w := range a.Windows {
		if w.Open {
			all = append(all, lowWindow(w))
		}
	}
	rep := Report{RuleSets: s.IDs(), Findings: []Finding{}, Notes: append(on.dispensationNotes(), idNotes(a)...)}
	concerned := map[string]bool{Trade: true}
	for i := range on.checks {
		found := on.checks[i].all(all)
		rep.Findings = append(rep.Findings, found...)
		_, elsewhere := on.checks[i].demand.(unjudged)
		concerned[on.checks[i].set.ID] = concerned[on.checks[i].set.ID] || len(found) > 0 || elsewhere && len(all) > 0
	}
	for _, id := range rep.RuleSets {
		if !concerned[id] {
			rep.Notes = append(rep.Notes, fmt.Sprintf("The rule set %s concerns no hole of this arena.", id))
		}
	}
	rep.Notes = append(rep.Notes, guessNotes(a, rep.Findings)...)
	rep.Verdict = on.verdict(rep.Findings)
	return rep
}

// check is one rule at work on one arena.
type check struct {
	arena  *arena.Arena
	set    *Set
	rule   *Rule
	demand demand // the rule's, prepared for the arena
}

// all puts the rule to every opening, group and pair.
func (c *check) all(openings []opening) []Finding {
	var out []Finding
	if d, ok := c.demand.(ofOne); ok {
		for _, h := range openings {
			if f, ok := c.one(d, h); ok {
				out = append(out, f)
			}
		}
	}
	if d, ok := c.demand.(ofGroup); ok {
		out = append(out, c.groups(d, openings)...)
	}
	if d, ok := c.demand.(ofPair); ok {
		for i, h := range openings {
			for _, k := range openings[i+1:] {
				if f, ok := c.pair(d, h, k); ok {
					out = append(out, f)
				}
			}
		}
	}
	return out
}

// one judges one opening; ok is false when the rule does not concern it. Where
// the pane's material decides whether it does and is not recorded, a rule that
// is kept anyhow passes.
func (c *check) one(d ofOne, h opening) (f Finding, ok bool) {
	applies := c.applies(h)
	if applies == no {
		return Finding{}, false
	}
	return c.unlessSure(c.dispense(d.one(c, h), h), applies, h), true
}

func (c *check) pair(d ofPair, h, k opening) (f Finding, ok bool) {
	applies := min(c.applies(h), c.applies(k))
	if applies == no {
		return Finding{}, false
	}
	if f, ok = d.pair(c, h, k); !ok {
		return f, false
	}
	return c.unlessSure(c.dispense(f, h, k), applies, h, k), true
}

// unlessSure turns a failure into unknown when it is not known whether the set
// concerns the holes.
func (c *check) unlessSure(f Finding, applies applies, holes ...opening) Finding {
	if applies == yes || f.Status == Pass {
		return f
	}
	return f.unknown("Find out what the pane of %s is made of and record it: the rules of %s concern %s only, and this one is not surely kept.",
		names(holes), c.set.ID, allowedMaterials{c.set.Materials}.text())
}

// applies says whether a rule concerns an opening.
type applies int

const (
	no      applies = iota
	perhaps         // the pane's material is not recorded
	yes
)

// applies asks whether the rule concerns an opening: by what it is, by the
// demand's own word, and by its pane's material where the set is for some.
func (c *check) applies(h opening) applies {
	if h.low && !c.rule.windows || !h.low && !c.rule.holes {
		return no
	}
	if d, ok := c.demand.(choosy); ok && !d.concerns(h) {
		return no
	}
	if len(c.set.Materials) == 0 {
		return yes
	}
	if h.low {
		return no
	}
	m, known := h.pane.Material.Get()
	if !known {
		return perhaps
	}
	for _, want := range c.set.Materials {
		if m == want {
			return yes
		}
	}
	return no
}

// opening is what a rule judges: a hole in the glass, or an open low window in
// the boards told as a hole without a pane.
type opening struct {
	glass.Hole
	low    bool
	pane   *glass.Pane // it lies in: the one it names, else the one at its station; never nil
	inPane bool        // false where no pane is surveyed, and for a low window: pane is empty
}

func lowWindow(w glass.Window) opening {
	return opening{Hole: glass.Hole{
		ID: w.ID, Station: w.Station, Height: w.Height, Size: w.Size, Corner: w.Corner, Rounding: w.Rounding, Cover: w.Cover,
	}, low: true, pane: &glass.Pane{}}
}

// open returns a hole as rules judge it.
func open(a *arena.Arena, h glass.Hole) opening {
	p, ok := a.Pane(h.Pane)
	if !ok {
		p, ok = a.PaneAt(h.Station)
	}
	return opening{Hole: h, pane: &p, inPane: ok}
}

// name is how sentences call the opening.
func (o opening) name() string {
	if o.low {
		return "low window " + o.ID
	}
	return "hole " + o.ID
}

// what is the opening's common noun.
func (o opening) what() string {
	if o.low {
		return "window"
	}
	return "hole"
}
