package rules

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
	Set      string   `json:"rule_set"` // id of the rule set
	Rule     string   `json:"rule"`     // id of the rule in its set
	Kind     string   `json:"kind"`     // kind of rule: "hole-size"
	Holes    []string `json:"holes"`
	Status   Status   `json:"status"`
	Measured *float64 `json:"measured"` // in Unit; null when unknown or not a number
	Limit    *float64 `json:"limit"`    // in Unit
	Margin   *float64 `json:"margin"`   // in Unit; positive: kept by so much; negative: broken by so much
	Unit     string   `json:"unit"`     // "m", "mm", "holes", ""
	Message  string   `json:"message"`
}

// Report is the answer for one arena.
type Report struct {
	Verdict  Status    `json:"verdict"` // fail if any finding fails, else unknown if any is, else pass
	RuleSets []string  `json:"rule_sets"`
	Findings []Finding `json:"findings"`
	// Notes are remarks that change no verdict: a dispensation that meets no
	// rule, a set that concerns no hole.
	Notes []string `json:"notes"`
}

// Verdict sums findings up: fail if any fails, else unknown if any is unknown, else pass.
func Verdict(findings []Finding) Status {
	v := Pass
	for _, f := range findings {
		if f.Status == Fail {
			return Fail
		}
		if f.Status == Unknown {
			v = Unknown
		}
	}
	return v
}
