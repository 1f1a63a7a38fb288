package choosing

import (
	"context"
	"fmt"
	"maps"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Progress is a report of a choice with the seconds since it began.
type Progress struct {
	choose.Report
	Seconds float64
}

// What a choice on the desk may be asked for, so that it ends while somebody
// waits; own choice. The command choose knows no such bounds.
const (
	mostWishedMoments = 50_000
	usualMoments      = 6000
	mostLimit         = 300 * time.Second
	usualLimit        = 60 * time.Second
)

// wishes is the form of a choice as it was filled in.
type wishes struct {
	Count, People, NewCuts, Moments, Seed, Alternatives string
	Step, Heights, Eye, Floor, Elbow, Limit             string
	Panes                                               string // not to be used
	Keep, Forbid                                        []string
	Rules                                               []string
	Prices, LeftEye                                     bool
	Budget                                              string
	Costs                                               costWishes
}

// problems are what is wrong with a form, by the name of the field.
type problems map[string]string

// Error says which fields to look at.
func (p problems) Error() string {
	var names []string
	for _, field := range slices.Sorted(maps.Keys(p)) {
		names = append(names, fieldName(field))
	}
	return fmt.Sprintf("%s to mend: %s. What is wrong stands beside each.", say.Count(len(p), "field"), say.Names(names))
}

// fieldName is what people call a field: "newly cut panes", "the costs' closure".
func fieldName(field string) string {
	if path, ok := strings.CutPrefix(field, costPrefix); ok {
		return "the costs' " + strings.ReplaceAll(path, ".", " ")
	}
	if name, ok := map[string]string{"new-cuts": "newly cut panes", "limit": "longest time", "people": "holes worked at once", "alternatives": "next best sets (alternatives)"}[field]; ok {
		return name
	}
	return field
}

// errOrNil is p as an error; nil when nothing is wrong.
func (p problems) errOrNil() error {
	if len(p) == 0 {
		return nil
	}
	return p
}

// usualStep is the distance between places that a form begins with.
func usualStep(sys unit.System) string {
	if sys == unit.Imperial {
		return "1 ft"
	}
	return "300 mm"
}

// usualWishes is what a form begins with; the step waits for the page's units.
func usualWishes(sets rules.Sets) wishes {
	w := wishes{
		Moments: strconv.Itoa(usualMoments), Seed: "1", Alternatives: "3",
		Limit: strconv.Itoa(int(usualLimit / time.Second)), Prices: true, Rules: sets.IDs(),
	}
	return w
}

// readWishes reads a form that was sent.
func readWishes(q url.Values) wishes {
	w := wishes{
		Count: q.Get("count"), People: q.Get("people"), NewCuts: q.Get("new-cuts"), Moments: q.Get("moments"), Seed: q.Get("seed"), Alternatives: q.Get("alternatives"),
		Step: q.Get("step"), Heights: q.Get("heights"), Eye: strings.TrimSpace(q.Get("eye")), Floor: strings.TrimSpace(q.Get("floor")), Elbow: strings.TrimSpace(q.Get("elbow")), LeftEye: q.Get("left-eye") == "1", Limit: q.Get("limit"), Panes: q.Get("panes"), Rules: q["rules"], Prices: q.Get("prices") == "1",
		Budget: strings.TrimSpace(q.Get("budget")), Costs: readCosts(q),
	}
	for name, values := range q {
		if id, ok := strings.CutPrefix(name, "hole-"); ok && len(values) > 0 {
			switch values[0] {
			case "keep":
				w.Keep = append(w.Keep, id)
			case "forbid":
				w.Forbid = append(w.Forbid, id)
			}
		}
	}
	return w
}

// options turns the wishes into a choice's options, and the longest time for it.
func (w wishes) options() (choose.Options, time.Duration, error) {
	o, wrong := choose.DefaultOptions(), problems{}
	o.Plain, o.Ladder = !w.Prices, true
	o.Keep, o.Forbid = w.Keep, append(w.Forbid, strings.Fields(strings.ReplaceAll(w.Panes, ",", " "))...)
	limit := w.numbers(&o, wrong)
	w.money(&o, wrong)
	var err error
	if o.Step, err = unit.ParseLength(w.Step); err != nil {
		wrong["step"] = err.Error()
	} else if err := o.Check(); err != nil {
		field, text, _ := strings.Cut(err.Error(), ": ")
		wrong[field] = text
	}
	o.Person = w.person(wrong)
	for part := range strings.SplitSeq(w.Heights, ",") {
		if strings.TrimSpace(part) == "" {
			continue
		}
		z, err := unit.ParseLength(part)
		if err != nil {
			wrong["heights"] = err.Error()
			break
		}
		o.Heights = append(o.Heights, z)
	}
	return o, limit, wrong.errOrNil()
}

// person is who works at the holes.
func (w wishes) person(wrong problems) (p choose.Person) {
	var err error
	if w.Eye != "" {
		if p, err = choose.ParseEye(w.Eye); err != nil {
			wrong["eye"] = err.Error()
		}
	}
	p.LeftEye = w.LeftEye
	if w.Floor != "" {
		floor, err := unit.ParseOffset(w.Floor)
		if err != nil {
			wrong["floor"] = err.Error()
		}
		p.Floor = unit.Known(floor)
	}
	if w.Elbow != "" {
		if p.Elbow, err = choose.ParseElbow(w.Elbow); err != nil {
			wrong["elbow"] = err.Error()
		}
	}
	return p
}

// numbers reads the whole numbers of the form and returns the longest time.
func (w wishes) numbers(o *choose.Options, wrong problems) time.Duration {
	seed, cuts, limit := int(o.Seed), -1, int(usualLimit/time.Second)
	o.Moments = usualMoments
	for _, n := range []struct {
		field, text string
		to          *int
		lo, hi      int
	}{
		{"count", w.Count, &o.Count, 1, 60}, {"people", w.People, &o.People, 1, 60}, {"new-cuts", w.NewCuts, &cuts, 0, 60},
		{"moments", w.Moments, &o.Moments, 100, mostWishedMoments}, {"seed", w.Seed, &seed, 0, 1 << 30},
		{"alternatives", w.Alternatives, &o.Alternatives, 0, 8}, {"limit", w.Limit, &limit, 1, int(mostLimit / time.Second)},
	} {
		if strings.TrimSpace(n.text) == "" {
			continue
		}
		v, err := strconv.Atoi(strings.TrimSpace(n.text))
		if err != nil || v < n.lo || v > n.hi {
			wrong[n.field] = fmt.Sprintf("%s: write a whole number from %d to %d", form.Quote(n.text), n.lo, n.hi)
			continue
		}
		*n.to = v
	}
	o.Seed = uint64(seed)
	if cuts >= 0 {
		o.NewCuts = unit.Known(cuts)
	}
	return time.Duration(limit) * time.Second
}

// money reads the costs and what may be spent.
func (w wishes) money(o *choose.Options, wrong problems) {
	var field string
	var err error
	if o.Costs, field, err = w.Costs.costs(); err != nil {
		wrong[field] = err.Error()
	}
	if w.Budget == "" {
		return
	}
	most, err := cost.ParseMoney(w.Budget)
	if err != nil {
		wrong["budget"] = err.Error()
		return
	}
	o.Budget = unit.Known(most)
}

// rulesOf returns the rule sets that were ticked.
func rulesOf(ids []string, inForce rules.Sets) (rules.Sets, error) {
	var out []rules.Set
	all := inForce.All()
	for _, id := range ids {
		if i := slices.Index(inForce.IDs(), id); i >= 0 {
			out = append(out, all[i])
			continue
		}
		s, err := rules.Shipped(id)
		if err != nil {
			return rules.Sets{}, problems{"rules": err.Error()}
		}
		out = append(out, s)
	}
	if len(out) == 0 {
		return rules.Sets{}, problems{"rules": "tick one rule set at least"}
	}
	return rules.InForce(out...)
}

// start answers POST /arena/{slug}/choose.
func (d area) start(w http.ResponseWriter, r *http.Request) error {
	at, b, err := d.opened(r)
	if err != nil {
		return err
	}
	wished := readWishes(r.PostForm)
	id, err := d.begin(r, b, wished)
	if err != nil {
		return d.page(w, r, b, at, nil, wished, err)
	}
	return d.Goto(w, r, at.Beside("/choose", "job", id))
}

// opened opens the newest version of the arena that a request is about.
func (d area) opened(r *http.Request) (shell.Address, shelf.Book, error) {
	at, err := shell.ReadAddress(r.PathValue("slug"), r.URL.Query())
	if err != nil {
		return at, shelf.Book{}, shell.Because(http.StatusBadRequest, "This address leads nowhere.", err)
	}
	b, err := d.Book(r, at.Slug, 0)
	return at.Shared(), b, err
}

// begin starts the job of a filled-in form.
func (d area) begin(r *http.Request, b shelf.Book, wished wishes) (string, error) {
	opt, limit, err := wished.options()
	if err != nil {
		return "", err
	}
	a, err := b.Arena.Check()
	if err != nil {
		return "", err
	}
	maker := b.Maker
	if maker.Rules, err = rulesOf(wished.Rules, maker.Rules); err != nil {
		return "", err
	}
	id, _, err := people.Token(d.random)
	if err != nil {
		return "", err
	}
	p, _ := door.Person(r.Context())
	_, err = d.jobs.Start(id, p.Name, About{b.Document.ID, b.Document.Name, b.Version.Number, wished}, func(ctx context.Context, tell func(Progress)) (choose.Answer, error) {
		return work(ctx, a, maker, opt, limit, tell)
	})
	return id, err
}

// tellEvery is how often the way of a choice is noted.
const tellEvery = 100 * time.Millisecond

// noted tells a choice's reports at most every tellEvery, and the last of each
// stage in any case: there value and bound have met.
func noted(begun time.Time, clock func() time.Time, tell func(Progress)) func(choose.Report) {
	var held []Progress // at most one: the latest that was not told
	var stage string
	var last time.Time
	return func(r choose.Report) {
		now := clock()
		next := r.Stage != stage
		if next && len(held) > 0 {
			tell(held[0])
		}
		p := Progress{r, now.Sub(begun).Seconds()}
		if held = held[:0]; !next && now.Sub(last) < tellEvery {
			held = append(held, p)
			return
		}
		stage, last = r.Stage, now
		tell(p)
	}
}

// work makes a choice: the best set, then what speaks for it, within the limit.
func work(ctx context.Context, a arena.Arena, m plan.Maker, opt choose.Options, limit time.Duration, tell func(Progress)) (choose.Answer, error) {
	begun := time.Now()
	opt.Tell = noted(begun, time.Now, tell)
	s, err := choose.Prepare(ctx, a, m.Rules, m.Kit, opt)
	if err != nil {
		return choose.Answer{}, err
	}
	timed, stop := context.WithTimeout(ctx, limit)
	defer stop()
	ans := s.Answer(timed)
	ans.Took = time.Since(begun)
	return ans, nil
}
