package league_test

import (
	"context"
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

func question(t *testing.T, file string, sets ...string) league.Question {
	t.Helper()
	text, err := examples.Files.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	q := league.Question{Arena: league.Document{Name: file, Text: string(text)}, Day: "2026-11-29", Moments: 200}
	for _, s := range sets {
		q.Rules = append(q.Rules, league.Document{Name: s})
	}
	return q
}

// TestAnAnswerIsKeptAsJSON chooses for an example, writes the answer as a job's is kept and
// reads the same.
func TestAnAnswerIsKeptAsJSON(t *testing.T) {
	a, err := question(t, "sorrel-flats.yaml", "common-practice").Choose(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Holes) == 0 || a.Value <= 0 || a.Bound < a.Value || a.Verdict == rules.Pass || len(a.Broken) == 0 || a.Without != "" {
		t.Errorf("%+v", a)
	}
	text, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	var again league.Answer
	if err := json.Unmarshal(text, &again); err != nil || !reflect.DeepEqual(a, again) {
		t.Errorf("read back: %v\n%+v\n%+v", err, a, again)
	}
	weakest, _ := a.Weakest()
	for _, h := range a.Holes {
		if h.Worth < weakest.Worth {
			t.Errorf("%s is worth %g, less than the weakest", h.ID, h.Worth)
		}
	}
}

// TestASetThatForbidsAllHoles has an answer, and says why there is no set.
func TestASetThatForbidsAllHoles(t *testing.T) {
	a, err := question(t, "sorrel-flats.yaml", "international-2014").Choose(t.Context())
	if err != nil || len(a.Holes) > 0 || a.Value != 0 || a.Without == "" {
		t.Errorf("%+v, %v", a, err)
	}
}

// TestBadDocumentsAreNamed: arena, rule set and kit, each with its name.
func TestBadDocumentsAreNamed(t *testing.T) {
	good := question(t, "sorrel-flats.yaml", "common-practice")
	for name, spoil := range map[string]func(*league.Question){
		"hall.yaml": func(q *league.Question) {
			q.Arena = league.Document{Name: "hall.yaml", Text: "rinkpane: arena 1\nname: [x"}
		},
		"rules.yaml": func(q *league.Question) {
			q.Rules = []league.Document{{Name: "rules.yaml", Text: "rinkpane: rules 1\nid: ["}}
		},
		"nowhere": func(q *league.Question) { q.Rules = []league.Document{{Name: "nowhere"}} },
		"bag.yaml": func(q *league.Question) {
			q.Kit = league.Document{Name: "bag.yaml", Text: "rinkpane: kit 1\nbodies: ["}
		},
	} {
		q := good
		spoil(&q)
		if _, err := q.Choose(t.Context()); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := good.Choose(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("after it was stopped: %v", err)
	}
}

// TestTotalsAndPrices sums three arenas, of which one has no answer and one none under the
// other rules.
func TestTotalsAndPrices(t *testing.T) {
	cut := league.Hole{Hole: glass.Hole{ID: "B1", State: glass.Cut}}
	both := league.Answer{Verdict: rules.Pass, Today: 0.25, Value: 0.5, Holes: []league.Hole{cut, {New: true}}, Bill: cost.Bill{Money: 100}, Currency: "USD"}
	one := league.Answer{Verdict: rules.Fail, Value: 0.25, GivenUp: []glass.Hole{cut.Hole}, Bill: cost.Bill{Money: 50}, Currency: "USD"}
	l := league.League{Rows: []league.Row{
		{File: "a.yaml", Answer: unit.Known(both), Other: unit.Known(league.Answer{Value: 0.75})},
		{File: "b.yaml", Answer: unit.Known(one)},
		{File: "c.yaml", Cause: "unreadable"},
	}}
	want := league.Total{Arenas: 3, Answered: 2, Passing: 1, Today: 0.25, Value: 0.75, Cut: 1, GivenUp: 1, Bill: cost.Bill{Money: 150}, Currency: "USD", Both: 1, Here: 0.5, There: 0.75}
	if got := l.Total(); got != want || got.Price() != 0.25 {
		t.Errorf("%+v\nwant %+v", got, want)
	}
	one.Currency = "EUR"
	l.Rows[1].Answer = unit.Known(one)
	if got := l.Total(); got.Currency != "" {
		t.Errorf("dollars and euros are added as %s", got.Currency)
	}
}
