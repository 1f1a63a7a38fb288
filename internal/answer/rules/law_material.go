package rules

import (
	"slices"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/glass"
)

// allowedMaterials asks that the hole's pane be of one of some materials.
type allowedMaterials struct{ allowed []glass.Material }

func (l allowedMaterials) alone(c *court, h glass.Hole) Finding {
	f := c.start(NoAmount, h)
	pane, _ := c.pane(h)
	material, known := pane.Material.Get()
	if !known {
		return f.unknown().say("Find out what the pane of hole %s is made of and record it: a hole is allowed in %s.", h.ID, l.text())
	}
	if slices.Contains(l.allowed, material) {
		return f.decide(true).say("Nothing to do: hole %s is in %s, which is allowed.", h.ID, material)
	}
	return f.decide(false).say("Move hole %s to a pane of %s: its pane is of %s.", h.ID, l.text(), material)
}

func (l allowedMaterials) text() string {
	names := make([]string, len(l.allowed))
	for i, m := range l.allowed {
		names[i] = string(m)
	}
	return form.Choices(names)
}
