package main

import (
	"fmt"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/tell/wire"
)

// everyTable is what --csv stands for without a name.
const everyTable = "all"

// printCSV writes an answer's tables one after another with a blank line
// between them, or the one asked for.
func (a *app) printCSV(v any) error {
	tables, err := wire.Tables(v)
	if err != nil {
		return err
	}
	var names []string
	found := a.csv == everyTable
	for _, t := range tables {
		names = append(names, t.Title)
		if a.csv != everyTable && a.csv != t.Title {
			continue
		}
		if found = true; a.out.Len() > 0 {
			fmt.Fprintln(a.out)
		}
		if err := t.CSV(a.out); err != nil {
			return err
		}
	}
	if !found {
		return fmt.Errorf("--csv=%s: the answer has no such table; write %s, or --csv alone for all", a.csv, form.Choices(names))
	}
	return nil
}
