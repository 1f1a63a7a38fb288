package holes

import (
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/words"
)

// findingsView is a list of findings: what needs doing open, what is kept folded away.
type findingsView struct {
	Open, Kept []findingRow
}

// findingRow is one finding.
type findingRow struct {
	Rule    string   // what the rule asks, as a sentence
	Holes   []string // that the finding is about, but for one whose name need not be said again
	Window  bool     // it is about a low window
	Status  rules.Status
	Margin  string
	Message string
}

// viewFindings sorts findings into broken, unknown and kept. skip is a hole
// whose name need not be said again.
func viewFindings(findings []rules.Finding, skip string, sys unit.System) findingsView {
	var v findingsView
	for _, want := range rules.WorstFirst() {
		for _, f := range findings {
			if f.Status != want {
				continue
			}
			row := findingRow{Rule: words.RuleTitle(f.Kind), Status: f.Status, Margin: f.Spare().In(sys), Message: f.Say(sys), Window: f.LowWindow}
			if len(f.Holes) != 1 || f.Holes[0] != skip {
				row.Holes = f.Holes
			}
			if want == rules.Pass {
				v.Kept = append(v.Kept, row)
			} else {
				v.Open = append(v.Open, row)
			}
		}
	}
	return v
}

// ruleRow is one rule over the whole arena.
type ruleRow struct {
	Set, Rule string
	Status    rules.Status
	Words     string
}

func viewRules(findings []rules.Finding, sys unit.System) []ruleRow {
	var rows []ruleRow
	for _, s := range plan.ByRule(findings) {
		rows = append(rows, ruleRow{s.Set, words.RuleTitle(s.Tightest.Kind), s.Status, words.Rule(s, sys)})
	}
	return rows
}
