package desk

import (
	"fmt"
	"html/template"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/compare"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/unit"
)

// comparePage shows two plans side by side, with what differs between them.
type comparePage struct {
	frame
	Way      string // which of the arena's pages this is
	Address  address
	Sides    [2]side
	Versions []choiceView // to choose a side from; Value is "id@number"
	Summary  string
	SameRink bool
	Holes    []changeRow
	Rules    []ruleChange
}

// side is one of the two plans.
type side struct {
	Name    string // of the field: "left", "right"
	Ref     string // "id@number"
	Title   string
	Verdict rules.Status
	Words   string
	Map     template.HTML
	URL     string
	Choices []choiceView
}

// changeRow is a hole that differs.
type changeRow struct {
	ID, Kind string
	Words    []string
}

// ruleChange is a rule whose answer differs.
type ruleChange struct {
	Rule, Before, After string
	Status              rules.Status // after
}

// comparePage compares two versions of one arena, or of two; without a choice
// the newest version with the one before it.
func (d *Desk) comparePage(w http.ResponseWriter, r *http.Request) {
	at, err := readAddress(r.PathValue("slug"), r.URL.Query())
	if err != nil {
		d.fail(w, r, http.StatusBadRequest, "This address leads nowhere.", sentenceOf(err))
		return
	}
	head, ok := d.book(w, r, at.slug, 0)
	if !ok {
		return
	}
	page := comparePage{Way: "compare", frame: d.frame(r, "Compare plans of "+head.Document.Name), Address: at}
	left := fmt.Sprintf("%s@%d", at.slug, max(head.Document.Head-1, 1))
	right := fmt.Sprintf("%s@%d", at.slug, head.Document.Head)
	if given := r.URL.Query().Get("left"); given != "" {
		left = given
	}
	if given := r.URL.Query().Get("right"); given != "" {
		right = given
	}
	var plans [2]plan.Plan
	for i, ref := range []string{left, right} {
		o, ok := d.open(w, r, refSlug(ref), refQuery(ref))
		if !ok {
			return
		}
		plans[i] = o.plan
		page.Sides[i] = viewSide(o, [2]string{"left", "right"}[i], at)
	}
	choices, err := d.versionChoices(r, at.slug)
	if err != nil {
		d.broken(w, r, err)
		return
	}
	for i := range page.Sides {
		page.Sides[i].Choices = marked(choices, page.Sides[i].Ref, page.Sides[i].Title)
	}
	page.fill(compare.Plans(plans[0], plans[1]), at.units(plans[1].Survey.System()))
	d.show(w, r, http.StatusOK, "compare.tmpl", page)
}

// refSlug and refQuery take "id@number" apart.
func refSlug(ref string) string {
	slug, _, _ := strings.Cut(ref, "@")
	return slug
}

func refQuery(ref string) url.Values {
	_, number, _ := strings.Cut(ref, "@")
	return url.Values{"version": {number}}
}

func viewSide(o opened, name string, at address) side {
	sys := at.units(o.plan.Survey.System())
	c := o.plan.Chart(sys, "")
	c.Bare = true
	to := address{slug: o.Document.ID, version: o.Version.Number, system: at.system, theme: at.theme}
	return side{
		Name: name, Ref: o.Document.ID + "@" + strconv.Itoa(o.Version.Number),
		Title:   fmt.Sprintf("%s, version %d", o.Document.Name, o.Version.Number),
		Verdict: o.plan.Verdict, Words: plan.VerdictWords(o.plan.Findings), URL: to.URL(),
		Map: inline(chart.PlanMap(c, mapWidth), to),
	}
}

// mostListed is how many versions of the arena can be chosen from.
const mostListed = 60

// versionChoices lists the arena's versions, then the newest of every other.
func (d *Desk) versionChoices(r *http.Request, slug string) ([]choiceView, error) {
	history, err := d.shelf.Keeper().History(r.Context(), slug, mostListed)
	if err != nil {
		return nil, err
	}
	var out []choiceView
	for _, v := range history {
		out = append(out, choiceView{Value: fmt.Sprintf("%s@%d", slug, v.Number), Label: choiceLabel(v)})
	}
	docs, err := d.shelf.Keeper().Documents(r.Context(), false)
	if err != nil {
		return nil, err
	}
	for _, doc := range docs {
		if doc.ID != slug {
			out = append(out, choiceView{Value: fmt.Sprintf("%s@%d", doc.ID, doc.Head), Label: fmt.Sprintf("%s, version %d", doc.Name, doc.Head)})
		}
	}
	return out, nil
}

func choiceLabel(v revision.Version) string {
	return shortened(fmt.Sprintf("version %d: %s", v.Number, v.What))
}

// marked returns the choices with one of them chosen, added when it is missing.
func marked(all []choiceView, ref, title string) []choiceView {
	out := make([]choiceView, 0, len(all)+1)
	found := false
	for _, c := range all {
		c.Chosen = c.Value == ref
		found = found || c.Chosen
		out = append(out, c)
	}
	if !found {
		out = append(out, choiceView{ref, title, true})
	}
	return out
}

func (p *comparePage) fill(c compare.Comparison, sys unit.System) {
	p.Summary, p.SameRink = c.Summary(), c.SameRink
	for _, h := range c.Holes {
		if h.Kind != compare.Same {
			p.Holes = append(p.Holes, changeRow{h.ID, string(h.Kind), h.Words(sys)})
		}
	}
	for _, r := range c.Rules {
		p.Rules = append(p.Rules, ruleChange{r.Rule, compare.StatusWords(r.Before), compare.StatusWords(r.After), r.After})
	}
}
