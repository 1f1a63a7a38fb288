package rules

import (
	"slices"

	"example.org/rinkpane/internal/survey/glass"
)

// Set is one rule set as read from its document.
type Set struct {
	ID          string           // "common-practice"
	Name        string           // one line for people
	Status      string           // published, superseded, common practice, an example ...
	Source      string           // document, edition and rule number; "" when nothing is published
	Example     bool             // an example, in force nowhere
	Assumptions []string         // what the set assumes without a published source
	Materials   []glass.Material // the set concerns only panes of these; empty: every pane
	Rules       []Rule
}

// Rule is one rule of a set.
type Rule struct {
	ID   string // unique in its set
	Kind string // "hole-size"
	Note string // reason or source, for people; may be ""
	// Dispensable says that a dispensation recorded in the arena lifts the rule.
	Dispensable    bool
	holes, windows bool // which openings it concerns
	demand         demand
}

// Sets are the rule sets in force together, the trade's always among them:
// nobody proves a hole against less. Only [InForce] returns them; the zero value
// holds none and proves nothing, so that its verdicts are unknown.
type Sets struct{ list []Set }

// All returns the sets, those that were named first. The caller may keep them.
func (s Sets) All() []Set { return slices.Clone(s.list) }

// IDs returns the sets' ids in their order.
func (s Sets) IDs() []string {
	ids := []string{}
	for _, set := range s.list {
		ids = append(ids, set.ID)
	}
	return ids
}

// Group is a set of places of which at most Most may hold a hole.
type Group struct {
	Set, Rule string
	Name      string // "the whole rink", "corner B-box", "stretch circle-top of corner B-box"
	Most      int
	Has       func(glass.Hole) bool // whether a hole counts; by its place, size and pane
}
