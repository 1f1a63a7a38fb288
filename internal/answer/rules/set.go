package rules

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
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
	Dispensable bool
	law         law
}

// Sets are the rule sets in force together.
type Sets []Set

// A law is what one rule demands. It implements one or more of single, grouped
// and paired.
type law any

// single judges one hole by itself.
type single interface {
	alone(c *court, h glass.Hole) Finding
}

// grouped caps how many holes stand in each of some groups.
type grouped interface {
	groups(c *court) []Group
}

// paired judges two holes; ok is false when the pair does not concern it. Holes
// no wider than widest whose centres are farther apart along the boards than its
// reach always pass.
type paired interface {
	reach(a *arena.Arena, widest unit.Length) unit.Length
	pair(c *court, h, k glass.Hole) (f Finding, ok bool)
}

// Group is a set of places of which at most Most may hold a hole.
type Group struct {
	Set, Rule string
	Name      string // "the whole rink", "corner B-box", "stretch circle-top of corner B-box"
	Most      int
	Has       func(glass.Hole) bool // whether a hole counts; by its place, size and pane
}

// court is one rule at work on one arena.
type court struct {
	arena *arena.Arena
	set   *Set
	rule  *Rule
}

// concern says whether a set's rules concern a hole.
type concern int

const (
	notConcerned concern = iota
	perhaps              // the pane's material is not recorded
	concerned
)

// concerns asks whether the set's rules concern a hole: a set for some
// materials concerns only holes in panes of these.
func (c *court) concerns(h glass.Hole) concern {
	if len(c.set.Materials) == 0 {
		return concerned
	}
	pane, ok := c.pane(h)
	if !ok {
		return perhaps
	}
	m, known := pane.Material.Get()
	if !known {
		return perhaps
	}
	for _, want := range c.set.Materials {
		if m == want {
			return concerned
		}
	}
	return notConcerned
}

// pane returns the pane a hole lies in: the one it names, else the one at its station.
func (c *court) pane(h glass.Hole) (glass.Pane, bool) {
	if p, ok := c.arena.Pane(h.Pane); ok {
		return p, true
	}
	return c.arena.PaneAt(h.Station)
}
