package rules

import (
	"fmt"
	"slices"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// matches reports whether a dispensation is for this rule: it names the rule's
// id, or the set and the rule as "set/rule".
func (c *check) matches(d arena.Dispensation) bool {
	return d.Rule == c.rule.ID || d.Rule == c.set.ID+"/"+c.rule.ID
}

// dispensed returns the dispensation that frees a hole from the rule at work:
// the rule must admit one, and by, reference and date must be recorded.
func (c *check) dispensed(h opening) (arena.Dispensation, bool) {
	if !c.rule.Dispensable {
		return arena.Dispensation{}, false
	}
	for _, d := range c.arena.Dispensations {
		if c.matches(d) && complete(d) && !c.arena.Ended(d) && (len(d.Holes) == 0 || !h.low && slices.Contains(d.Holes, h.ID)) {
			return d, true
		}
	}
	return arena.Dispensation{}, false
}

func complete(d arena.Dispensation) bool { return d.By != "" && d.Reference != "" && d.Date != "" }

// dispense turns a finding that fails, or is unknown, into a pass when a
// dispensation frees one of its holes from the rule. The numbers measured stay;
// the margin, which would be negative, does not.
func (c *check) dispense(f Finding, holes ...opening) Finding {
	if f.Status == Pass {
		return f
	}
	for _, h := range holes {
		if d, ok := c.dispensed(h); ok {
			f.Status, f.Margin = Pass, unit.Maybe[Amount]{}
			return f.kept("Keep the dispensation at hand: %s allowed %s on %s, reference %s.", d.By, h.name(), d.Date, d.Reference)
		}
	}
	return f
}

// dispensationNotes remarks on dispensations that free nothing.
func (on *Applied) dispensationNotes() []string {
	var notes []string
	for _, d := range on.arena.Dispensations {
		found, dispensable := false, false
		for i := range on.checks {
			if c := &on.checks[i]; c.matches(d) {
				found = true
				dispensable = dispensable || c.rule.Dispensable
			}
		}
		switch {
		case !found:
			notes = append(notes, fmt.Sprintf("The dispensation for %q meets no rule of the sets in force.", d.Rule))
		case !dispensable:
			notes = append(notes, fmt.Sprintf("The dispensation for %q frees nothing: that rule admits none.", d.Rule))
		case on.arena.Ended(d):
			notes = append(notes, fmt.Sprintf("The dispensation for %q ended on %s and frees nothing: ask for a new one.", d.Rule, d.Until))
		case !complete(d):
			notes = append(notes, fmt.Sprintf("The dispensation for %q frees nothing until it says by whom, with what reference and when.", d.Rule))
		}
	}
	return notes
}
