package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// planChoice adds the best legal set of holes to a plan and returns its files.
// A rink on which no game can be played has none, which is said.
func planChoice(ctx context.Context, a *app, m plan.Maker, doc *arena.Document, p *plan.Plan, sys unit.System, f planFlags) ([]plan.File, error) {
	if f.short {
		return nil, nil
	}
	ar, err := doc.Check()
	if err != nil {
		return nil, err
	}
	c, err := choose.ForArena(ctx, ar, m.Rules, m.Kit, choose.FolderOptions())
	if errors.Is(err, play.ErrSmall) {
		fmt.Fprintln(a.err, "no choice of holes: "+play.ErrSmall.Error())
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	p.Choice = &c
	return choiceFiles(c, sys)
}

// choiceWidth is the width of a choice's map in millimetres.
const choiceWidth = 400

// choiceFiles returns the choice's part of a plan's folder.
func choiceFiles(c choose.Answer, sys unit.System) ([]plan.File, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	if err := enc.Encode(wire.ChoiceOf(c, sys)); err != nil {
		return nil, fmt.Errorf("choice as JSON: %w", err)
	}
	return []plan.File{
		{Name: "choice-map.svg", Data: sheet.SVG(chart.PlanMap(chart.OfChoice(c, 0, sys), choiceWidth))},
		{Name: "choice.txt", Data: []byte(words.Choice(c, sys))},
		{Name: "choice.json", Data: b.Bytes()},
	}, nil
}
