package wire

import (
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
)

// Finding is what one rule says of one hole, a pair or a group.
type Finding struct {
	Set      string       `json:"rule_set"` // id of the rule set
	Rule     string       `json:"rule"`     // id of the rule in its set
	Kind     string       `json:"kind"`     // kind of rule: "hole-size"
	Holes    []string     `json:"holes"`
	Window   bool         `json:"low_window"` // holes names an open low window, not a hole
	Status   rules.Status `json:"status"`
	Measured *float64     `json:"measured"` // in Unit; null when unknown or not a number
	Limit    *float64     `json:"limit"`    // in Unit
	Margin   *float64     `json:"margin"`   // in Unit; positive: kept by so much; negative: broken by so much
	Unit     string       `json:"unit"`     // "m", "mm", "holes", ""
	Message  string       `json:"message"`
}

// Report is the answer of a check.
type Report struct {
	Verdict  rules.Status `json:"verdict"`
	RuleSets []string     `json:"rule_sets"`
	Findings []Finding    `json:"findings"`
	Notes    []string     `json:"notes"`
}

// Findings returns findings with their messages in a system's units.
func Findings(list []rules.Finding, sys unit.System) []Finding {
	out := make([]Finding, len(list))
	for i, f := range list {
		out[i] = Finding{
			Set: f.Set, Rule: f.Rule, Kind: f.Kind, Holes: f.Holes, Window: f.LowWindow, Status: f.Status,
			Measured: amount(f.Measured), Limit: amount(f.Limit), Margin: amount(f.Margin),
			Unit: units[f.Of].name, Message: f.Say(sys),
		}
	}
	return out
}

// ReportOf returns a report with its messages in a system's units.
func ReportOf(r rules.Report, sys unit.System) Report {
	return Report{r.Verdict, r.RuleSets, Findings(r.Findings, sys), r.Notes}
}

// units are the unit that each quantity is written in, and how many of it make
// one of SI.
var units = map[rules.Quantity]struct {
	name string
	per  float64
}{
	rules.NoAmount: {"", 1}, rules.Share: {"", 1}, rules.HoleCount: {"holes", 1},
	rules.AlongBoards: {"m", 1}, rules.InPane: {"mm", 1e3},
}

func amount(m unit.Maybe[rules.Amount]) *float64 {
	a, ok := m.Get()
	if !ok {
		return nil
	}
	v := a.N * units[a.Of].per
	return &v
}
