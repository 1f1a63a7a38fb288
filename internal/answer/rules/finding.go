package rules

import (
	"slices"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// Status is the answer of one rule for one hole or group.
type Status string

// The answers. Unknown means that the survey lacks a number the rule needs.
const (
	Pass    Status = "pass"
	Fail    Status = "fail"
	Unknown Status = "unknown"
)

// Finding is what one rule says of one hole, a pair or a group.
type Finding struct {
	Set   string // id of the rule set
	Rule  string // id of the rule in its set
	Kind  string // kind of rule: "hole-size"
	Holes []string
	// LowWindow says that Holes names an open low window, not a hole.
	LowWindow bool
	Status    Status
	// Of says what the amounts are; they are unknown where a number is missing
	// and where the rule asks for none.
	Of              Quantity
	Measured, Limit unit.Maybe[Amount]
	Margin          unit.Maybe[Amount] // positive: kept by so much; negative: broken by so much
	Sentence        say.Sentence       // what to do
}

// Say sets the finding's sentence in a system's units.
func (f Finding) Say(sys unit.System) string { return f.Sentence.In(sys) }

// Report is the answer for one arena.
type Report struct {
	Verdict  Status   // fail if any finding fails, else unknown if any is, else pass
	RuleSets []string // ids of the sets in force
	Findings []Finding
	// Notes are remarks that change no verdict: a dispensation that meets no
	// rule, a set that concerns no hole.
	Notes []string
}

// Verdict sums findings up: fail if any fails, else unknown if any is unknown, else pass.
func Verdict(findings []Finding) Status {
	v := Pass
	for _, f := range findings {
		v = v.And(f.Status)
	}
	return v
}

// WorstFirst lists the answers in the order to read them: what is broken, what nobody
// knows, what is kept.
func WorstFirst() []Status { return []Status{Fail, Unknown, Pass} }

// About returns the findings that name a hole, broken ones first, then those
// with a number missing. [Verdict] of these is the one verdict on the hole:
// rules, trade, material and place together.
func About(hole string, findings []Finding) []Finding {
	var out []Finding
	for _, status := range WorstFirst() {
		for _, f := range findings {
			if f.Status == status && !f.LowWindow && slices.Contains(f.Holes, hole) {
				out = append(out, f)
			}
		}
	}
	return out
}

// And returns the answer of two rules together.
func (s Status) And(other Status) Status {
	switch {
	case s == Fail || other == Fail:
		return Fail
	case s == Unknown || other == Unknown:
		return Unknown
	}
	return Pass
}
