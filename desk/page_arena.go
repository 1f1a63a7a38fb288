package desk

import (
	"errors"
	"html/template"
	"net/http"
	"net/url"

	"example.org/rinkpane/plan"
	"example.org/rinkpane/revision"
	"example.org/rinkpane/rules"
	"example.org/rinkpane/unit"
)

// arenaPage is one arena with one of its holes picked.
type arenaPage struct {
	frame
	ID       string
	Number   int // of the version shown
	Address  address
	Survey   plan.Survey
	Size     string
	Verdict  rules.Status
	Words    string
	Revision string
	RuleSets []string
	Notes    []string
	Systems  []option
	Picks    []pick
	Map      template.HTML
	Strip    template.HTML
	Picked   *holeView    // nil on an arena without working holes
	Findings findingsView // those to be mended
	Rules    []ruleRow    // every rule over the whole arena
}

// address is the state that stands in a page's address.
type address struct {
	slug   string
	hole   string
	system string // "" prints in the document's own units
}

// URL returns the address as a link.
func (a address) URL() string {
	q := url.Values{}
	if a.hole != "" {
		q.Set("hole", a.hole)
	}
	if a.system != "" {
		q.Set("units", a.system)
	}
	u := url.URL{Path: "/arena/" + a.slug, RawQuery: q.Encode()}
	return u.String()
}

// Slug returns the arena's part of the address.
func (a address) Slug() string { return a.slug }

// Hole returns the address with another hole picked.
func (a address) Hole(id string) address {
	a.hole = id
	return a
}

// pictureURL leads to the view through a hole, with the lens that serves it best.
func (a address) pictureURL(h plan.Hole) string {
	q := url.Values{"hole": {h.ID}}
	if h.Best != "" {
		q.Set("lens", h.Best)
	}
	if a.system != "" {
		q.Set("units", a.system)
	}
	return "/arena/" + a.slug + "/picture?" + q.Encode()
}

// option is one of several ways to see the page.
type option struct {
	Name, URL string
	Chosen    bool
}

// pick is one hole to pick.
type pick struct {
	ID, URL, Words string
	Status         rules.Status
	Chosen         bool
}

func (d *Desk) arenaPage(w http.ResponseWriter, r *http.Request) {
	b, err := d.shelf.Open(r.Context(), r.PathValue("slug"), 0)
	switch {
	case errors.Is(err, revision.ErrNone):
		d.fail(w, r, http.StatusNotFound, "No arena has this address.", "Go back to the list of arenas and pick one.")
		return
	case err != nil:
		d.broken(w, r, err)
		return
	}
	p, err := d.shelf.Plan(b)
	if err != nil {
		d.log.Warn("desk", "arena", b.Document.ID, "error", err)
		d.fail(w, r, http.StatusUnprocessableEntity, "This arena cannot be planned.", err.Error())
		return
	}
	at := address{slug: b.Document.ID, hole: r.FormValue("hole"), system: r.FormValue("units")}
	sys := p.Survey.System()
	if at.system != "" {
		if sys, err = unit.ParseSystem(at.system); err != nil {
			d.fail(w, r, http.StatusBadRequest, "These units are not known.", "Choose metric or imperial.")
			return
		}
	}
	if at.hole != "" {
		if _, ok := p.Hole(at.hole); !ok {
			d.fail(w, r, http.StatusNotFound, "This arena has no working hole of that name.", "Open the arena and pick a hole on its map.")
			return
		}
	}
	page := d.arenaView(r, p, at, sys)
	page.ID, page.Number = b.Document.ID, b.Version.Number
	d.show(w, r, http.StatusOK, "arena.tmpl", page)
}

func (d *Desk) arenaView(r *http.Request, p plan.Plan, at address, sys unit.System) arenaPage {
	if at.hole == "" && len(p.Holes) > 0 {
		at.hole = p.Holes[0].ID
	}
	page := arenaPage{
		frame: d.frame(r, p.Survey.Name), Address: at, Survey: p.Survey, Size: p.Survey.Size(sys),
		Verdict: p.Verdict, Words: plan.VerdictWords(p.Findings), Revision: p.Revision, RuleSets: p.RuleSets, Notes: p.Notes,
		Findings: viewFindings(p.Findings, "", sys), Rules: viewRules(p.Findings, sys),
	}
	for _, name := range []unit.System{unit.Metric, unit.Imperial} {
		to := at
		to.system = name.String()
		page.Systems = append(page.Systems, option{name.String(), to.URL(), name == sys})
	}
	for _, h := range p.Holes {
		page.Picks = append(page.Picks, pick{h.ID, at.Hole(h.ID).URL(), h.Where(sys), h.Status, h.ID == at.hole})
	}
	if h, ok := p.Hole(at.hole); ok {
		view := viewHole(p, h, sys)
		view.Picture = at.pictureURL(h)
		page.Picked = &view
	}
	page.Map, page.Strip = drawings(p, at, sys)
	return page
}
