package rules

import "example.org/rinkpane/internal/survey/arena"

// Only returns sets in force without the trade's, to look at rules one by one.
func Only(sets ...Set) Sets { return Sets{sets} }

// And returns the sets of both.
func (s Sets) And(more Sets) Sets { return Sets{append(s.All(), more.list...)} }

// Stretches returns the stretches that the sets' stretch rules permit, set by
// set, corner by corner. It is empty when no set has such a rule and on a rink
// without markings.
func (s Sets) Stretches(a arena.Arena) []Stretch {
	var out []Stretch
	for _, c := range s.On(a).checks {
		if d, ok := c.demand.(laid); ok {
			out = append(out, d...)
		}
	}
	return out
}
