package rules

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// kind is one kind of rule: a file of its own, and a row of [kinds].
type kind struct {
	name   string
	asks   string   // what a rule of the kind asks, in a line
	fields []string // besides id, kind, note, dispensation and openings
	// windows says whether the kind concerns open low windows.
	windows windows
	read    func(m form.Map) demand
}

// windows says whether a rule concerns open low windows besides holes.
type windows int

const (
	never      windows = iota // the kind asks about panes, corners or counts of photo holes
	whereAsked                // where the rule says "openings: low-windows" or "both"
	always                    // unless the rule says "openings: holes"
)

// kinds is the table of all kinds, in the order in which documents list them.
func kinds() []kind {
	return []kind{
		mostInAllKind, mostPerCornerKind, stretchesKind, leastSeparationKind, holeToHoleKind, noOverlapKind,
		holeSizeKind, sizeAtMostKind, holeLeastKind, heightRangeKind, cornerRadiusKind, edgeRoundingKind,
		coverKind, tetherKind, inOnePaneKind, paneEdgeKind, paneCornerKind, cutOutShareKind, materialsKind,
		tradeKind, forbiddenZonesKind, noOpeningKind, inspectionKind, keptKind,
	}
}

// Kinds returns the names of the kinds of rules.
func Kinds() []string {
	var names []string
	for _, k := range kinds() {
		names = append(names, k.name)
	}
	return names
}

// A demand is what one rule asks, with its numbers. It implements one or more
// of ofOne, ofGroup and ofPair, and of the optional methods below.
type demand any

// ofOne asks something of each opening by itself.
type ofOne interface {
	one(c *check, h opening) Finding
}

// ofGroup caps how many holes stand in each of some groups.
type ofGroup interface {
	groups(c *check) []Group
}

// ofPair asks something of two holes; ok is false when it does not concern
// them. Holes no wider than widest whose centres are farther apart along the
// boards than its reach always pass.
type ofPair interface {
	reach(a *arena.Arena, widest unit.Length) unit.Length
	pair(c *check, h, k opening) (f Finding, ok bool)
}

// What a demand may say besides.
type (
	// breaking names the stations where the answer for a hole of a width may
	// change within a pane.
	breaking interface {
		breaks(width unit.Length) []unit.Length
	}
	// shaping changes the standard hole to what the rule likes best.
	shaping interface {
		shape(a arena.Arena, h *glass.Hole)
	}
	// choosy leaves openings out that the rule cannot concern.
	choosy interface {
		concerns(h opening) bool
	}
	// preparing works out what the demand asks at one arena, as a demand that
	// stands for it there.
	preparing interface {
		prepare(c *check) demand
	}
	// unjudged gives no finding: what it asks is not written in an arena, and is asked
	// for where it counts.
	unjudged interface{ unjudged() }
)
