package wire

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Assumption is a length that the survey lacks and the answer took all the same.
type Assumption struct {
	Of      string  `json:"of"`    // what it is of: "pane P4"
	Field   string  `json:"field"` // "thickness"
	ValueMM float64 `json:"value_mm"`
	Reason  string  `json:"reason"` // one sentence
}

// Assumed encodes assumptions; none are an empty list.
func Assumed(list []arena.Assumption, sys unit.System) []Assumption {
	out := make([]Assumption, len(list))
	for i, a := range list {
		out[i] = Assumption{a.Of, a.Field, a.Value.Millimetres(), a.Reason.In(sys)}
	}
	return out
}
