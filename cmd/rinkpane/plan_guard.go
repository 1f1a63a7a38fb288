package main

import (
	"bytes"
	"encoding/json"
	"fmt"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// planGuard assesses what comes through the holes when their covers are out, and
// returns it with its files. An arena whose shots cannot be modelled has none,
// which is said; the rest of the plan stands without it.
func planGuard(a *app, doc *arena.Document, sys unit.System) ([]guardJSON, []plan.File, error) {
	ar, err := doc.Check()
	if err != nil {
		return nil, nil, err
	}
	ar.Units = sys
	guards, err := puck.Assess(ar, puck.DefaultOptions())
	if err != nil {
		fmt.Fprintf(a.err, "no guard of the holes: %v\n", err)
		return nil, nil, nil
	}
	if len(guards) == 0 {
		return []guardJSON{}, nil, nil
	}
	var text, data bytes.Buffer
	writeGuards(&text, ar, guards)
	enc := json.NewEncoder(&data)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	found := guardsJSON(guards, sys)
	if err := enc.Encode(found); err != nil {
		return nil, nil, fmt.Errorf("guard as JSON: %w", err)
	}
	sectors, picked := sectorsOf(guards)
	return found, []plan.File{
		{Name: "guard-map.svg", Data: sheet.SVG(chart.GuardMap(ar, sectors, picked, mapWidthMM))},
		{Name: "guard.txt", Data: text.Bytes()},
		{Name: "guard.json", Data: data.Bytes()},
	}, nil
}
