package main

import (
	"fmt"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/survey/kit"
)

// newMaker returns what makes plans: the built-in kit and the rule sets named.
func newMaker(a *app, ruleNames []string) (plan.Maker, error) {
	sets, err := readRules(a, ruleNames)
	if err != nil {
		return plan.Maker{}, err
	}
	k, err := kit.Default()
	if err != nil {
		return plan.Maker{}, fmt.Errorf("the built-in kit: %w", err)
	}
	return plan.Maker{Kit: k, Rules: sets}, nil
}
