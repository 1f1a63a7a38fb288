package plan

import (
	"math"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
)

// RuleSummary is one rule over the whole arena.
type RuleSummary struct {
	Set, Rule string
	Status    rules.Status // worst of its findings
	Findings  int
	Broken    []string // holes in findings that fail, each once, in the order met
	Unknown   []string // holes in findings that are unknown
	Tightest  rules.Finding
}

// ByRule sums findings up by rule, in the order in which rules are met.
func ByRule(findings []rules.Finding) []RuleSummary {
	var out []RuleSummary
	at := map[[2]string]int{}
	for _, f := range findings {
		key := [2]string{f.Set, f.Rule}
		i, met := at[key]
		if !met {
			i = len(out)
			at[key] = i
			out = append(out, RuleSummary{Set: f.Set, Rule: f.Rule, Status: rules.Pass, Tightest: f})
		}
		out[i].add(f)
	}
	return out
}

func (s *RuleSummary) add(f rules.Finding) {
	s.Findings++
	s.Status = rules.Verdict([]rules.Finding{{Status: s.Status}, f})
	switch f.Status {
	case rules.Fail:
		s.Broken = addNew(s.Broken, f.Holes)
	case rules.Unknown:
		s.Unknown = addNew(s.Unknown, f.Holes)
	}
	if margin(f) < margin(s.Tightest) {
		s.Tightest = f
	}
}

// margin returns a finding's margin in SI, +Inf without one.
func margin(f rules.Finding) float64 {
	if m, ok := f.Margin.Get(); ok {
		return m.N
	}
	return math.Inf(1)
}

func addNew(list, more []string) []string {
	for _, m := range more {
		if !slices.Contains(list, m) {
			list = append(list, m)
		}
	}
	return list
}

// Words says how the rule stands: "kept by all, tightest A1: 18 in to spare".
func (s RuleSummary) Words(sys unit.System) string {
	var parts []string
	if len(s.Broken) > 0 {
		parts = append(parts, "broken by "+strings.Join(s.Broken, ", "))
	}
	if len(s.Unknown) > 0 {
		parts = append(parts, "not known for "+strings.Join(s.Unknown, ", "))
	}
	if len(parts) == 0 {
		parts = append(parts, "kept")
	}
	if words := s.Tightest.Spare().In(sys); words != "" {
		who := ""
		if s.Findings > 1 {
			who = "tightest " + strings.Join(s.Tightest.Holes, ", ") + ": "
		}
		parts = append(parts, who+words)
	}
	return strings.Join(parts, "; ")
}
