package rules

import "example.org/rinkpane/internal/survey/arena"

// Stretches returns the stretches that the sets' stretch rules permit, set by
// set, corner by corner. It is empty when no set has such a rule and on a rink
// without markings.
func (s Sets) Stretches(a arena.Arena) []Stretch {
	var out []Stretch
	s.each(a, func(c *check) {
		if d, ok := c.rule.demand.(stretches); ok {
			out = append(out, d.lay(c)...)
		}
	})
	return out
}
