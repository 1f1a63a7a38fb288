package plan

import (
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/rules"
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
