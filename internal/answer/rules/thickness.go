package rules

import (
	"fmt"

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
	return c.say(f.unknown(), "Measure the thickness of the pane of hole %s and record it: the rule's limit is a multiple of it.", h.ID)
}

// distanceText prints a rule's distance in the arena's units, as a multiple of
// the thickness where it is one.
func (c *court) distanceText(d Distance) string {
	switch {
	case c.terse:
		return ""
	case d.Thicknesses == 0:
		return c.l(d.Plus)
	case d.Plus == 0:
		return fmt.Sprintf("%g times the pane's thickness", d.Thicknesses)
	}
	return fmt.Sprintf("%g times the pane's thickness plus %s", d.Thicknesses, c.l(d.Plus))
}
