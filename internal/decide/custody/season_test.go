package custody_test

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

func season(until time.Time) custody.Season {
	s := custody.SeasonOf("east", until)
	s.Holes, s.Revision, s.Version = []string{"A1", "A2", "B1", "B2", "B3"}, strings.Repeat("0", 64), 1
	for _, h := range s.Holes {
		s.Panes[h] = "P" + h
		mm := func(x unit.Length) unit.Maybe[unit.Length] { return unit.Known(x * unit.Millimetre) }
		s.Drawn[h] = []custody.Limits{{What: custody.Width, Low: mm(139.2), High: mm(140.2)}, {What: custody.CornerRadius, Low: mm(9.5), High: mm(10.5)}}
	}
	return s
}

// The demo season is the same on every run, every event of it can be kept, and it shows
// what its pages are for: rates with one hole above the rest, an approval, one hole refused and so due.
func TestDemoSeason(t *testing.T) {
	until := at(8 * 60) // a game is on
	events := season(until).Events()
	if again := season(until).Events(); !reflect.DeepEqual(again, events) || len(events) < 2000 {
		t.Fatalf("%d and %d events", len(events), len(again))
	}
	for _, e := range events {
		if err := e.Check(); err != nil || e.Told.After(until) {
			t.Fatalf("%v, %v: %+v", err, e.Told, e)
		}
	}
	h := custody.HistoryOf(events)
	b := custody.Fold(h, custody.DayOf(until), until)
	if len(b.Covers) != 10 || len(b.Holes) != 5 || b.Phase != custody.Play && b.Phase != custody.Intermission {
		t.Errorf("%d covers, %d holes, %s", len(b.Covers), len(b.Holes), b.Phase)
	}
	out := custody.Outliers(custody.RatesOf(h, custody.Window{To: until}))
	if len(out) != 5 || !out[0].Above() || out[0].Hole != "A1" || out[1].Above() {
		t.Errorf("outliers %+v", out)
	}
	if of := custody.ApprovalOf(h, strings.Repeat("0", 64)); of.Standing != custody.Approved || len(of.Replies) != 2 || of.On().IsZero() {
		t.Errorf("approval %+v", of)
	}
	plan := arena.Arena{}
	for _, id := range season(until).Holes {
		plan.Holes = append(plan.Holes, glass.Hole{ID: id, State: glass.Cut})
	}
	verdicts := map[string]custody.Verdict{}
	custody.Facts(h, func(_ custody.Entry, f custody.Inspected) {
		verdicts[f.Hole] = f.Verdict
		if len(f.Measured) != 2 || custody.Inspect(f.Hole, season(until).Drawn[f.Hole], custody.Readings(f.Measured), f.Seen).Verdict != f.Verdict {
			t.Errorf("inspected: %+v", f)
		}
	})
	if want := (map[string]custody.Verdict{"A1": "accepted", "A2": "refused", "B1": "unproved", "B2": "accepted", "B3": "accepted"}); !reflect.DeepEqual(verdicts, want) {
		t.Errorf("inspections came out as %v, want %v", verdicts, want)
	}
	for _, d := range custody.InspectionsDue(h, plan, rules.Sets{}) {
		if refused := d.Hole == "A2"; d.Over(until) != refused || (d.Why == "days in service") == refused {
			t.Errorf("due %+v", d)
		}
	}
}
