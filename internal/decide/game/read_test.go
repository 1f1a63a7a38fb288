package game

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/seat"
)

func TestSmallSeasonIsRead(t *testing.T) {
	s := read(t, small, nil)
	if got, want := strings.Join(s.Holes, " "), "B1 B2 B3 A1 A3"; got != want {
		t.Errorf("holes given: %s, want those that are cut: %s", got, want)
	}
	g, _ := s.Game("g1")
	var day []string
	for _, stage := range g.Day {
		day = append(day, stage.Name+" "+stage.At.Format("02. 15:04"))
	}
	if got, want := strings.Join(day, ", "), "practice 28. 10:30, warm-up 28. 18:30, period-1 28. 19:00, lock-up 29. 00:10"; got != want {
		t.Errorf("the day: %s, want %s", got, want)
	}
	var asks []string
	for _, a := range s.Asks(g) {
		asks = append(asks, fmt.Sprintf("%s follows %s must %t late %t", a.ID, a.Request.Follows, a.Must, a.Late))
	}
	want := "ann follows home must true late false; bo follows away-goalkeeper must false late true; tv follows both must false late false"
	if got := strings.Join(asks, "; "); got != want {
		t.Errorf("asks: %s\nwant %s", got, want)
	}
	g2, _ := s.Game("g2")
	if got := s.Asks(g2); len(got) != 2 || got[1].ID != "bo" || !got[1].Must {
		t.Errorf("a seat given by hand is a request: %+v", got)
	}
}

// Each bad input is answered with its place, what was read and the cure.
func TestBadDocumentsAreRefused(t *testing.T) {
	arena, err := files(nil)("quillhaven.yaml")
	if err != nil {
		t.Fatal(err)
	}
	b4off := strings.Replace(readAll(t, arena), "state: planned", "state: off", 1)
	for name, c := range map[string]struct{ old, new, want string }{
		"unknown hole":         {"cannot: [A1]", "cannot: [A11]", `games.yaml:8:68: people[bo].cannot[#1]: no hole is called "A11"; did you mean A1?`},
		"unknown lens":         {"[300-2.8]", "[300-28]", `games.yaml:8:23: people[bo].lenses[#1]: no lens is called "300-28"; did you mean 300-2.8?`},
		"unknown person":       {"who: ann,", "who: anne,", `games.yaml:18:11: requests[#1].who: no person is called "anne"; did you mean ann?`},
		"unknown game":         {"[g1]", "[g9]", `games.yaml:20:23: requests[#3].games[#1]: no game or series is called "g9"; known: g1, g2 or cup`},
		"unknown field":        {"firm: must", "frm: must", `unknown field "frm"; did you mean "firm"?`},
		"no ends":              {"home-attacks: B, ", "", `game "g1", Herons v Otters, says no ends: write home-attacks: B`},
		"a wrong end":          {"home-attacks: B,", "home-attacks: C,", `"C" is no end; write A or B`},
		"no date":              {"date: 2026-11-28", "date: 28.11.2026", `games[g1].date: "28.11.2026" is no date; write year, month and day, as 2026-11-28`},
		"no time":              {`start: "19:00", home: Herons, away: Otters`, `start: "7 pm", home: Herons, away: Otters`, `"7 pm" is no time of day`},
		"stages not in order":  {`warm-up: "18:30"`, `warm-up: "09:30"`, `warm-up at 09:30 is not after practice at 10:30`},
		"a game twice":         {"id: g2, date", "id: g1, date", `"g1" is there already`},
		"a person twice":       {"id: bo,", "id: ann,", `"ann" is there already`},
		"a hole turned off":    {"hole: B3}", "hole: B4}", `"B4" is turned off in the arena`},
		"a hole not given":     {"hole: B3}", "hole: A2}", `"A2" is not among the holes that are given: B1, B2, B3, A1, A3`},
		"a closed hole":        {"hole: B3}", "hole: A3}", `A3 is closed: the inspection refused it`},
		"two in one seat":      {"hole: B3}\n", "hole: B3}\n  - {game: g2, who: ann, hole: B3, periods: [2]}\n", `seats[#2].hole: B3 is given to bo already in game g2, period 2`},
		"one in two seats":     {"hole: B3}\n", "hole: B3}\n  - {game: g2, who: bo, hole: B2, periods: [2]}\n", `seats[#2].who: bo has hole B3 already in game g2, period 2`},
		"no arena":             {"quillhaven.yaml", "nowhere.yaml", `games.yaml:3:8: arena: "nowhere.yaml" cannot be opened: file does not exist`},
		"another kind of file": {"games 1", "arena 1", `"arena 1"; a games document says rinkpane: games 1`},
		"a body twice":         {"requests:", "bodies: [{body: '0042', who: ann}, {body: '0042', hole: B1}]\nrequests:", `bodies[#2].body: "0042" is there already`},
		"nobody's body":        {"requests:", "bodies: [{body: '0042'}]\nrequests:", `bodies[#1].who: is missing; say whose body "0042" is`},
		"a scoreboard":         {"requests:", "clocks: [{game: g1, frame: a.jpg, shows: '2/12.34'}]\nrequests:", `clocks[#1].shows: "2/12.34" is no clock; write PERIOD/MM:SS`},
		"a link of nobody":     {"seats:\n", "revoked: [{game: g1, who: anne, links: 1}]\nseats:\n", `no person is called "anne"; did you mean ann?`},
		"a card twice":         {"seats:\n", "revoked: [{game: g1, who: ann, links: 1}, {game: g1, who: ann, links: 2}]\nseats:\n", `the card of ann at game g1 is there already`},
		"no link":              {"seats:\n", "revoked: [{game: g1, who: ann, links: 0}]\nseats:\n", `write a whole number from 1 to 1000`},
		"a span":               {"closing: 2 d", "closing: soon", `"soon" is no span; write days or hours before the game, as 2 d or 36 h`},
	} {
		text := strings.Replace(small, c.old, c.new, 1)
		if text == small {
			t.Fatalf("%s: the document was not changed", name)
		}
		_, err := Read("games.yaml", strings.NewReader(text), files(map[string]string{"quillhaven.yaml": b4off}))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s:\n got %v\nwant %s", name, err, c.want)
		}
	}
}

func TestArenaTellsEndsWhereTheGameDoesNot(t *testing.T) {
	arena, err := files(nil)("quillhaven.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var text strings.Builder
	if _, err := fmt.Fprint(&text, readAll(t, arena), "\ngame: {home-defends: B}\n"); err != nil {
		t.Fatal(err)
	}
	s := read(t, strings.Replace(small, "home-attacks: B, ", "", 1), map[string]string{"quillhaven.yaml": text.String()})
	g, _ := s.Game("g1")
	if !g.EndsAssumed || g.Ends.Attacks(0, 1) != -1 {
		t.Errorf("assumed %t, home attacks %d first, want the arena's A", g.EndsAssumed, g.Ends.Attacks(0, 1))
	}
	if g, _ := s.Game("g2"); g.EndsAssumed {
		t.Error("ends that the game says are not assumed")
	}
}

func TestNightIsTheSeatingProblem(t *testing.T) {
	s := read(t, small, nil)
	table, err := s.Score(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	g, _ := s.Game("g1")
	n := s.Night(table, g)
	if len(n.Worth) != 3 || len(n.Worth[0]) != 3 || len(n.Worth[0][0]) != len(s.Holes) {
		t.Fatalf("worth of %d periods, want 3 x 3 x %d", len(n.Worth), len(s.Holes))
	}
	at := func(who, hole string, period int) float64 {
		i := slices.IndexFunc(n.Asks, func(a seat.Ask) bool { return a.Who == who })
		return n.Worth[period-1][i][slices.Index(n.Holes, hole)]
	}
	if got := at("bo", "A1", 1); got != seat.Impossible {
		t.Errorf("a hole that bo cannot use is worth %v", got)
	}
	if got := at("tv", "B1", 3); got != seat.Impossible {
		t.Errorf("a period that is not asked for is worth %v", got)
	}
	// Herons attack B first: the holes at B show their goals, and A's do after the change.
	if b, a := at("ann", "B1", 1), at("ann", "A3", 1); b <= 2*a {
		t.Errorf("period 1: B1 is worth %.3f, A3 %.3f, want the end attacked far ahead", b, a)
	}
	if b, a := at("ann", "B1", 2), at("ann", "A3", 2); a <= 2*b {
		t.Errorf("period 2: B1 is worth %.3f, A3 %.3f, want the end attacked far ahead", b, a)
	}
	if len(n.Kept) != 6 || n.Kept[0].Hole != "A1" || n.Kept[0].For[0] != "tv" {
		t.Errorf("kept for broadcast: %+v", n.Kept)
	}
}
