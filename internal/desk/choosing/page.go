package choosing

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"html/template"
	"net/http"
	"slices"
	"strconv"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/cost"
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
	Problem     string   // what is wrong with the form as a whole
	Wrong       problems // and with its fields
	Work, Panes []costField
	Currency    string // the budget's
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
type holeWish struct {
	ID, Where, Station string
	Cut                bool
	Wish               string
}

// answerView is a choice's answer, and the set of it that is looked at.
type answerView struct {
	Words, Took string
	Ladder      *ladderView
	Letter      string // where the page for the manager is; "" without one
	Lack        string // which letters of the arena's own words its fonts lack
	Map         template.HTML
	Fates       []fateView
	Sets        []setView // the best and its alternatives
	Shown       string    // the name of what is looked at
	What        string    // the same for people
	Heads       []table.Column
	Rows        []chosenRow
	Why         bool
	Prices      table.Table
	Crews       table.Table // who works when
	Standings   []string
	Working     []string // for whom the heights are
	Clash       []string
	Proved      string // under which rule sets
	After       string // what the rules in force say of the plan once it is taken over
	Stale       bool   // somebody saved since
	Version     int
	CanAccept   bool
	Left        []leftOut
}

type setView struct {
	Name, URL, Value, Lost string
	Chosen                 bool
}

type chosenRow struct {
	ID, Name, Fate, Why string
	New                 bool
	Cells               []table.Cell
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
		return d.page(w, r, b, at, nil, usualWishes(b.Maker.Rules), nil)
	}
	j, ok := d.jobs.Job(id)
	if !ok || j.About.Arena != b.Document.ID {
		return shell.Refuse(http.StatusNotFound, "This choice is no longer kept.", "Open the arena and choose again.")
	}
	defer j.Watch()()
	return d.page(w, r, b, at, j, j.About.wishes, nil)
}

func (d area) page(w http.ResponseWriter, r *http.Request, b shelf.Book, at shell.Address, j *choice, form wishes, problem error) error {
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
		Wishes: form,
	}
	status := http.StatusOK
	if problem != nil {
		status, page.Problem = http.StatusUnprocessableEntity, problem.Error()
		errors.As(problem, &page.Wrong)
	}
	page.fillCosts(a.Units)
	page.fillWishes(a, b.Maker.Rules)
	if j != nil {
		page.Job = j.ID
		reports, _ := j.Reports()
		page.News = newsOf(reports)
		page.Running, page.Under = !j.Ended(), nil
		if !page.Running {
			page.fillAnswer(r, b, j)
		}
	}
	return d.Page(w, r, status, "choose.tmpl", page)
}

func (p *choosePage) fillWishes(a arena.Arena, inForce rules.Sets) {
	for _, h := range a.Working() {
		wish := holeWish{h.ID, a.PlaceOf(h.Station).Say(a.Units), h.Station.Format(a.Units), h.State == glass.Cut, "free"}
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

// fillCosts fills the costs that are asked for, and opens what holds a fault.
func (p *choosePage) fillCosts(sys unit.System) {
	p.Work, p.Panes = costFields(sys)
	p.Work, p.Panes = p.Wishes.Costs.filled(p.Work), p.Wishes.Costs.filled(p.Panes)
	p.Currency = p.Work[0].Value
}

// Open reports that a fault or a wish lies in what is folded away.
func (p choosePage) Open(fold string) bool {
	if fold == "costs" {
		return !p.Wishes.Costs.invented()
	}
	for _, name := range []string{"eye", "floor", "elbow", "heights", "step", "panes", "moments", "seed", "alternatives", "limit"} {
		if p.Wrong[name] != "" {
			return true
		}
	}
	return false
}

// field is a field of the form: its name, what stands in it, what is wrong with it.
type field struct{ Name, Label, Value, Hint, Mode, Wrong string }

// At returns a field of the form with what is wrong with it.
func (p choosePage) At(name, label, value, hint, mode string) field {
	return field{name, label, value, hint, mode, p.Wrong[name]}
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
	look, ok := pick(c, cmp.Or(r.FormValue("set"), usualLook(c)))
	if !ok {
		look, _ = pick(c, "0")
	}
	if most, err := cost.ParseMoney(p.Wishes.Budget); err == nil && len(c.Frontier) == 1 && len(c.Unfinished) == 0 {
		p.Wrong = problems{"budget": words.ChoiceShort(c, most) + "."}
	}
	v := viewOf(look, p.Address.Units(c.Arena.Units))
	if _, ok := look.asked(); ok {
		v.Lack = shell.Sentence(sheet.Lacking(lettered(look)...).String())
		v.Letter = p.Address.Beside("/choose/"+j.ID+"/letter", "set", look.name)
	}
	v.Ladder = ladderOf(c, p.Address, j.ID, look.name)
	v.sets(c, look.name, p.Address, j.ID)
	v.judge(look, b.Maker.Rules)
	v.Version = j.About.Version
	v.Stale = b.Document.Head != j.About.Version
	v.CanAccept = p.Plans && !v.Stale && len(v.Rows) > 0
	p.Answer = v
}

// viewOf tells what is looked at of an answer in a system's units.
func viewOf(s shown, sys unit.System) *answerView {
	a := s.of
	v := &answerView{
		Shown: s.name, What: s.what, Words: words.ChoiceOutcome(a), Clash: say.All(a.Clash, sys), Standings: words.ChoiceStandings(a),
		Took:   fmt.Sprintf("%.1f s, %d places, %d moments, seed %d", a.Took.Seconds(), a.Candidates, a.Moments, a.Seed),
		Prices: words.ChoicePrices.Of("", a.Prices, sys), Left: s.left(), Why: s.n == 0,
		Working: words.ChoiceWorking(a, sys),
		Crews:   words.ChoiceCrews(s.crews(), sys),
	}
	holes, columns := a.Holes, words.ChosenHoles.Pick("pane", "height_m", "worth", "loss", "best_view_share")
	if s.n > 0 {
		holes, columns = nil, columns.Pick("pane", "height_m")
		for _, c := range s.set() {
			holes = append(holes, choose.Choice{Candidate: c})
		}
	}
	t := columns.Of("", holes, sys)
	v.Heads = t.Columns
	drawn := s.mapOf(sys)
	for i, h := range holes {
		v.Rows = append(v.Rows, chosenRow{h.Hole.ID, h.Candidate.Words(sys), string(drawn.Fates[h.Hole.ID]), h.Why.In(sys), h.New, t.Rows[i]})
	}
	if len(holes) > 0 {
		v.Fates = fates(drawn)
		v.Map = template.HTML(sheet.InlineSVG(chart.PlanMap(drawn, shell.MapWidth)))
	}
	return v
}

// judge says under which rules the answer was proved, and what those in force on
// the desk will say of the plan once what is looked at is taken over.
func (v *answerView) judge(s shown, inForce rules.Sets) {
	names := func(sets rules.Sets) (out []string) {
		for _, s := range sets.All() {
			out = append(out, s.Name)
		}
		return out
	}
	v.Proved = say.Names(names(s.of.Sets))
	if len(v.Rows) > 0 {
		v.After = fmt.Sprintf("The verdict once it is taken over, by the rules in force here: %s.", words.Status(inForce.Check(s.of.With(s.set())).Verdict))
		if !slices.Equal(s.of.Sets.IDs(), inForce.IDs()) {
			v.After += " In force here is " + say.Names(names(inForce)) + "."
		}
	}
}

func (v *answerView) sets(a choose.Answer, shown string, at shell.Address, job string) {
	if len(a.Holes) == 0 {
		return
	}
	add := func(n int, name string, value float64, lost string) {
		id := strconv.Itoa(n)
		v.Sets = append(v.Sets, setView{name, at.Beside("/choose", "job", job, "set", id) + "#looked-at", fmt.Sprintf("%.4f", value), lost, shown == id})
	}
	add(0, "Best", a.Value, "")
	for i, alt := range a.Alternatives {
		add(i+1, fmt.Sprintf("Next best %d", i+1), alt.Value, fmt.Sprintf("%.4f less, ± %.4f", alt.Lost, alt.Margin))
	}
}
