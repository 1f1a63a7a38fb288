package wire

import (
	"bytes"
	"encoding/json"
	"fmt"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/unit"
)

// Plan is plan.json.
type Plan struct {
	plan.Plan
	Findings []Finding `json:"findings"`
	// Choice is null when it was not asked for, and on a rink too small for a game.
	Choice *Choice `json:"choice"`
}

// PlanOf returns a plan with its findings and its choice in a system's units.
func PlanOf(p plan.Plan, sys unit.System) Plan {
	out := Plan{Plan: p, Findings: Findings(p.Findings, sys)}
	if p.Choice != nil {
		c := ChoiceOf(*p.Choice, sys)
		out.Choice = &c
	}
	return out
}

// Now is how an arena stands with a change.
type Now struct {
	plan.Now
	Findings []Finding `json:"findings"`
}

// NowOf returns the answer with its findings in a system's units.
func NowOf(n plan.Now, sys unit.System) Now { return Now{n, Findings(n.Findings, sys)} }

// JSON returns the plan as the bytes of plan.json.
func (p Plan) JSON() ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	if err := enc.Encode(p); err != nil {
		return nil, fmt.Errorf("plan as JSON: %w", err)
	}
	return b.Bytes(), nil
}

// Files returns the plan's folder: what to look at first comes first.
func Files(p plan.Plan, sys unit.System) ([]plan.File, error) {
	data, err := PlanOf(p, sys).JSON()
	if err != nil {
		return nil, err
	}
	return append(p.Files(sys), plan.File{Name: "plan.json", Data: data}), nil
}
