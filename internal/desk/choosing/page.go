package choosing

import (
	"context"
	"errors"
	"fmt"
	"html/template"
	"net/http"
	"slices"
	"strconv"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// choosePage is the choice of holes: the form, then its progress, then its answer.
type choosePage struct {
	shell.Frame
	Slug, Arena string
	Address     shell.Address
	Problem     string // what is wrong with the form
	Wishes      wishes
	Holes       []holeWish
	RuleSets    []shell.Choice
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
	Heads       []table.Column
	Rows        []chosenRow
	Prices      table.Table
	Standings   []string
	Clash       []string
	Proved      string // under which rule sets
	InForce     string // what those in force say of the set, where they are others
	Stale       bool   // somebody saved since
	Version     int
	CanAccept   bool
	Left        []string
}

type setView struct {
	Name, URL, Value, Lost string
	Chosen                 bool
}

type chosenRow struct {
	ID, Name, Why string
	New           bool
	Cells         []table.Cell
}

// Again returns the page's own address.
func (p choosePage) Again() string { return p.Address.Beside("/choose", "job", p.Job) }

// To returns where the job is told something: "cancel", "accept".
func (p choosePage) To(what string) string { return p.Address.Beside("/choose/" + p.Job + "/" + what) }

// Way names the page among the ways.
func (p choosePage) Way() string { return "choose" }

// show answers GET /arena/{slug}/choose.
func (d area) show(w http.ResponseWriter, r *http.Request) error {
	at, b, err := d.opened(r)
	if err != nil {
		return err
	}
	id := r.FormValue("job")
	if id == "" {
		return d.page(w, r, b, at, nil, usualWishes(b.Maker.Rules), "")
	}
	j, ok := d.jobs.Job(id)
	if !ok || j.About.Arena != b.Document.ID {
		return shell.Refuse(http.StatusNotFound, "This choice is no longer kept.", "Open the arena and choose again.")
	}
	defer j.Watch()()
	return d.page(w, r, b, at, j, j.About.wishes, "")
}

func (d area) page(w http.ResponseWriter, r *http.Request, b shelf.Book, at shell.Address, j *choice, form wishes, problem string) error {
	a, err := b.Arena.Check()
	if err != nil {
		return err
	}
	a.Units = at.Units(a.Units)
	if form.Step == "" {
		form.Step = usualStep(a.Units)
	}
	page := choosePage{
		Frame: d.Frame(r, "Choose holes"), Address: at, Slug: b.Document.ID, Arena: a.Name,
		Problem: problem, Wishes: form,
	}
	status := http.StatusOK
	if problem != "" {
		status = http.StatusUnprocessableEntity
	}
	page.fillWishes(a, b.Maker.Rules)
	if j != nil {
		page.Job = j.ID
		reports, _ := j.Reports()
		page.News = newsOf(reports)
		page.Running = !j.Ended()
		if !page.Running {
			page.fillAnswer(r, b, j)
		}
	}
	return d.Page(w, r, status, "choose.tmpl", page)
}

func (p *choosePage) fillWishes(a arena.Arena, inForce rules.Sets) {
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
	// The trade's set is always in force: there is nothing to tick.
	seen := map[string]bool{rules.Trade: true}
	offer := func(s rules.Set) {
		if !seen[s.ID] {
			p.RuleSets = append(p.RuleSets, shell.Choice{Value: s.ID, Name: s.Name, Chosen: slices.Contains(p.Wishes.Rules, s.ID)})
		}
		seen[s.ID] = true
	}
	for _, s := range inForce.All() {
		offer(s)
	}
	for _, id := range rules.Names() {
		if s, err := rules.Shipped(id); err == nil {
			offer(s)
		}
	}
	bare := chart.Content{Arena: a, Bare: true}
	p.FormMap = template.HTML(sheet.InlineSVG(chart.PlanMap(bare, shell.MapWidth)))
}

func (p *choosePage) fillAnswer(r *http.Request, b shelf.Book, j *choice) {
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
	if shown < 0 || shown > len(c.Alternatives) {
		shown = 0
	}
	v := viewOf(c, shown, p.Address.Units(c.Arena.Units))
	v.sets(c, shown, p.Address, j.ID)
	v.judge(c, shown, b.Maker.Rules)
	v.Version = j.About.Version
	v.Stale = b.Document.Head != j.About.Version
	v.CanAccept = p.Plans && !v.Stale && len(v.Rows) > 0
	p.Answer = v
}

// viewOf tells a set of the answer in a system's units.
func viewOf(a choose.Answer, shown int, sys unit.System) *answerView {
	v := &answerView{
		Shown: shown, Words: words.ChoiceOutcome(a), Clash: say.All(a.Clash, sys), Standings: words.ChoiceStandings(a),
		Took:   fmt.Sprintf("%.1f s, %d places, %d moments, seed %d", a.Took.Seconds(), a.Candidates, a.Moments, a.Seed),
		Prices: words.ChoicePrices.Of("", a.Prices, sys),
	}
	holes, columns := a.Holes, words.ChosenHoles
	if shown > 0 {
		holes, columns = nil, columns.Pick("place", "pane", "height_m", "state")
		for _, c := range a.Set(shown) {
			holes = append(holes, choose.Choice{Candidate: c})
		}
	}
	t := columns.Of("", holes, sys)
	v.Heads = t.Columns
	left := a.Arena.Working()
	for i, h := range holes {
		v.Rows = append(v.Rows, chosenRow{h.Hole.ID, h.Say(sys), h.Why.In(sys), h.New, t.Rows[i]})
		left = slices.DeleteFunc(left, func(own glass.Hole) bool { return own.ID == h.Hole.ID })
	}
	for _, h := range left {
		v.Left = append(v.Left, h.ID)
	}
	if len(holes) > 0 {
		p := chart.OfChoice(a, shown, sys)
		p.Bare = true
		v.Map = template.HTML(sheet.InlineSVG(chart.PlanMap(p, shell.MapWidth)))
	}
	return v
}

// judge says under which rules the set was proved and, where others are in
// force on the desk, what those say of it.
func (v *answerView) judge(a choose.Answer, shown int, inForce rules.Sets) {
	names := func(sets rules.Sets) (out []string) {
		for _, s := range sets.All() {
			out = append(out, s.Name)
		}
		return out
	}
	v.Proved = say.Names(names(a.Sets))
	if len(v.Rows) == 0 || slices.Equal(a.Sets.IDs(), inForce.IDs()) {
		return
	}
	verdict := inForce.Check(a.With(a.Set(shown))).Verdict
	v.InForce = fmt.Sprintf("In force here is %s: by that the set would be judged %q.", say.Names(names(inForce)), verdict)
}

func (v *answerView) sets(a choose.Answer, shown int, at shell.Address, job string) {
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
