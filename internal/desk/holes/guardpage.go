package holes

import (
	"html/template"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// guardPage tells of every working hole what comes through while its cover is out, and
// what to keep clear behind it: for the rink's operator, on a screen or on paper.
type guardPage struct {
	shell.Frame
	Way     string // which of the arena's pages this is
	Address shell.Address
	Name    string
	Version int
	Mark    string
	Map     template.HTML
	Tables  []table.Table
	Notes   []string // what was assumed, and how often it happens
	LeftOut []string
	Caution []string
}

// guardWidth is the map's width, in millimetres of the drawing.
const guardWidth = 230.0

func (d area) guardPage(w http.ResponseWriter, r *http.Request) error {
	b, a, at, err := d.NewestArena(r)
	if err != nil {
		return err
	}
	guards, err := puck.Assess(r.Context(), a, puck.DefaultOptions())
	if err != nil {
		return err
	}
	a.Units = at.Units(a.Units)
	page := guardPage{
		Frame: d.Frame(r, a.Name+", the guard"), Way: "guard", Address: at.Shared(), Name: a.Name, Version: b.Version.Number, Mark: b.Mark,
		LeftOut: puck.LeftOut(), Caution: glass.Cautions(),
	}
	if len(guards) > 0 {
		page.Map = shell.Inline(chart.GuardMap(a, guards, "", guardWidth), at)
		page.Tables, page.Notes = words.GuardTables(guards, a.Units), words.GuardNotes(guards, a.Units)
	}
	for i, t := range page.Tables {
		page.Tables[i].Title = strings.ToUpper(t.Title[:1]) + t.Title[1:]
	}
	return d.Page(w, r, http.StatusOK, "guard.tmpl", page)
}
