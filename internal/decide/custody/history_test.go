package custody_test

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/decide/custody"
)

const (
	phone = "00000000000000aa"
	other = "00000000000000bb"
)

// noon of an invented day; the hall's clock.
func at(minute float64) time.Time {
	return time.Date(2026, 11, 28, 12, 0, 0, 0, time.UTC).Add(time.Duration(minute * float64(time.Minute)))
}

func event(device string, n uint64, minute float64, f custody.Fact) custody.Event {
	return custody.Event{ID: custody.IDOf(device, n), Arena: "east", Told: at(minute), Who: "Ada", Fact: f}
}

func moved(device string, n uint64, minute float64, s custody.State) custody.Event {
	return event(device, n, minute, custody.Moved{Cover: "B1-1", State: s})
}

func issued(n uint64, minute float64) custody.Event {
	return event(phone, n, minute, custody.Issued{Cover: "B1-1", Hole: "B1"})
}

var day = custody.DayOf(at(0))

// Whatever the order and however often events come, history is one.
func TestHistoryDoesNotDependOnTheWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		events := []custody.Event{issued(0, -60)}
		for n := range rapid.IntRange(1, 30).Draw(t, "events") {
			device := rapid.SampledFrom([]string{phone, other}).Draw(t, "device")
			e := moved(device, uint64(n+1), float64(rapid.IntRange(0, 5).Draw(t, "minute")), rapid.SampledFrom(custody.States()).Draw(t, "state"))
			if n > 0 && rapid.IntRange(0, 3).Draw(t, "corrects") == 0 {
				e.Corrects = events[rapid.IntRange(1, n).Draw(t, "which")].ID
			}
			events = append(events, e)
		}
		want := custody.Fold(custody.HistoryOf(events), day, at(60))
		seed := rapid.Uint64().Draw(t, "seed")
		again := append(append([]custody.Event{}, events...), events...)
		rand.New(rand.NewPCG(seed, 1)).Shuffle(len(again), func(i, j int) { again[i], again[j] = again[j], again[i] })
		if got := custody.Fold(custody.HistoryOf(again), day, at(60)); !reflect.DeepEqual(got, want) {
			t.Fatalf("in another order:\n%+v\nwant\n%+v", got, want)
		}
		var ledger custody.Ledger
		came := slices.Clone(events)
		rand.New(rand.NewPCG(seed, 2)).Shuffle(len(came), func(i, j int) { came[i], came[j] = came[j], came[i] })
		for len(came) > 0 {
			n := rapid.IntRange(1, len(came)).Draw(t, "at once")
			before := ledger
			held := slices.Clone(before.History)
			ledger.Add(came[:n])
			if came = came[n:]; !slices.Equal(before.History, held) {
				t.Fatalf("a copy changed from\n%+v\nto\n%+v", held, before.History)
			}
			if want := custody.HistoryOf(ledger.Events); !reflect.DeepEqual(ledger.History, want) {
				t.Fatalf("event by event:\n%+v\nwant\n%+v", ledger.History, want)
			}
		}
	})
}

// A clock that is hours off is corrected, and nothing happens after it was kept.
func TestClocksAreCorrected(t *testing.T) {
	for _, hours := range []int{-5, 0, 7} {
		ahead := time.Duration(hours) * time.Hour
		e := moved(phone, 1, 3, custody.Out)
		e.Told = e.Told.Add(ahead)
		ready, refused, err := custody.Batch{Arena: "east", Device: phone, Who: "Ada", Now: at(4).Add(ahead), Events: []custody.Event{e}}.Stamp(at(4))
		if err != nil || len(refused) != 0 || len(ready) != 1 || !ready[0].At().Equal(at(3)) {
			t.Errorf("%d h: %+v, %v, %v", hours, ready, refused, err)
		}
	}
	e := moved(phone, 1, 90, custody.Out)
	if e.Kept = at(5); !e.At().Equal(at(5)) {
		t.Errorf("an event of the future counts at %v", e.At())
	}
}

func TestCorrections(t *testing.T) {
	correct := func(e custody.Event, of custody.Event) custody.Event { e.Corrects = of.ID; return e }
	out, stored := moved(phone, 1, 1, custody.Out), moved(phone, 2, 2, custody.Stored)
	for name, c := range map[string]struct {
		events []custody.Event
		state  custody.State
		since  float64
	}{
		"none":                             {[]custody.Event{out, stored}, custody.Stored, 2},
		"the last was another":             {[]custody.Event{out, stored, correct(moved(other, 1, 9, custody.Missing), stored)}, custody.Missing, 2},
		"the last never was":               {[]custody.Event{out, stored, correct(event(other, 1, 9, custody.Withdrawn{}), stored)}, custody.Out, 1},
		"an old one changes no later one":  {[]custody.Event{out, stored, correct(moved(other, 1, 9, custody.Damaged), out)}, custody.Stored, 2},
		"the later of two":                 {[]custody.Event{stored, correct(moved(other, 1, 9, custody.In), stored), correct(moved(phone, 3, 8, custody.Out), stored)}, custody.In, 2},
		"a correction that was corrected":  {[]custody.Event{stored, correct(moved(other, 1, 9, custody.In), stored), correct(moved(phone, 3, 10, custody.Out), moved(other, 1, 9, custody.In))}, custody.Out, 2},
		"one whose event has not come yet": {[]custody.Event{correct(moved(other, 1, 9, custody.In), stored)}, custody.In, 9},
	} {
		b := custody.Fold(custody.HistoryOf(append([]custody.Event{issued(0, -60)}, c.events...)), day, at(60))
		if got := b.Covers[0]; got.State != c.state || !got.Since.Equal(at(c.since)) {
			t.Errorf("%s: %s since %v, want %s since %v", name, got.State, got.Since, c.state, at(c.since))
		}
	}
}

// What cannot be kept is refused in one line that says why; the rest goes on.
func TestBatchesRefuse(t *testing.T) {
	link := custody.LinkFor("l1", "east", "gate 4", day)
	good := moved(phone, 1, 0, custody.In)
	with := func(change func(*custody.Event)) custody.Event { e := good; change(&e); return e }
	for want, c := range map[string]struct {
		event custody.Event
		guest bool
	}{
		"hexadecimal digits are due":  {with(func(e *custody.Event) { e.ID = "1; DROP TABLE event" }), false},
		"made by another device":      {with(func(e *custody.Event) { e.ID = custody.IDOf(other, 7) }), false},
		"corrects itself":             {with(func(e *custody.Event) { e.Corrects = e.ID }), false},
		"set the device's clock":      {with(func(e *custody.Event) { e.Told = time.Time{} }), false},
		"says nothing that happened":  {with(func(e *custody.Event) { e.Fact = nil }), false},
		"withdraws nothing":           {with(func(e *custody.Event) { e.Fact = custody.Withdrawn{} }), false},
		`state "gone": write in, out`: {with(func(e *custody.Event) { e.Fact = custody.Moved{Cover: "B1-1", State: "gone"} }), false},
		"cover is missing":            {with(func(e *custody.Event) { e.Fact = custody.Moved{State: custody.In} }), false},
		"at most 2000 are kept": {with(func(e *custody.Event) {
			e.Fact = custody.Incident{What: custody.Injury, Hole: "B1", Words: fmt.Sprintf("%2001d", 1)}
		}), false},
		"a day link is for covers only": {with(func(e *custody.Event) { e.Fact = custody.Began{Phase: custody.Play} }), true},
		"of another day":                {with(func(e *custody.Event) { e.Told = at(-24 * 60) }), true},
		"corrects another's event":      {with(func(e *custody.Event) { e.Corrects = custody.IDOf(other, 7) }), true},
		"is no key of a kept photo": {with(func(e *custody.Event) {
			e.Fact = custody.Incident{What: custody.Injury, Hole: "B1", Photos: []string{"x"}}
		}), false},
		"a refusal needs a remark": {with(func(e *custody.Event) {
			e.Fact = custody.Answered{Revision: fmt.Sprintf("%064d", 1), Party: custody.League}
		}), false},
		"give 1 to 600":                   {with(func(e *custody.Event) { e.Fact = custody.Incident{What: custody.Injury, Hole: "B1", Minute: -1} }), false},
		"name 1 to 20":                    {with(func(e *custody.Event) { e.Fact = custody.Put{Revision: fmt.Sprintf("%064d", 1)} }), false},
		"the uncertainty of width is 0 m": {with(func(e *custody.Event) { e.Fact = inspected(custody.Measured{What: custody.Width, Value: 140}) }), false},
	} {
		b := custody.Batch{Arena: "east", Device: phone, Who: "Ada", Now: at(1), Events: []custody.Event{moved(phone, 2, 0, custody.Out), c.event}}
		if c.guest {
			b.Guest = &link
		}
		ready, refused, err := b.Stamp(at(1))
		if err != nil || len(ready) != 1 || len(refused) != 1 || !oneLine(refused[0].Refused, want) {
			t.Errorf("%s: kept %d, refused %v, %v", want, len(ready), refused, err)
		}
	}
}

func inspected(m custody.Measured) custody.Inspected {
	return custody.Inspected{Hole: "B1", Revision: fmt.Sprintf("%064d", 1), Verdict: custody.Accepted, Measured: []custody.Measured{m}}
}

func TestFactsAreReadAsWritten(t *testing.T) {
	for _, f := range []custody.Fact{
		custody.Issued{Cover: "B1-1", Hole: "B1"}, custody.Moved{Cover: "B1-1", State: custody.In, Words: "½"}, custody.Withdrawn{},
		custody.Incident{What: custody.NearMiss, Hole: "B1", Minute: 7, Spare: true}, inspected(custody.Measured{What: custody.Width, Value: 139.7, U: .05}),
		custody.LinkMade{Link: custody.LinkFor("l1", "east", "gate 4", day)}, custody.Answered{Revision: "r", Party: custody.League, Accepted: true},
	} {
		kind, body := custody.Encode(f)
		if got, err := custody.Decode(kind, body); err != nil || !reflect.DeepEqual(got, f) {
			t.Errorf("%s %s: %+v, %v", kind, body, got, err)
		}
	}
	for kind, body := range map[string]string{"cover": `{"cover":"B1-1","state":"in","more":1}`, "phase": `[`, "party": `{}`} {
		if f, err := custody.Decode(kind, body); err == nil {
			t.Errorf("%s %s is %+v", kind, body, f)
		}
	}
}
