package main

import (
	"context"
	"errors"
	"fmt"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/play"
)

// planChoice adds the best legal set of holes to a plan and returns its files.
// A rink on which no game can be played has none, which is said.
func planChoice(ctx context.Context, a *app, m plan.Maker, doc *arena.Document, p *plan.Plan, sys unit.System, f planFlags) ([]plan.File, error) {
	if f.short {
		return nil, nil
	}
	c, err := m.Choose(ctx, doc, plan.ChoiceOptions())
	if errors.Is(err, play.ErrSmall) {
		fmt.Fprintln(a.err, "no choice of holes: "+play.ErrSmall.Error())
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	p.Choice = &c.Answer
	return c.Files(sys)
}
