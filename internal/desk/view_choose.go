package desk

import (
	"context"
	"errors"
	"fmt"
	"html/template"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// choosePage is the choice of holes: the form, then its progress, then its answer.
type choosePage struct {
	frame
	Slug, Arena string
	Address     address
	Problem     string // what is wrong with the form
	Wishes      wishes
	Holes       []holeWish
	RuleSets    []choice
	FormMap     template.HTML
	Job         string
	Running     bool
	News        news
	Gone        string // why there is no answer
	Answer      *answerView
}

// holeWish is what is wished for one hole of the arena.
type holeWish struct{ ID, Where, Wish string }

// answerView is a choice's answer.
type answerView struct {
	Words, Took string
	Map         template.HTML
	Sets        []setView // the best and its alternatives
	Shown       int
	Value       string
	Rows        []chosenRow
	Prices      []priceRow
	Standings   []fact
	Clash       []string
	Excluded    []fact
	Stale       bool // somebody saved since
	Version     int
	CanAccept   bool
	News        int // places of the set that are new
	Left        []string
}

type setView struct {
	Name, URL, Value, Lost string
	Chosen                 bool
}

type chosenRow struct {
	ID, Pane, State, Where, Height, Worth, Loss, Best, Why string
	New                                                    bool
}

type priceRow struct{ Rule, Gain, Holes string }

// Again returns the page's own address.
func (p choosePage) Again() string { return p.Address.Beside("/choose", "job", p.Job) }

// To returns where the job is told something: "cancel", "accept".
func (p choosePage) To(what string) string { return p.Address.Beside("/choose/" + p.Job + "/" + what) }

// showChoice answers GET /arena/{slug}/choose.
func (d *Desk) showChoice(w http.ResponseWriter, r *http.Request) {
	b, at, ok := d.choiceAt(w, r)
	if !ok {
		return
	}
	var j *choiceJob
	form := usualWishes(d.shelf.Maker().Rules)
	if id := r.FormValue("job"); id != "" {
		found, ok := d.choices.get(id, b.Document.ID)
		if !ok {
			d.fail(w, r, http.StatusNotFound, "This choice is no longer kept.", "Open the arena and choose again.")
			return
		}
		j, form = found, found.wishes
		defer j.Watch()()
	}
	d.choicePage(w, r, b, at, j, form, "")
}

func (d *Desk) choicePage(w http.ResponseWriter, r *http.Request, b shelf.Book, at address, j *choiceJob, form wishes, problem string) {
	a, err := b.Arena.Check()
	if err != nil {
		d.broken(w, r, err)
		return
	}
	a.Units = at.Units(a.Units)
	if form.Step == "" {
		form.Step = usualStep(a.Units)
	}
	page := choosePage{
		frame: d.frame(r, "Choose holes"), Address: at, Slug: b.Document.ID, Arena: a.Name,
		Problem: problem, Wishes: form,
	}
	status := http.StatusOK
	if problem != "" {
		status = http.StatusUnprocessableEntity
	}
	d.fillWishes(&page, a)
	if j != nil {
		page.Job = j.ID
		reports, _ := j.Reports()
		page.News = newsOf(reports)
		page.Running = !j.Ended()
		if !page.Running {
			d.fillAnswer(r, &page, b, j)
		}
	}
	d.show(w, r, status, "choose.tmpl", page)
}

func (d *Desk) fillWishes(p *choosePage, a arena.Arena) {
	for _, h := range a.Working() {
		wish := holeWish{h.ID, h.Station.Format(a.Units), "free"}
		if slices.Contains(p.Wishes.Keep, h.ID) {
			wish.Wish = "keep"
		}
		if slices.Contains(p.Wishes.Forbid, h.ID) {
			wish.Wish = "forbid"
		}
		p.Holes = append(p.Holes, wish)
	}
	seen := map[string]bool{}
	for _, s := range d.shelf.Maker().Rules {
		seen[s.ID] = true
		p.RuleSets = append(p.RuleSets, choice{s.ID, s.Name, slices.Contains(p.Wishes.Rules, s.ID)})
	}
	for _, id := range rules.Names() {
		if s, err := rules.Shipped(id); err == nil && !seen[id] {
			p.RuleSets = append(p.RuleSets, choice{id, s.Name, slices.Contains(p.Wishes.Rules, id)})
		}
	}
	bare := chart.Plan{Arena: a, Bare: true}
	p.FormMap = template.HTML(sheet.InlineSVG(chart.PlanMap(bare, mapWidth)))
}

func (d *Desk) fillAnswer(r *http.Request, p *choosePage, b shelf.Book, j *choiceJob) {
	c, err := j.Outcome()
	switch {
	case errors.Is(err, context.Canceled):
		p.Gone = "Given up before any set of holes was found."
		return
	case err != nil:
		p.Problem = err.Error()
		return
	}
	shown, _ := strconv.Atoi(r.FormValue("set"))
	if shown < 0 || shown > len(c.answer.Alternatives) {
		shown = 0
	}
	c.arena.Units = p.Address.Units(c.arena.Units)
	v := c.view(shown, p.Address, j.ID)
	v.Version = j.version
	v.Stale = b.Document.Head != j.version
	v.CanAccept = p.Plans && !v.Stale && len(v.Rows) > 0
	p.Answer = v
}

// shownSet returns the holes of one of the sets: the best for 0.
func (c chosen) shownSet(n int) []choose.Choice {
	if n == 0 {
		return c.answer.Holes
	}
	var out []choose.Choice
	for _, p := range c.answer.Alternatives[n-1].Holes {
		out = append(out, choose.Choice{Place: p})
	}
	return out
}

// priceRows tells what each constraint costs, as a range where the search for
// it was cut short.
func priceRows(a choose.Answer) []priceRow {
	var rows []priceRow
	for _, p := range a.Prices {
		gain := fmt.Sprintf("%.4f", p.Gain)
		if p.Bound-p.Value > 10*choose.Tolerance {
			gain += fmt.Sprintf(" to %.4f", max(0, p.Bound-a.Value))
		}
		rows = append(rows, priceRow{p.Rule, gain, fmt.Sprint(len(p.Holes))})
	}
	return rows
}

// answerWords says in a sentence or two how a search ended.
func answerWords(a choose.Answer) string {
	switch {
	case len(a.Holes) == 0 && a.Status == choose.Infeasible:
		return "No set of holes keeps the rules and wishes."
	case len(a.Holes) == 0 && a.Status == choose.Optimal:
		return "The best set is empty: what is forbidden leaves no place that sees anything."
	case len(a.Holes) == 0:
		return "Stopped before a set of holes was found."
	case a.Status != choose.Optimal:
		return fmt.Sprintf("The best %s so far; none is worth more than %.4f, a gap of %.2f %%.", plan.Count(len(a.Holes), "hole"), a.Bound, 100*a.Gap)
	}
	words := fmt.Sprintf("The best %s, and proved: no legal set is worth more than %.4f.", plan.Count(len(a.Holes), "hole"), a.Bound)
	if len(a.Unfinished) > 0 {
		words += fmt.Sprintf(" Stopped before these were complete: %s.", strings.Join(a.Unfinished, ", "))
	}
	return words
}

func (c chosen) view(shown int, at address, job string) *answerView {
	a := c.answer
	v := &answerView{Shown: shown, Took: fmt.Sprintf("%.1f s, %d places, %d moments, seed %d", a.Seconds, a.Candidates, a.Moments, a.Seed)}
	v.Words = answerWords(a)
	v.Clash = a.Clash
	v.sets(a, shown, at, job)
	sys := c.arena.Units
	chosenIDs := map[string]bool{}
	for _, h := range c.shownSet(shown) {
		chosenIDs[h.ID] = true
		row := chosenRow{
			ID: h.ID, Pane: h.Pane, State: h.State, Where: unit.Length(h.Station).Format(sys), Height: unit.Length(h.Height).Format(sys),
			New: h.State == "new", Why: h.Why, Worth: "-", Loss: "-", Best: "-",
		}
		if shown == 0 {
			row.Worth, row.Best = fmt.Sprintf("%.4f", h.Worth), fmt.Sprintf("%.0f %%", 100*h.Best)
			if h.Loss != nil {
				row.Loss = fmt.Sprintf("%.4f", *h.Loss)
			}
		}
		if row.New {
			v.News++
		}
		v.Rows = append(v.Rows, row)
	}
	for _, h := range c.arena.Working() {
		if !chosenIDs[h.ID] {
			v.Left = append(v.Left, h.ID)
		}
	}
	v.Prices = priceRows(a)
	v.Standings = []fact{
		{"Holes cut today", fmt.Sprintf("%.4f with %s", a.Today.Value, plan.Count(len(a.Today.Holes), "hole"))},
		{"As drawn", fmt.Sprintf("%.4f with %s", a.Drawn.Value, plan.Count(len(a.Drawn.Holes), "hole"))},
		{"Best", fmt.Sprintf("%.4f", a.Value)},
	}
	v.Map = c.mapOf(shown, sys)
	return v
}

func (v *answerView) sets(a choose.Answer, shown int, at address, job string) {
	if len(a.Holes) == 0 {
		return
	}
	link := func(n int) string { return at.Beside("/choose", "job", job, "set", strconv.Itoa(n)) }
	v.Sets = append(v.Sets, setView{"Best", link(0), fmt.Sprintf("%.4f", a.Value), "", shown == 0})
	for i, alt := range a.Alternatives {
		v.Sets = append(v.Sets, setView{fmt.Sprintf("Next best %d", i+1), link(i + 1), fmt.Sprintf("%.4f", alt.Value),
			fmt.Sprintf("%.4f less", alt.Lost), shown == i+1})
	}
}

// mapOf draws a set over the plan map, with the places that other sets use
// instead.
func (c chosen) mapOf(shown int, sys unit.System) template.HTML {
	if len(c.answer.Holes) == 0 {
		return ""
	}
	look := c.answer
	look.Holes = c.shownSet(shown)
	look.Alternatives = nil
	for n := range len(c.answer.Alternatives) + 1 {
		if n == shown {
			continue
		}
		var places []choose.Place
		for _, h := range c.shownSet(n) {
			places = append(places, h.Place)
		}
		look.Alternatives = append(look.Alternatives, choose.Option{Holes: places})
	}
	drawn, err := c.maker.Chosen(c.arena, c.study, look)
	if err != nil {
		return ""
	}
	p := drawn.Chart(sys)
	p.Bare = true
	if shown != 0 {
		p.Notes = nil
	}
	return template.HTML(sheet.InlineSVG(chart.PlanMap(p, mapWidth)))
}
