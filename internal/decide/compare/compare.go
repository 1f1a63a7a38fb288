// Package compare answers: what is different between two plans of a rink, and
// what does it change for the photographer?
//
//	before  o    o       o          hole by hole, by id
//	after   o      o         o
//	      same  moved  removed  added
//
// The model: holes are matched by their ids, since that is how people name
// them. A hole that keeps its id has moved by so much along the boards (the
// shorter way round) and so much in height; whatever follows from that (rules,
// reach, best lens, ISO) is compared as computed, not guessed from the move.
// Rules are matched by rule set and id.
//
// Assumptions: both plans were made with one kit, under one combination of rule
// sets. On rinks of different size the move along the boards means nothing and
// is left out; [Comparison.SameRink] says which.
//
// Limits: two holes that swapped their ids count as two moves.
package compare

import (
	"math"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
)

// Kind is what became of a hole.
type Kind string

// The kinds of change.
const (
	Same     Kind = "same"
	Moved    Kind = "moved"     // to another place or height; more may have changed
	Changed  Kind = "changed"   // same place, other size, state or consequences
	Added    Kind = "added"     // after has it, before does not
	Removed  Kind = "removed"   // before has it, after does not
	Off      Kind = "off"       // after has turned it off
	TurnedOn Kind = "turned on" // before had it turned off
)

// Comparison is what differs between two plans.
type Comparison struct {
	SameRink      bool // of one size: places can be compared
	Before, After rules.Status
	Holes         []Hole // those of before in its order, then those that only after has
	Rules         []Rule // those whose answer changed, in the order of after
}

// Hole is what became of one hole.
type Hole struct {
	ID            string
	Kind          Kind
	Before, After *plan.Hole // nil where it is not, or is turned off
	// Along is the move along the boards in metres, positive with rising station;
	// Up the change of height in metres.
	Along, Up float64
}

// Rule is a rule whose answer changed. The answer "" means that the rule was
// not asked.
type Rule struct {
	Set, Rule     string
	Before, After rules.Status
}

// least is the smallest move that counts, in metres: half a millimetre, less
// than a document writes down.
const least = 0.0005

// Plans compares two plans.
func Plans(before, after plan.Plan) Comparison {
	c := Comparison{
		SameRink: before.Survey.Length == after.Survey.Length && before.Survey.Width == after.Survey.Width &&
			before.Survey.CornerRadius == after.Survey.CornerRadius,
		Before: before.Verdict, After: after.Verdict,
	}
	for i := range before.Holes {
		c.Holes = append(c.Holes, c.became(&before.Holes[i], before, after))
	}
	for i := range after.Holes {
		if h := &after.Holes[i]; !has(before, h.ID) {
			kind := Added
			if before.IsOff(h.ID) {
				kind = TurnedOn
			}
			c.Holes = append(c.Holes, Hole{ID: h.ID, Kind: kind, After: h})
		}
	}
	c.Rules = changedRules(before, after)
	return c
}

func has(p plan.Plan, id string) bool {
	_, ok := p.Hole(id)
	return ok
}

// became tells what became of a hole of before.
func (c Comparison) became(h *plan.Hole, before, after plan.Plan) Hole {
	out := Hole{ID: h.ID, Kind: Removed, Before: h}
	next, ok := after.Hole(h.ID)
	if !ok {
		if after.IsOff(h.ID) {
			out.Kind = Off
		}
		return out
	}
	out.After, out.Kind = &next, Same
	out.Up = next.Height - h.Height
	if c.SameRink {
		out.Along = math.Remainder(next.Station-h.Station, before.Survey.Perimeter)
	}
	switch {
	case math.Abs(out.Along) > least || math.Abs(out.Up) > least:
		out.Kind = Moved
	case differs(*h, next):
		out.Kind = Changed
	}
	return out
}

// differs reports whether anything that people see of a hole changed.
func differs(a, b plan.Hole) bool {
	return a.Width != b.Width || a.Tall != b.Tall || a.Thick != b.Thick || a.State != b.State || a.Status != b.Status ||
		a.Best != b.Best || a.BestFocal != b.BestFocal || !alike(a.Reach.Share, b.Reach.Share) || slotISO(a) != slotISO(b)
}

// alike reports whether two shares print as the same percentage.
func alike(a, b float64) bool { return math.Round(100*a) == math.Round(100*b) }

// slotISO prints the ISO that the slot of the hole's own end asks for, "" without light.
func slotISO(h plan.Hole) string {
	row, ok := h.SlotLight()
	if !ok {
		return ""
	}
	return plan.ISOWords(row)
}

// changedRules lists the rules whose answer changed.
func changedRules(before, after plan.Plan) []Rule {
	was := map[[2]string]rules.Status{}
	for _, r := range plan.ByRule(before.Findings) {
		was[[2]string{r.Set, r.Rule}] = r.Status
	}
	var out []Rule
	for _, r := range plan.ByRule(after.Findings) {
		key := [2]string{r.Set, r.Rule}
		if was[key] != r.Status {
			out = append(out, Rule{r.Set, r.Rule, was[key], r.Status})
		}
		delete(was, key)
	}
	for _, r := range plan.ByRule(before.Findings) {
		if s, gone := was[[2]string{r.Set, r.Rule}]; gone {
			out = append(out, Rule{r.Set, r.Rule, s, ""})
		}
	}
	return out
}

// Alike reports whether nothing that is compared differs.
func (c Comparison) Alike() bool {
	for _, h := range c.Holes {
		if h.Kind != Same {
			return false
		}
	}
	return len(c.Rules) == 0 && c.Before == c.After
}
