package desk

import (
	"html/template"

	"example.org/rinkpane/plan"
	"example.org/rinkpane/unit"
)

func drawings(p plan.Plan, at address, sys unit.System) (plan_, strip template.HTML) {
	return "", ""
}
