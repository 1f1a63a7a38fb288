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
	"example.org/rinkpane/internal/measure/unit"
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
	Before, After *plan.Hole  // nil where it is not, or is turned off
	Along         unit.Length // the move along the boards, positive with rising station
	Up            unit.Length // the change of height
}

// Rule is a rule whose answer changed. The answer "" means that the rule was
// not asked.
type Rule struct {
	Set, Rule     string
	Before, After rules.Status
}

// least is the smallest move that counts: less than a document writes down.
const least = unit.Millimetre / 2

// counts reports whether a move counts.
func counts(l unit.Length) bool { return max(l, -l) > least }

// Plans compares two plans.
func Plans(before, after plan.Plan) Comparison {
	c := Comparison{
		SameRink: before.Survey.Ice == after.Survey.Ice, Before: before.Verdict, After: after.Verdict,
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
	if up := next.Height - h.Height; counts(up) {
		out.Up = up
	}
	if along := before.Arena.Rink.Apart(h.Station, next.Station); c.SameRink && counts(along) {
		out.Along = along
	}
	switch {
	case out.Along != 0 || out.Up != 0:
		out.Kind = Moved
	case differs(*h, next):
		out.Kind = Changed
	}
	return out
}

// differs reports whether anything that people see of a hole changed.
func differs(a, b plan.Hole) bool {
	return a.Size != b.Size || a.Opening.Thick.Value != b.Opening.Thick.Value || a.State != b.State || a.Status != b.Status ||
		OtherLens(a, b) || !Alike(a.Reach.Share, b.Reach.Share) || !Alike(a.Reach.Whole.Or(0), b.Reach.Whole.Or(0)) || OtherISO(a, b)
}

// OtherLens reports whether another lens, or another end of it, is best.
func OtherLens(a, b plan.Hole) bool {
	f, inA := a.BestFit()
	g, inB := b.BestFit()
	return inA != inB || f.Lens.ID != g.Lens.ID || f.Focal != g.Focal
}

// Alike reports whether two shares print as the same percentage.
func Alike(a, b float64) bool { return math.Round(100*a) == math.Round(100*b) }

// OtherISO reports whether the slot of the hole's own end asks for another ISO for faces,
// or with another remark on it.
func OtherISO(a, b plan.Hole) bool {
	l, inA := a.SlotLight()
	m, inB := b.SlotLight()
	return inA != inB || l.Faces.ISOMark() != m.Faces.ISOMark() || l.OverISOFaces != m.OverISOFaces || l.Guessed() != m.Guessed()
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
