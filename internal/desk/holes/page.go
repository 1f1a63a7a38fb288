package holes

import (
	"html/template"
	"net/http"
	"net/url"
	"strconv"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/words"
)

// arenaPage is one arena with one of its holes picked: the place where holes are
// planned.
type arenaPage struct {
	shell.Frame
	liveView
	Survey   plan.Survey
	Size     string
	Version  shelfVersion
	Exact    exactPlace   // of the picked hole, to be typed anew
	Guard    []shell.Fact // what comes through the picked hole while its cover is out
	Revision string
	RuleSets []string
	Notes    []string
	Systems  []shell.Option
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
	shelf.Steps
	Number, Head int
	What, Who    string
}

// Old reports whether a newer version is there.
func (v shelfVersion) Old() bool { return v.Number < v.Head }

// peekSide is the longer side of the small picture beside the map, in pixels.
const peekSide = 272

// pictureURLs lead to the view through a hole with a lens, and to a small picture of
// it; "" where the lens does not go in.
func pictureURLs(at shell.Address, hole string, f plan.LensFit) (page, peek string) {
	if !f.Fits {
		return "", ""
	}
	q := url.Values{"hole": {hole}, "lens": {f.Lens.ID}, "focal": {strconv.FormatFloat(f.Focal.Millimetres(), 'f', -1, 64)}}
	if at.System != "" {
		q.Set("units", at.System)
	}
	below := "/arena/" + at.Slug + "/picture"
	page = below + "?" + q.Encode()
	q.Set("side", strconv.Itoa(peekSide))
	return page, below + ".jpg?" + q.Encode()
}

func (d area) arenaPage(w http.ResponseWriter, r *http.Request) error {
	return d.showArena(w, r, http.StatusOK, r.PathValue("slug"), r.URL.Query(), "")
}

// errNoHole answers an address that picks a hole that is not there.
var errNoHole = shell.Refuse(http.StatusNotFound, "This arena has no hole of that name.", "Open the arena and pick a hole on its map.")

// showArena shows an arena's page in the state of a query, with a message where
// something could not be done.
func (d area) showArena(w http.ResponseWriter, r *http.Request, status int, slug string, q url.Values, message string) error {
	o, err := d.Open(r, slug, q)
	if err != nil {
		return err
	}
	if o.At.Hole != "" && !has(o.Plan, o.At.Hole) {
		if message == "" {
			return errNoHole
		}
		o.At.Hole = ""
	}
	page, err := d.arenaView(r, o)
	if err != nil {
		return err
	}
	page.Message = message
	return d.Page(w, r, status, "arena.tmpl", page)
}

// has reports whether the arena has a hole, working or turned off.
func has(p plan.Plan, id string) bool {
	_, ok := p.Hole(id)
	return ok || p.IsOff(id)
}

func (d area) arenaView(r *http.Request, o shell.Opened) (arenaPage, error) {
	p, at := o.Plan, o.At
	if at.Hole == "" && !at.Bare {
		at.Hole = firstPicked(p)
	}
	sys := at.Units(p.Survey.Units)
	live, err := d.live(o.Book, o.Arena, p, at)
	if err != nil {
		return arenaPage{}, err
	}
	page := arenaPage{
		Frame: d.Frame(r, p.Survey.Name), liveView: live, Survey: p.Survey, Size: words.Size(p.Survey, sys),
		Revision: p.Revision, RuleSets: p.RuleSets, Notes: append(p.Notes[:len(p.Notes):len(p.Notes)], say.All(p.Remarks, sys)...), Rules: viewRules(p.Findings, sys),
		Version: shelfVersion{Number: o.Version.Number, Head: o.Document.Head, What: o.Version.What, Who: o.Version.Who},
		Step:    nudgeStep(sys).Format(sys), StepM: strconv.FormatFloat(nudgeStep(sys).Metres(), 'f', -1, 64), Way: "plan",
	}
	page.Edits = page.Plans && !page.Version.Old()
	page.Tour = tourFor(r, page.Edits)
	if page.Edits {
		if page.Version.Steps, err = d.Shelf.Steps(r.Context(), o.Document.ID); err != nil {
			return arenaPage{}, err
		}
		page.Places = placesFor(live.arena, live.now)
	}
	for _, name := range []unit.System{unit.Metric, unit.Imperial} {
		to := at
		to.System = name.String()
		page.Systems = append(page.Systems, shell.Option{Name: name.String(), URL: to.URL(), Chosen: name == sys})
	}
	if h, ok := live.arena.Hole(at.Hole); ok {
		page.Exact = exactOf(live.arena, h)
		if page.Guard, err = guardOf(r.Context(), live.arena, h); err != nil {
			return arenaPage{}, err
		}
	}
	page.Map, page.Strip, page.Frames = drawings(live)
	return page, nil
}

// firstPicked is the hole that a page opens with: one that breaks a rule, else one
// that the survey lacks a number of, else the first; "" without any.
func firstPicked(p plan.Plan) string {
	for _, want := range rules.WorstFirst() {
		for _, h := range p.Holes {
			if h.Status == want {
				return h.ID
			}
		}
	}
	return ""
}
