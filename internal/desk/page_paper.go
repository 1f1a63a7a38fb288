package desk

import (
	"html/template"
	"net/http"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/chart"
)

// paperPage is a whole plan laid out for printing.
type paperPage struct {
	frame
	Way      string // which of the arena's pages this is
	Address  address
	Survey   plan.Survey
	Size     string
	Verdict  rules.Status
	Words    string
	RuleSets []string
	Notes    []string
	Version  int
	Revision string
	Map      template.HTML
	Strip    template.HTML
	Findings findingsView
	Rules    []ruleRow
	Holes    []holeView
}

// Sizes of the drawings on paper, in millimetres: an A4 sheet less its margins,
// and the boards in four rows, a corner each.
const (
	paperWidth = 186.0
	paperRows  = 4
)

func (d *Desk) paperPage(w http.ResponseWriter, r *http.Request) {
	o, ok := d.open(w, r, r.PathValue("slug"), r.URL.Query())
	if !ok {
		return
	}
	p := o.plan
	sys := o.at.units(p.Survey.System())
	page := paperPage{
		Way: "paper", frame: d.frame(r, p.Survey.Name+" on paper"), Address: o.at, Survey: p.Survey, Size: p.Survey.Size(sys),
		Verdict: p.Verdict, Words: plan.VerdictWords(p.Findings), RuleSets: p.RuleSets, Notes: p.Notes,
		Version: o.Version.Number, Revision: p.Revision,
		Findings: viewFindings(p.Findings, "", sys), Rules: viewRules(p.Findings, sys),
	}
	c := p.Chart(sys, "")
	page.Map = inline(chart.PlanMap(c, paperWidth), o.at)
	page.Strip = inline(chart.BoardsStrip(c, paperWidth, paperRows), o.at)
	for _, h := range p.Holes {
		at := o.at.Hole(h.ID)
		live, err := d.live(o.Book, o.Arena, p, at)
		if err != nil {
			d.broken(w, r, err)
			return
		}
		page.Findings = live.Findings
		if live.Picked != nil {
			page.Holes = append(page.Holes, *live.Picked)
		}
	}
	d.show(w, r, http.StatusOK, "paper.tmpl", page)
}
