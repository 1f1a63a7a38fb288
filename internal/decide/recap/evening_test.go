package recap_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/decide/seat"
)

// TestSeatsThatWereSolved stand as a seating has them, periods in a row, with names.
func TestSeatsThatWereSolved(t *testing.T) {
	s := game.Season{People: []game.Person{{ID: "ann", Name: "Ann"}, {ID: "bo", Name: "Bo"}}}
	by := seat.Seating{Seats: []seat.Seat{{Period: 1, Hole: "B1", Who: "ann"}, {Period: 1, Hole: "A1", Who: "bo"}, {Period: 2, Hole: "B1", Who: "ann"}}}
	e := evening().Seated(s, by)
	if len(e.Seats) != 2 || e.Seats[0].Name != "Ann" || !slices.Equal(e.Seats[0].Periods, []int{1, 2}) || !slices.Equal(e.Seats[1].Periods, []int{1}) {
		t.Errorf("%+v", e.Seats)
	}
	if got := e.Match([]recap.Frame{frame("x", "20:10:00")}, nil, map[string]recap.Owner{"x": {Who: "ann"}})[0]; got.Hole != "B1" || got.Credit != "Ann" {
		t.Errorf("%+v", got)
	}
}

// TestOpenMinutes counts by hand: a cover out from ten minutes before the game on, back in
// after 25 minutes of it: 25 minutes, in the rink's zone or in universal time.
func TestOpenMinutes(t *testing.T) {
	where := time.FixedZone("", -5*3600)
	for _, universal := range []bool{false, true} {
		e := evening()
		e.Universal = universal
		zone := where
		if universal {
			zone = time.UTC
		}
		on := func(clock string) time.Time {
			c := at(clock)
			return time.Date(c.Year(), c.Month(), c.Day(), c.Hour(), c.Minute(), c.Second(), 0, zone)
		}
		var events []custody.Event
		for i, f := range []struct {
			clock string
			fact  custody.Fact
		}{
			{"18:00:00", custody.Issued{Cover: "c1", Hole: "B1"}},
			{"18:01:00", custody.Moved{Cover: "c1", State: custody.In}},
			{"18:50:00", custody.Moved{Cover: "c1", State: custody.Out}},
			{"19:25:00", custody.Moved{Cover: "c1", State: custody.In}},
			{"20:50:00", custody.Moved{Cover: "c1", State: custody.Out}},
		} {
			events = append(events, custody.Event{ID: custody.IDOf("00000000000000aa", uint64(i+1)), Told: on(f.clock), Kept: on(f.clock), Fact: f.fact})
		}
		got := e.Open(custody.HistoryOf(events), where)
		if len(got) != 1 || got["B1"] != 25*time.Minute {
			t.Errorf("universal %v: %v", universal, got)
		}
	}
	if got := (recap.Evening{}).Open(nil, time.UTC); len(got) != 0 {
		t.Errorf("no game: %v", got)
	}
}

// TestFramesOfTwoGames are told apart, each reason once with its count.
func TestFramesOfTwoGames(t *testing.T) {
	e := evening()
	e.Others = []recap.Stage{{Name: "g2", From: at("22:00:00"), To: at("23:00:00")}}
	frames := []recap.Frame{frame("x", "22:10:00"), frame("x", "22:20:00"), frame("x", "05:00:00"), frame("w", "19:20:00")}
	d := recap.Doubts(e.Match(frames, nil, nil))
	if len(d) != 3 || d[0].Sure != recap.Ambiguous || d[1].Why != "taken outside the game's day, on 2026-11-28" || d[2].Why != "taken at game g2" || d[2].Frames != 2 || !strings.HasSuffix(d[2].First, "22:10:00") {
		t.Errorf("%+v", d)
	}
}
