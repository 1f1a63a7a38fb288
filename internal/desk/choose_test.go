package desk

import (
	"bufio"
	"context"
	"html"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/words"
)

const quickWishes = "moments=300&step=600+mm&count=3&alternatives=1&limit=30&seed=1&rules=common-practice"

// TestChoiceIsTakenOver starts a choice, follows its events to the end, takes the
// set over and finds its holes in a new version.
func TestChoiceIsTakenOver(t *testing.T) {
	h, d, _ := ownDesk(t, false)
	t.Cleanup(d.jobs.Close)
	server := httptest.NewServer(h)
	defer server.Close()
	w := ask(t, h, "POST", choosePath, quickWishes+"&people=2")
	to := w.Header().Get("Location")
	if w.Code != http.StatusSeeOther || !strings.HasPrefix(to, choosePath+"?job=") {
		t.Fatalf("started with %d to %q\n%.300s", w.Code, to, w.Body)
	}
	job := strings.TrimPrefix(to, choosePath+"?job=")
	if !followToEnd(t, server.URL+choosePath+"/"+job+"/events") {
		t.Fatal("the events ended without done")
	}
	page := ask(t, h, "GET", to, "").Body.String()
	if !strings.Contains(page, "proved") || strings.Count(page, `name="take"`) == 0 {
		t.Fatalf("the answer's page:\n%.2000s", page)
	}
	for _, want := range []string{"From what is cut today to the best", "The costs are invented", "#looked-at", "Who works at once", "2 holes at once, one lens a person"} {
		if !strings.Contains(page, want) {
			t.Errorf("the answer's page lacks %s", want)
		}
	}
	places := between(page, `name="take" value="`, `"`)
	form := url.Values{"set": {"0"}, "take": places, "rest": {"off"}}
	if w := ask(t, h, "POST", choosePath+"/"+job+"/accept", form.Encode()); w.Code != http.StatusSeeOther || w.Header().Get("Location") != demoPage {
		t.Fatalf("taken over with %d\n%.500s", w.Code, w.Body)
	}
	b, err := d.shell.Shelf.Open(t.Context(), "quillhaven", 0)
	if err != nil {
		t.Fatal(err)
	}
	a, err := b.Arena.Check()
	if err != nil || b.Version.Number != 2 || len(a.Working()) != 3 {
		t.Errorf("version %d with %d working holes, want 2 with 3 (%v)", b.Version.Number, len(a.Working()), err)
	}
	if w := ask(t, h, "POST", choosePath+"/"+job+"/accept", form.Encode()); w.Code != http.StatusConflict {
		t.Errorf("taken over again: %d, want 409", w.Code)
	}
}

// TestUsualChoiceGivesALegalPlan: a choice as the form begins, taken over as the
// page begins, keeps every rule, and of what is cut nothing is given up.
func TestUsualChoiceGivesALegalPlan(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	t.Cleanup(d.jobs.Close)
	wishes := strings.Replace(usualForm(t, h), "moments=6000", "moments=300", 1)
	to := ask(t, h, "POST", choosePath, wishes).Header().Get("Location")
	_, job, _ := strings.Cut(to, "job=")
	j, ok := d.jobs.Job(job)
	if !ok {
		t.Fatalf("started at %q with %s", to, wishes)
	}
	<-j.Done()
	page := ask(t, h, "GET", to, "").Body.String()
	form := url.Values{"set": between(page, `name="set" value="`, `"`), "take": between(page, `name="take" value="`, `"`), "rest": between(page, `name="rest" value="`, `"`)}
	says(t, ask(t, h, "POST", choosePath+"/"+job+"/accept", form.Encode()), http.StatusSeeOther)
	b, err := d.shell.Shelf.Open(t.Context(), "quillhaven", 0)
	if err != nil {
		t.Fatal(err)
	}
	a, err := b.Arena.Check()
	if err != nil {
		t.Fatal(err)
	}
	if v := b.Maker.Rules.Check(a).Verdict; v != rules.Pass {
		t.Errorf("taken over with %v: %s", form, v)
	}
	cut := 0
	for _, hole := range a.Holes {
		if hole.State == glass.Cut {
			cut++
		}
	}
	if cut != 5 || len(a.Working()) <= 5 {
		t.Errorf("%d of the 5 cut holes are left, %d work: %v", cut, len(a.Working()), form)
	}
}

// usualForm is what a browser sends of the form of a choice as it begins.
func usualForm(t *testing.T, h http.Handler) string {
	t.Helper()
	out := url.Values{}
	form := strings.Join(between(ask(t, h, "GET", choosePath, "").Body.String(), `<form class="wishes"`, "</form>"), "")
	for _, tag := range between(form, "<input ", ">") {
		name, value := between(tag, `name="`, `"`), between(tag, `value="`, `"`)
		if ticks := strings.Contains(tag, `type="`); len(name) == 1 && (!ticks || strings.Contains(tag, " checked")) {
			out.Add(name[0], html.UnescapeString(strings.Join(value, "")))
		}
	}
	if len(out) < 10 {
		t.Fatalf("the form sends only %v", out)
	}
	return out.Encode()
}

// TestStepIsTakenOver looks at every step of a finished choice, and takes the
// last, which gives holes up: the new version is a legal plan, and of what is cut
// and left out it is noted that its pane is to be replaced.
func TestStepIsTakenOver(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	t.Cleanup(d.jobs.Close)
	to := ask(t, h, "POST", choosePath, strings.ReplaceAll(quickWishes, "count=3&", "")).Header().Get("Location")
	_, job, _ := strings.Cut(to, "job=")
	j, ok := d.jobs.Job(job)
	if !ok {
		t.Fatalf("started at %q", to)
	}
	<-j.Done()
	c, err := j.Outcome()
	if err != nil || len(c.Ladder) < 2 {
		t.Fatalf("%d steps, %v", len(c.Ladder), err)
	}
	says(t, ask(t, h, "GET", to, ""), 200, "What each amount of money buys", "sheet-frontier", "most for the money", "cost, USD", "Keeping all 5 and cutting 3 more brings")
	last := ""
	for k, step := range c.Ladder {
		last = "step-" + strconv.Itoa(k)
		page := ask(t, h, "GET", to+"&set="+last, "").Body.String()
		says(t, ask(t, h, "GET", to+"&set="+last, ""), 200, "Looked at: "+words.ChoiceStep(step), `name="set" value="`+last+`"`)
		for fate, n := range map[string]int{"stays": len(step.Kept()), "cut new": len(step.Cut()), "given up": len(step.GivenUp)} {
			if drawn := len(regexp.MustCompile("<title>Hole [^<]*: "+fate+", ").FindAllString(page, -1)); drawn != n {
				t.Errorf("%s: %d holes are drawn as %s, want %d", last, drawn, fate, n)
			}
		}
	}
	// Each step that cuts holes has its letter to take away; today has none.
	says(t, ask(t, h, "GET", choosePath+"/"+job+"/letter?set=step-0", ""), http.StatusBadRequest, "There is no letter about this set.")
	says(t, ask(t, h, "GET", choosePath+"/"+job+"/letter?set=1", ""), http.StatusBadRequest)
	for _, set := range []string{last, "0", "money-1"} {
		links := between(ask(t, h, "GET", to+"&set="+set, "").Body.String(), `Ask the rink for it: <a href="`, `"`)
		if len(links) != 1 {
			t.Fatalf("%s: letters %q", set, links)
		}
		w := ask(t, h, "GET", html.UnescapeString(links[0]), "")
		if w.Code != 200 || w.Header().Get("Content-Type") != "application/pdf" || !strings.HasPrefix(w.Body.String(), "%PDF-") ||
			!strings.HasSuffix(w.Header().Get("Content-Disposition"), `-letter.pdf"`) {
			t.Errorf("%s: letter %d, %v, %.200s", set, w.Code, w.Header(), w.Body)
		}
	}
	if len(c.Ladder[len(c.Ladder)-1].GivenUp) == 0 {
		t.Fatal("the last step gives nothing up")
	}
	page := ask(t, h, "GET", to+"&set="+last, "").Body.String()
	form := url.Values{"set": {last}, "take": between(page, `name="take" value="`, `"`), "rest": between(page, `name="rest" value="`, `"`)}
	says(t, ask(t, h, "POST", choosePath+"/"+job+"/accept", form.Encode()), http.StatusSeeOther)
	b, err := d.shell.Shelf.Open(t.Context(), "quillhaven", 0)
	if err != nil {
		t.Fatal(err)
	}
	a, err := b.Arena.Check()
	if err != nil {
		t.Fatal(err)
	}
	if v := b.Maker.Rules.Check(a).Verdict; v != rules.Pass {
		t.Errorf("the plan taken over: %s", v)
	}
	for _, gone := range c.Ladder[len(c.Ladder)-1].GivenUp {
		h, _ := a.Hole(gone.Hole.ID)
		if h.State != glass.Off || !strings.Contains(h.Note, "to be replaced") {
			t.Errorf("%s is %s, noted %q", h.ID, h.State, h.Note)
		}
	}
	says(t, ask(t, h, "GET", to+"&set=step-99", ""), 200, "Looked at: the best set")
	says(t, ask(t, h, "POST", choosePath+"/"+job+"/accept", "set=step-99"), http.StatusBadRequest)
}

// followToEnd reads server-sent events until done.
func followToEnd(t *testing.T, address string) bool {
	t.Helper()
	answer, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	lines, progress := bufio.NewScanner(answer.Body), 0
	for lines.Scan() {
		switch lines.Text() {
		case "event: progress":
			progress++
		case "event: done":
			return progress > 0
		}
	}
	return false
}

// between returns what stands between two texts, each time.
func between(s, from, to string) (out []string) {
	for {
		_, after, ok := strings.Cut(s, from)
		if !ok {
			return out
		}
		value, rest, _ := strings.Cut(after, to)
		out, s = append(out, strings.ReplaceAll(value, "&#43;", "+")), rest
	}
}

func TestWishesThatCannotBe(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	for wish, says := range map[string]string{
		"moments=few&rules=common-practice&step=1+m":                   "moments",
		"moments=300&step=1&rules=common-practice":                     "step",
		"moments=300&step=1+m":                                         "tick one rule set",
		"moments=300&step=1+m&rules=nonesuch":                          "nonesuch",
		"moments=300&step=1+m&count=0&rules=common-practice":           "count",
		"moments=300&step=1+m&limit=99999&rules=common-practice":       "longest time",
		"moments=300&step=1+m&heights=tall&rules=common-practice":      "heights",
		"moments=300&step=1+m&alternatives=99&rules=common-practice":   "alternatives",
		"moments=300&step=1+m&new-cuts=-2&rules=common-practice":       "newly cut",
		"moments=300&step=1+m&seed=%3Cscript%3E&rules=common-practice": "seed",
	} {
		w := ask(t, h, "POST", choosePath, wish)
		if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), says) {
			t.Errorf("%s: %d, want 422 and %q", wish, w.Code, says)
		}
		if strings.Contains(w.Body.String(), "<script>") {
			t.Errorf("%s: the page repeats a script", wish)
		}
	}
	const good = "moments=300&step=1+m&rules=common-practice&"
	for wish, at := range map[string][2]string{
		good + "cost.currency=USD&cost.closure=-150":                         {"cost.closure", "below zero"},
		good + "cost.currency=&cost.closure=150":                             {"cost.currency", "is missing"},
		good + "cost.currency=dollars":                                       {"cost.currency", "three letters, as USD"},
		good + "cost.currency=USD&cost.panes.acrylic.each=dear":              {"cost.panes.acrylic.each", "write an amount of money"},
		good + "cost.currency=USD&cost.hours.day=0":                          {"cost.hours.day", "a number from 0.25 to 24"},
		good + "budget=much":                                                 {"budget", "write an amount of money"},
		good + "budget=-1":                                                   {"budget", "below zero"},
		good + "costs=" + url.QueryEscape("rinkpane: costs 1\nlabour: -2\n"): {"costs", "line "},
		good + "new-cuts=some":                                               {"new-cuts", "whole number from 0 to 60"},
		good + "eye=kneeling":                                                {"eye", "standing, sitting, wheelchair"},
		good + "floor=low":                                                   {"floor", "low"},
		good + "elbow=5+m":                                                   {"elbow", "0 to 3 m"},
		good + "people=0":                                                    {"people", "whole number from 1 to 60"},
	} {
		says(t, ask(t, h, "POST", choosePath, wish), 422, `aria-describedby="wrong-`+at[0]+`"`, at[1])
	}
	for _, path := range []string{"?job=forged", "/forged/events"} {
		if w := ask(t, h, "GET", choosePath+path, ""); w.Code != http.StatusNotFound {
			t.Errorf("GET %s: %d, want 404", path, w.Code)
		}
	}
}

// TestBudgetAndOwnCosts: with one's own costs the steps are told in one's own
// currency and are no longer called invented; a budget that buys nothing is told at
// its field with the cheapest step.
func TestBudgetAndOwnCosts(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	t.Cleanup(d.jobs.Close)
	choose := func(wish string) string {
		to := ask(t, h, "POST", choosePath, "moments=300&step=600+mm&alternatives=0&seed=1&rules=common-practice&"+wish).Header().Get("Location")
		_, job, _ := strings.Cut(to, "job=")
		j, ok := d.jobs.Job(job)
		if !ok {
			t.Fatalf("%s: not begun", wish)
		}
		<-j.Done()
		return ask(t, h, "GET", to, "").Body.String()
	}
	own := choose("cost.currency=SEK&cost.cutting=1000&cost.cover=900&cost.hours.cut=2&cost.labour=600&cost.panes.acrylic.each=4000")
	if !strings.Contains(own, "cost, SEK") || strings.Contains(own, "costs are invented") || !strings.Contains(own, "counts as nothing: call-out, closure") {
		t.Errorf("own costs:\n%s", strings.Join(between(own, `class="cost-note">`, "</p>"), "\n"))
	}
	poor := choose("budget=100")
	for _, want := range []string{"100 USD buys nothing; the cheapest step (keep all, cut 1) costs ", `aria-describedby="wrong-budget"`} {
		if !strings.Contains(poor, want) {
			t.Errorf("a budget that buys nothing: the page lacks %s", want)
		}
	}
	if page := choose("costs=" + url.QueryEscape("rinkpane: costs 1\ncurrency: EUR\ncutting: 80\ncover: 50\npanes: {acrylic: {each: 700}}\n")); !strings.Contains(page, "cost, EUR") {
		t.Error("a pasted costs file is not used")
	}
}

// TestRunningChoiceIsFoundAgain: every page of the arena tells that a choice is
// being worked out and leads to it, in the visitor's units; its own page, other
// arenas and the time after it do not.
func TestRunningChoiceIsFoundAgain(t *testing.T) {
	h, d, _ := ownDesk(t, false)
	t.Cleanup(d.jobs.Close)
	to := ask(t, h, "POST", choosePath, strings.ReplaceAll(quickWishes, "moments=300", "moments=50000")).Header().Get("Location")
	_, job, _ := strings.Cut(to, "job=")
	j, ok := d.jobs.Job(job)
	if !ok {
		t.Fatalf("started at %q", to)
	}
	const told = "A choice of holes is being worked out"
	for _, below := range []string{"", "/survey", "/versions", "/paper", "/choose", "/compare"} {
		says(t, ask(t, h, "GET", demoPage+below+"?units=metric", ""), 200, told, `href="`+choosePath+"?job="+job+`&amp;units=metric"`)
	}
	for _, path := range []string{"/arenas", "/library", "/people"} {
		says(t, ask(t, h, "GET", path, ""), 200, told+" for Tidewater Pavilion", `href="`+choosePath+"?job="+job)
	}
	j.Cancel()
	own := ask(t, h, "GET", to, "").Body.String()
	<-j.Done()
	for where, page := range map[string]string{"its own page": own, "after it": ask(t, h, "GET", demoPage, "").Body.String() + ask(t, h, "GET", "/arenas", "").Body.String()} {
		if strings.Contains(page, told) {
			t.Errorf("%s tells of it", where)
		}
	}
}

// A form begins in the visitor's units.
func TestChoiceBeginsInTheVisitorsUnits(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	for query, step := range map[string]string{"": "1 ft", "?units=metric": "300 mm"} {
		page := ask(t, h, "GET", choosePath+query, "").Body.String()
		if got := between(page, `name="step" value="`, `"`); len(got) != 1 || got[0] != step {
			t.Errorf("%q: step %q, want %q", query, got, step)
		}
	}
}

// TestDeskClosesOverARunningChoice: a choice that somebody watches does not keep
// the desk open; it ends, and its events with it.
func TestDeskClosesOverARunningChoice(t *testing.T) {
	h, d, _ := ownDesk(t, false)
	w := ask(t, h, "POST", choosePath, strings.ReplaceAll(quickWishes, "moments=300", "moments=50000"))
	_, job, ok := strings.Cut(w.Header().Get("Location"), "job=")
	if !ok {
		t.Fatalf("started with %d", w.Code)
	}
	ln, err := Listen("127.0.0.1:0", false)
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	served := make(chan error, 1)
	go func() { served <- d.Serve(ctx, ln) }()
	followed := make(chan bool, 1)
	answer, err := http.Get("http://" + ln.Addr().String() + choosePath + "/" + job + "/events")
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	first := make([]byte, 16)
	if _, err := io.ReadFull(answer.Body, first); err != nil || !strings.HasPrefix(string(first), "event: progress") {
		t.Fatalf("first event %q, %v", first, err)
	}
	go func() {
		_, err := io.Copy(io.Discard, answer.Body)
		followed <- err == nil
	}()
	stop()
	select {
	case err := <-served:
		if err != nil {
			t.Errorf("Serve ended with %v", err)
		}
	case <-time.After(patience):
		t.Fatal("the desk did not close")
	}
	if !<-followed {
		t.Error("the events broke off instead of ending")
	}
	j, ok := d.jobs.Job(job)
	if !ok {
		t.Fatal("the choice is not known")
	}
	select {
	case <-j.Done(): // usually before Serve returns, which waits but a second for it
	case <-time.After(patience):
		t.Error("the choice goes on after the desk closed")
	}
}
