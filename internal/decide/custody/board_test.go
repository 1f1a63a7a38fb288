package custody_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/decide/custody"
)

func oneLine(err error, want string) bool {
	return err != nil && strings.Contains(err.Error(), want) && !strings.Contains(err.Error(), "\n")
}

func began(n uint64, minute float64, p custody.Phase) custody.Event {
	return event(other, n, minute, custody.Began{Phase: p})
}

// A morning and a game: open minutes go to the phase in which the hole was open, and
// only those within the window count.
func TestOpenMinutesByPhase(t *testing.T) {
	events := []custody.Event{
		issued(0, -3000), // two days before: open ever since, until it is in
		moved(phone, 1, -10, custody.In),
		began(1, 0, custody.Practice), moved(phone, 2, 5, custody.Out), began(2, 15, custody.Closed), moved(phone, 3, 20, custody.In),
		began(3, 100, custody.Play), moved(phone, 4, 101, custody.Out), began(4, 120, custody.Intermission), moved(phone, 5, 121.5, custody.In),
		moved(phone, 6, 130, custody.Stored),
	}
	h := custody.HistoryOf(events)
	b := custody.Fold(h, custody.Window{From: at(-60), To: at(125)}, at(200))
	want := map[custody.Phase]float64{custody.Closed: 50 + 5, custody.Practice: 10, custody.Play: 19, custody.Intermission: 1.5}
	for _, p := range custody.Phases() {
		if got := b.Holes[0].Open[p].Minutes(); got != want[p] {
			t.Errorf("%s: open %g min, want %g", p, got, want[p])
		}
	}
}

// Each phase's rule gives its alarm, with its limit, and takes it back.
func TestAlarmsByPhase(t *testing.T) {
	seat := func(n uint64, minute float64, by string) custody.Event {
		return event(phone, 100+n, minute, custody.Seated{Hole: "B1", By: by})
	}
	out := moved(phone, 1, 0, custody.Out)
	for name, c := range map[string]struct {
		events []custody.Event
		now    float64
		why    custody.Reason // "" for no alarm
		due    float64
		late   bool
	}{
		"in":                                   {[]custody.Event{moved(phone, 1, 0, custody.In), began(1, 1, custody.Preparing)}, 2, "", 0, false},
		"before practice: due in 15 min":       {[]custody.Event{out, began(1, 1, custody.Preparing)}, 2, custody.OpenHole, 16, false},
		"before practice: late":                {[]custody.Event{out, began(1, 1, custody.Preparing)}, 17, custody.OpenHole, 16, true},
		"a seat does not help before practice": {[]custody.Event{out, seat(1, 0, "Bo"), began(1, 1, custody.Preparing)}, 2, custody.OpenHole, 16, false},
		"play, seated":                         {[]custody.Event{out, seat(1, 0, "Bo"), began(1, 1, custody.Play)}, 30, "", 0, false},
		"play, got up":                         {[]custody.Event{out, seat(1, 0, "Bo"), began(1, 1, custody.Play), seat(2, 10, "")}, 10.5, custody.OpenHole, 11, false},
		"still open in the intermission":       {[]custody.Event{out, seat(1, 0, "Bo"), began(1, 1, custody.Play), seat(2, 10, ""), began(2, 12, custody.Intermission)}, 13, custody.OpenHole, 11, true},
		"lock-up, at the hole":                 {[]custody.Event{out, began(1, .5, custody.Play), began(2, 1, custody.LockUp)}, 5, custody.NotCounted, 31, false},
		"lock-up, stored":                      {[]custody.Event{moved(phone, 1, 0, custody.Stored), began(1, 1, custody.LockUp)}, 50, "", 0, false},
		"missing":                              {[]custody.Event{moved(phone, 1, 3, custody.Missing)}, 4, custody.IsMissing, 3, true},
		"damaged":                              {[]custody.Event{moved(phone, 1, 3, custody.Damaged)}, 4, custody.IsDamaged, 3, true},
		"returned, not yet counted":            {[]custody.Event{moved(phone, 1, 3, custody.Missing), moved(phone, 2, 5, custody.Returned)}, 6, custody.NotCounted, 5, true},
		"retired":                              {[]custody.Event{moved(phone, 1, 3, custody.Damaged), event(phone, 9, 4, custody.Retired{Cover: "B1-1"}), began(1, 5, custody.Play)}, 20, "", 0, false},
	} {
		b := custody.Fold(custody.HistoryOf(append([]custody.Event{issued(0, -60)}, c.events...)), day, at(c.now))
		switch {
		case c.why == "" && len(b.Alarms) == 0:
		case c.why == "" || len(b.Alarms) != 1:
			t.Errorf("%s: %+v", name, b.Alarms)
		default:
			if a := b.Alarms[0]; a.Why != c.why || !a.Due.Equal(at(c.due)) || a.Late != c.late || a.Hole != "B1" {
				t.Errorf("%s: %+v, want %s due %v, late %v", name, a, c.why, at(c.due), c.late)
			}
		}
	}
}

// A spare in its hole closes it, whatever became of the other cover.
func TestASpareClosesTheHole(t *testing.T) {
	spare := event(phone, 50, -59, custody.Issued{Cover: "B1-2", Hole: "B1"})
	in := event(phone, 51, 4, custody.Moved{Cover: "B1-2", State: custody.In})
	b := custody.Fold(custody.HistoryOf([]custody.Event{issued(0, -60), spare, began(1, 0, custody.Play), moved(phone, 1, 3, custody.Missing), in}), day, at(10))
	if len(b.Alarms) != 1 || b.Alarms[0].Why != custody.IsMissing || !b.Holes[0].Closed {
		t.Errorf("%+v, %+v", b.Holes, b.Alarms)
	}
}

func TestDaysTurnAtFour(t *testing.T) {
	zone := time.FixedZone("UTC-5", -5*3600)
	for clock, want := range map[string]string{"2026-11-28T04:00:00": "2026-11-28", "2026-11-29T03:59:59": "2026-11-28", "2026-11-29T00:10:00": "2026-11-28"} {
		at, err := time.ParseInLocation("2006-01-02T15:04:05", clock, zone)
		if err != nil {
			t.Fatal(err)
		}
		if d := custody.DayOf(at); d.Date() != want || !d.Contains(at) {
			t.Errorf("%s belongs to %s", clock, d.Date())
		}
	}
}

// A spare pane that an incident takes is no longer there.
func TestSparePanesCount(t *testing.T) {
	broke := event(phone, 3, 5, custody.Incident{What: custody.BrokenPane, Hole: "B1", Spare: true})
	b := custody.Fold(custody.HistoryOf([]custody.Event{event(phone, 1, 0, custody.Stocked{Hole: "B1", Panes: 2}), broke}), day, at(10))
	if b.Holes[0].Panes != 1 {
		t.Errorf("%d spare panes", b.Holes[0].Panes)
	}
}

func TestDayLinks(t *testing.T) {
	l := custody.LinkFor("l1", "east", "gate 4", day)
	token := l.Token("secret")
	if got, err := custody.OpenLink(token, "secret", at(0)); err != nil || got != l {
		t.Errorf("%+v, %v", got, err)
	}
	said, sign, _ := strings.Cut(token, ".")
	for name, c := range map[string]struct {
		token, secret string
		now           time.Time
		want          error
	}{
		"another desk's": {token, "other", at(0), custody.ErrLinkForged},
		"expired":        {token, "secret", day.To, custody.ErrLinkEnded},
		"changed":        {said + "A." + sign, "secret", at(0), custody.ErrLinkForged},
		"unsigned":       {said, "secret", at(0), custody.ErrLinkForged},
		"empty":          {"", "secret", at(0), custody.ErrLinkForged},
	} {
		if _, err := custody.OpenLink(c.token, c.secret, c.now); err != c.want {
			t.Errorf("%s: %v", name, err)
		}
	}
	h := custody.HistoryOf([]custody.Event{event(phone, 1, 0, custody.LinkMade{Link: l}), event(phone, 2, 1, custody.LinkRevoked{Link: "l1"})})
	if !h.Revoked(l) || h.Revoked(custody.Link{ID: "l2"}) {
		t.Error("revoked links")
	}
}

// What comes through in an hour, for as long as the hole was open: play counts with the
// rate of play, practice and warm-up with that of practice, and nobody shoots otherwise.
func TestExpectedPucksOfOpenMinutes(t *testing.T) {
	guard := puck.Guard{Hole: "B1", Game: puck.Passes{PerHour: .3, PerHourHigh: .6}, Practice: puck.Passes{PerHour: .1, PerHourHigh: .2}}
	open := map[custody.Phase]time.Duration{custody.Play: 90 * time.Minute, custody.Practice: 20 * time.Minute, custody.WarmUp: 10 * time.Minute, custody.Closed: 9 * time.Hour}
	got := custody.Expect([]custody.Hole{{ID: "B1", Open: open}, {ID: "B9", Open: open}}, []puck.Guard{guard})
	if len(got) != 1 || math.Abs(got[0].Play.Expected-.45) > 1e-12 || math.Abs(got[0].Play.ExpectedHigh-.9) > 1e-12 || math.Abs(got[0].Practice.Expected-.05) > 1e-12 {
		t.Errorf("%+v", got)
	}
}
