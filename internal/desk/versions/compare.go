package versions

import (
	"cmp"
	"fmt"
	"html/template"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/compare"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/words"
)

// comparePage shows two plans side by side, with what differs between them.
type comparePage struct {
	shell.Frame
	Way      string // which of the arena's pages this is
	Address  shell.Address
	Sides    [2]side
	Versions []shell.Choice // to choose a side from; Value is "id@number"
	Numbers  []numberRow
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
	Choices []shell.Choice
}

// numberRow is one of the three numbers that a comparison begins with.
type numberRow struct{ Name, Before, After, Note string }

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
func (d area) comparePage(w http.ResponseWriter, r *http.Request) error {
	head, at, err := d.Newest(r)
	if err != nil {
		return err
	}
	page := comparePage{Way: "compare", Frame: d.Frame(r, "Compare plans of "+head.Document.Name), Address: at}
	choices, err := d.versionChoices(r, at.Slug)
	if err != nil {
		return err
	}
	var plans [2]plan.Plan
	var kits [2]kit.Kit
	for i, name := range [2]string{"left", "right"} {
		usual := fmt.Sprintf("%s@%d", at.Slug, max(head.Document.Head-1+i, 1))
		slug, number, _ := strings.Cut(cmp.Or(r.URL.Query().Get(name), usual), "@")
		o, err := d.Open(r, slug, url.Values{"version": {number}})
		if err != nil {
			return err
		}
		plans[i], kits[i] = o.Plan, o.Maker.Kit
		page.Sides[i] = viewSide(o, name, at)
		page.Sides[i].Choices = marked(choices, page.Sides[i].Ref, page.Sides[i].Title)
	}
	if page.Numbers, err = numbers(r.Context(), plans, kits); err != nil {
		return err
	}
	page.fill(compare.Plans(plans[0], plans[1]), at.Units(plans[1].Survey.Units))
	return d.Page(w, r, http.StatusOK, "compare.tmpl", page)
}

func viewSide(o shell.Opened, name string, at shell.Address) side {
	sys := at.Units(o.Plan.Survey.Units)
	c := chart.OfPlan(o.Plan, sys, "")
	c.Bare = true
	to := shell.Address{Slug: o.Document.ID, Version: o.Version.Number, System: at.System, Theme: at.Theme}
	return side{
		Name: name, Ref: o.Document.ID + "@" + strconv.Itoa(o.Version.Number),
		Title:   fmt.Sprintf("%s, version %d", o.Document.Name, o.Version.Number),
		Verdict: o.Plan.Verdict, Words: words.Verdict(o.Plan.Findings), URL: to.URL(),
		Map: shell.Inline(chart.PlanMap(c, shell.MapWidth), to),
	}
}

// mostListed is how many versions of the arena can be chosen from.
const mostListed = 60

// versionChoices lists the arena's versions, then the newest of every other.
func (d area) versionChoices(r *http.Request, slug string) ([]shell.Choice, error) {
	history, err := d.Shelf.Keeper().History(r.Context(), slug, mostListed)
	if err != nil {
		return nil, err
	}
	var out []shell.Choice
	for _, v := range history {
		out = append(out, shell.Choice{Value: fmt.Sprintf("%s@%d", slug, v.Number), Name: choiceLabel(v)})
	}
	docs, err := d.Shelf.Keeper().Documents(r.Context(), revision.Arena, false)
	if err != nil {
		return nil, err
	}
	named := map[string]int{}
	for _, doc := range docs {
		named[doc.Name]++
	}
	for _, doc := range docs {
		if doc.ID == slug {
			continue
		}
		name := doc.Name
		if named[name] > 1 { // told apart by their addresses
			name += " (" + doc.ID + ")"
		}
		out = append(out, shell.Choice{Value: fmt.Sprintf("%s@%d", doc.ID, doc.Head), Name: fmt.Sprintf("%s, version %d", name, doc.Head)})
	}
	return out, nil
}

func choiceLabel(v revision.Version) string {
	return shell.CutShort(fmt.Sprintf("version %d: %s", v.Number, v.What), longestWhat)
}

// marked returns the choices with one of them chosen, added when it is missing.
func marked(all []shell.Choice, ref, title string) []shell.Choice {
	out := make([]shell.Choice, 0, len(all)+1)
	found := false
	for _, c := range all {
		c.Chosen = c.Value == ref
		found = found || c.Chosen
		out = append(out, c)
	}
	if !found {
		out = append(out, shell.Choice{Value: ref, Name: title, Chosen: true})
	}
	return out
}

func (p *comparePage) fill(c compare.Comparison, sys unit.System) {
	p.Summary, p.SameRink = words.Compared(c), c.SameRink
	for _, h := range c.Holes {
		if h.Kind != compare.Same {
			p.Holes = append(p.Holes, changeRow{h.ID, string(h.Kind), words.Became(h, sys)})
		}
	}
	for _, r := range c.Rules {
		p.Rules = append(p.Rules, ruleChange{r.Rule, words.Status(r.Before), words.Status(r.After), r.After})
	}
}
