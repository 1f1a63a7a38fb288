package rules

import (
	"slices"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/glass"
)

var materialsKind = kind{
	name: "materials", fields: []string{"allowed"},
	asks: "the pane is of one of these; without `allowed`, of any, so that it must be recorded",
	read: func(m form.Map) demand {
		if !m.Has("allowed") {
			return allowedMaterials{glass.Materials()}
		}
		return allowedMaterials{readMaterials(m.At("allowed"))}
	},
}

type allowedMaterials struct{ allowed []glass.Material }

func (d allowedMaterials) one(c *check, h opening) Finding {
	f := c.finding(NoAmount, h)
	material, known := h.pane.Material.Get()
	if !known {
		return f.unknown("Find out what the pane of hole %s is made of and record it: a hole is allowed in %s.", h.ID, d.text())
	}
	return f.keeps(slices.Contains(d.allowed, material)).
		kept("Nothing to do: hole %s is in %s, which is allowed.", h.ID, material).
		broken("Move hole %s to a pane of %s: its pane is of %s.", h.ID, d.text(), material)
}

func (d allowedMaterials) text() string {
	names := make([]string, len(d.allowed))
	for i, m := range d.allowed {
		names[i] = string(m)
	}
	return form.Choices(names)
}
