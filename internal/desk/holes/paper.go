package holes

import (
	"html/template"
	"net/http"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/tell/words"
)

// paperPage is a whole plan laid out for printing.
type paperPage struct {
	shell.Frame
	Way      string // which of the arena's pages this is
	Address  shell.Address
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

func (d area) paperPage(w http.ResponseWriter, r *http.Request) error {
	o, err := d.Open(r, r.PathValue("slug"), r.URL.Query())
	if err != nil {
		return err
	}
	p := o.Plan
	sys := o.At.Units(p.Survey.Units)
	page := paperPage{
		Way: "paper", Frame: d.Frame(r, p.Survey.Name+" on paper"), Address: o.At, Survey: p.Survey, Size: words.Size(p.Survey, sys),
		Verdict: p.Verdict, Words: words.Verdict(p.Findings), RuleSets: p.RuleSets, Notes: append(p.Notes[:len(p.Notes):len(p.Notes)], say.All(p.Remarks, sys)...),
		Version: o.Version.Number, Revision: p.Revision,
		Findings: viewFindings(p.Findings, "", sys), Rules: viewRules(p.Findings, sys),
	}
	c := chart.OfPlan(p, sys, "")
	page.Map = shell.Inline(chart.PlanMap(c, paperWidth), o.At)
	page.Strip = shell.Inline(chart.BoardsStrip(c, paperWidth, paperRows), o.At)
	for _, h := range p.Holes {
		at := o.At.Pick(h.ID)
		live, err := d.live(o.Book, o.Arena, p, at)
		if err != nil {
			return err
		}
		page.Findings = live.Findings
		if live.Picked != nil {
			page.Holes = append(page.Holes, *live.Picked)
		}
	}
	return d.Page(w, r, http.StatusOK, "paper.tmpl", page)
}
