package desk

import (
	"html/template"
	"net/http"
	"net/url"
	"strconv"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/unit"
)

// arenaPage is one arena with one of its holes picked: the place where holes are
// planned.
type arenaPage struct {
	frame
	liveView
	Survey   plan.Survey
	Size     string
	Version  shelfVersion
	Revision string
	RuleSets []string
	Notes    []string
	Systems  []option
	Map      template.HTML
	Strip    template.HTML
	Frames   frames
	Rules    []ruleRow // every rule over the whole arena
	Places   []placeOption
	Tour     []tourStep
	Message  string // why what was asked could not be done; ""
	Edits    bool   // the visitor may change this version
	Step     string // how far an arrow moves a hole: "1 in"
	StepM    string // the same in metres
	Way      string // which of the arena's pages this is
}

// shelfVersion is which version is shown, and where undo and redo lead.
type shelfVersion struct {
	Number, Head int
	Undo, Redo   int // versions to put on top; 0 for none
	What, Who    string
}

// Old reports whether a newer version is there.
func (v shelfVersion) Old() bool { return v.Number < v.Head }

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

func (d *Desk) arenaPage(w http.ResponseWriter, r *http.Request) {
	d.showArena(w, r, http.StatusOK, r.PathValue("slug"), r.URL.Query(), "")
}

// showArena shows an arena's page in the state of a query, with a message where
// something could not be done.
func (d *Desk) showArena(w http.ResponseWriter, r *http.Request, status int, slug string, q url.Values, message string) {
	o, ok := d.open(w, r, slug, q)
	if !ok {
		return
	}
	if o.at.hole != "" && !o.has(o.at.hole) {
		if message == "" {
			d.fail(w, r, http.StatusNotFound, "This arena has no hole of that name.", "Open the arena and pick a hole on its map.")
			return
		}
		o.at.hole = ""
	}
	page, err := d.arenaView(r, o)
	if err != nil {
		d.broken(w, r, err)
		return
	}
	page.Message = message
	d.show(w, r, status, "arena.tmpl", page)
}

// has reports whether the arena has a hole, working or turned off.
func (o opened) has(id string) bool {
	_, ok := o.plan.Hole(id)
	return ok || o.plan.IsOff(id)
}

func (d *Desk) arenaView(r *http.Request, o opened) (arenaPage, error) {
	p, at := o.plan, o.at
	if at.hole == "" && len(p.Holes) > 0 {
		at.hole = p.Holes[0].ID
	}
	sys := at.units(p.Survey.System())
	live, err := d.live(o.Book, o.Arena, p, at)
	if err != nil {
		return arenaPage{}, err
	}
	page := arenaPage{
		frame: d.frame(r, p.Survey.Name), liveView: live, Survey: p.Survey, Size: p.Survey.Size(sys),
		Revision: p.Revision, RuleSets: p.RuleSets, Notes: p.Notes, Rules: viewRules(p.Findings, sys),
		Version: shelfVersion{Number: o.Version.Number, Head: o.Document.Head, What: o.Version.What, Who: o.Version.Who},
		Step:    nudgeStep(sys).Format(sys), StepM: strconv.FormatFloat(nudgeStep(sys).Metres(), 'f', -1, 64), Way: "plan",
	}
	page.Edits = page.Plans && !page.Version.Old()
	page.Tour = tourFor(r, page.Edits)
	if page.Edits {
		if page.Version.Undo, page.Version.Redo, err = d.shelf.Steps(r.Context(), o.Document.ID); err != nil {
			return arenaPage{}, err
		}
		page.Places = placesFor(live.arena, live.now)
	}
	for _, name := range []unit.System{unit.Metric, unit.Imperial} {
		to := at
		to.system = name.String()
		page.Systems = append(page.Systems, option{name.String(), to.URL(), name == sys})
	}
	page.Map, page.Strip, page.Frames = drawings(live)
	return page, nil
}
