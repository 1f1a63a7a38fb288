// Package folder answers: which files is a plan handed over in?
//
// [Files] makes every file of the folder from one plan: drawings, tables and
// results for programs. The command writes them, the desk packs them, and both
// are the same to the byte for the same document, kit, rules and units:
//
//	plan.Plan --+-- chart, sheet --> plan-map.svg boards-strip.svg guard-map.svg choice-map.svg choice-cost.svg
//	            +-- words        --> summary.txt holes.txt findings.txt fit.txt light.txt ...
//	            '-- wire         --> plan.json guard.json choice.json
//
// It adds nothing to what the plan says.
package folder

import (
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// File is one file of a folder.
type File struct {
	Name string
	Data []byte
	Lack sheet.Lack // letters that a drawing's fonts do not hold
}

func drawing(name string, d *sheet.Drawing) File { return File{name, sheet.SVG(d), d.Lacking()} }

func text(name, words string) File { return File{Name: name, Data: []byte(words)} }

// LookFirst says which files of the folder to open first.
const LookFirst = "Look first at plan-map.svg (open it in a browser), then at boards-strip.svg and summary.txt.\n"

// Sizes of the folder's drawings.
const (
	mapWidth  = 400.0 // mm: an A3 sheet across
	stripRows = 4     // one for each corner
	plotWide  = 180.0 // mm: a plot of value against cost
	plotHigh  = 110.0
)

// Files returns the folder of a plan in a system's units: what to look at first
// comes first.
func Files(p plan.Plan, sys unit.System) ([]File, error) {
	drawn := chart.OfPlan(p, sys, "")
	out := []File{
		drawing("plan-map.svg", chart.PlanMap(drawn, mapWidth)),
		drawing("boards-strip.svg", chart.BoardsStrip(drawn, mapWidth, stripRows)),
		text("summary.txt", words.Summary(p, sys)+"\n"+words.Cautions()),
		text("holes.txt", words.HolesText(p, sys)),
		text("findings.txt", words.FindingsText(p, sys)),
		text("fit.txt", words.FitText(p, sys)),
		text("light.txt", words.LightText(p, sys)),
	}
	whole := wire.PlanOf(p, sys)
	results := []struct {
		name string
		of   any
	}{{"plan.json", whole}}
	if c := p.Choice; c != nil {
		out = append(out,
			drawing("choice-map.svg", chart.PlanMap(chart.OfChoice(*c, 0, sys), mapWidth)),
			text("choice.txt", words.Choice(*c, sys)))
		if len(c.Frontier) > 1 {
			out = append(out, drawing("choice-cost.svg", chart.Frontier(*c).Draw(plotWide, plotHigh)))
		}
		results = append(results, struct {
			name string
			of   any
		}{"choice.json", whole.Choice})
	}
	if len(p.Guards) > 0 {
		out = append(out,
			drawing("guard-map.svg", chart.GuardMap(drawn.Arena, p.Guards, "", mapWidth)),
			text("guard.txt", words.GuardsText(p.Arena.Name, p.Guards, sys)))
		results = append(results, struct {
			name string
			of   any
		}{"guard.json", whole.Guard})
	}
	for _, r := range results {
		data, err := wire.JSON(r.of)
		if err != nil {
			return nil, err
		}
		out = append(out, File{Name: r.name, Data: data})
	}
	return out, nil
}
