// Package rules proves an arena's holes against a rule set.
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
	Rule     string   `json:"rule"`
	Holes    []string `json:"holes"`
	Status   Status   `json:"status"`
	Measured *float64 `json:"measured"` // in Unit; null when unknown or not a number
	Limit    *float64 `json:"limit"`    // in Unit
	Margin   *float64 `json:"margin"`   // in Unit; positive: kept by so much; negative: broken by so much
	Unit     string   `json:"unit"`     // "m", "mm", "holes", ""
	Message  string   `json:"message"`
}
