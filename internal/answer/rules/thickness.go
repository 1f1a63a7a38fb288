package rules

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// distance returns a rule's distance for a hole's pane; ok is false when it
// hangs on a thickness that the survey lacks.
func (c *court) distance(d Distance, h glass.Hole) (l unit.Length, ok bool) {
	pane, _ := c.pane(h)
	return d.Of(pane.Thickness)
}

// lacksThickness answers when the pane's thickness is not recorded.
func (c *court) lacksThickness(f Finding, h glass.Hole) Finding {
	return f.unknown().say("Measure the thickness of the pane of hole %s and record it: the rule's limit is a multiple of it.", h.ID)
}
