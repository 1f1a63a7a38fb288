package custody

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"time"
)

// Season is what an invented season is made of.
type Season struct {
	Arena    string
	Holes    []string            // cut holes with covers
	Panes    map[string]string   // by hole
	Drawn    map[string][]Limits // by hole: what inspections hold it to
	Revision string              // of the document that was approved, SHA-256
	Version  int
	Until    time.Time // the season's last day is this one; nothing happens after it
	Games    int       // home games, one every fourth day
	Seed     uint64
}

// SeasonOf returns the usual invented season: 41 home games.
func SeasonOf(arena string, until time.Time) Season {
	return Season{Arena: arena, Panes: map[string]string{}, Drawn: map[string][]Limits{}, Until: until, Games: 41, Seed: 1}
}

// Rates of the invented season, events in an hour that a hole is open: own choices that
// give a chart something to show; they say nothing about a real rink. One hole has more.
const (
	demoPucks    = 0.020
	demoUnlucky  = 0.160
	demoNearMiss = 0.030
)

// demoDevice is the device of the invented events.
const demoDevice = "d0000000000000de"

const daysApart = 4 // from game to game

// Events returns the season's events: labels, an approval, inspections, each game's
// covers, seats and phases, incidents, a cover that was lost and found, one that broke,
// and a correction. The same season gives the same events to the byte.
func (s Season) Events() []Event {
	t := telling{Season: s, lot: rand.New(rand.NewPCG(s.Seed, uint64(s.Games)))}
	first := DayOf(s.Until).From.AddDate(0, 0, -daysApart*(s.Games-1))
	t.before(first.AddDate(0, 0, -7))
	for g := range s.Games {
		t.game(g, first.AddDate(0, 0, daysApart*g))
	}
	return slices.DeleteFunc(t.events, func(e Event) bool { return e.Told.After(s.Until) })
}

// telling is a season being told.
type telling struct {
	Season
	lot    *rand.Rand
	events []Event
}

// tell adds an event and returns its id.
func (t *telling) tell(at time.Time, who string, f Fact) ID {
	id := IDOf(demoDevice, uint64(len(t.events)+1))
	t.events = append(t.events, Event{ID: id, Arena: t.Arena, Told: at.UTC(), Who: who, Fact: f})
	return id
}

// People of the invented season.
const (
	demoSteward   = "Ines Marlow"
	demoSecond    = "Tobias Renn"
	demoOperator  = "Hedda Quist"
	demoCutter    = "Bram Osei"
	demoInspector = "Lene Farrow"
)

func demoGuests() []string { return []string{"Milo Tern", "Suki Arden", "Paul Wren", "Edda Lund"} }

// before tells what was done before the season: labels, approval, inspections, spares.
func (t *telling) before(day time.Time) {
	at := day.Add(6 * time.Hour)
	t.tell(at, demoOperator, Put{t.Version, t.Revision, []Approver{{Operator, demoOperator}, {Contractor, demoCutter}}})
	t.tell(at.Add(2*time.Hour), demoCutter, Answered{t.Revision, Contractor, true, "As cut."})
	t.tell(at.Add(3*time.Hour), demoOperator, Answered{t.Revision, Operator, true, ""})
	for i, h := range t.Holes {
		at := at.Add(time.Duration(4*60+10*i) * time.Minute)
		for n := range 2 {
			t.tell(at, demoSteward, Issued{cover(h, n+1), h})
		}
		t.tell(at, demoSteward, Stocked{h, 1})
		t.tell(at.Add(time.Minute), demoSteward, Moved{Cover: cover(h, 1), State: In})
		how := asDrawn
		switch i { // of five; the first is inspected again later
		case 1:
			how = tooWide
		case 2:
			how = byRule
		}
		t.tell(at.Add(2*time.Minute), demoInspector, t.inspected(h, how))
	}
}

// cover names the n-th cover of a hole.
func cover(hole string, n int) string { return fmt.Sprintf("%s-%d", hole, n) }

// game tells one day: the morning skate, the game, and lock-up.
func (t *telling) game(g int, day time.Time) {
	at := func(hour, minute int) time.Time {
		return day.Add(time.Duration(hour)*time.Hour + time.Duration(minute)*time.Minute - dayTurns)
	}
	t.phase(at(9, 0), Preparing)
	for _, h := range t.Holes {
		t.tell(at(9, 2), demoSteward, Moved{Cover: cover(h, 1), State: In})
	}
	t.phase(at(10, 0), Practice)
	if h := t.Holes[g%len(t.Holes)]; g%3 == 0 { // somebody tries a lens in the morning
		t.open(h, at(10, 5), at(10, 25), "Milo Tern")
	}
	t.phase(at(11, 0), Closed)
	t.phase(at(18, 20), WarmUp)
	seats := t.lot.Perm(len(t.Holes))[:min(len(t.Holes), 3+g%2)]
	slices.Sort(seats)
	for i, n := range seats {
		t.open(t.Holes[n], at(18, 22+i), at(18, 42), demoGuests()[i])
	}
	for period := range 3 {
		begin := at(19, 55*period)
		t.phase(begin, Play)
		for i, n := range seats {
			late := time.Duration(t.lot.IntN(4)) * time.Minute // somebody puts the cover in after the siren
			t.open(t.Holes[n], begin.Add(time.Duration(i+1)*30*time.Second), begin.Add(38*time.Minute+late), demoGuests()[i])
		}
		t.phase(begin.Add(38*time.Minute), Intermission)
	}
	t.phase(at(21, 30), LockUp)
	t.oddities(g, at(21, 35))
	t.phase(at(22, 10), Closed)
}

func (t *telling) phase(at time.Time, p Phase) { t.tell(at, demoSecond, Began{p}) }

// open tells of a hole that is worked for a while, and what came through it.
func (t *telling) open(hole string, from, to time.Time, by string) {
	t.tell(from, demoSteward, Seated{hole, by})
	t.tell(from.Add(5*time.Second), by, Moved{Cover: cover(hole, 1), State: Out})
	pucks := demoPucks
	if hole == t.Holes[0] {
		pucks = demoUnlucky
	}
	t.mishap(hole, PuckThrough, pucks, from, to)
	t.mishap(hole, NearMiss, demoNearMiss, from, to)
	t.tell(to, by, Moved{Cover: cover(hole, 1), State: In})
	t.tell(to.Add(20*time.Second), demoSteward, Seated{hole, ""})
}

func (t *telling) mishap(hole string, what Mishap, perHour float64, from, to time.Time) {
	span := to.Sub(from)
	if t.lot.Float64() < perHour*span.Hours() {
		in := time.Duration(t.lot.Float64() * float64(span))
		t.tell(from.Add(in), demoSteward, Incident{What: what, Hole: hole, Pane: t.Panes[hole], Minute: 1 + int(in.Minutes()/2), Words: "Invented, for the demo."})
	}
}

// oddities tells what goes wrong in a season: a cover is lost and found, one breaks and
// is replaced, a pane breaks, somebody presses the wrong button.
func (t *telling) oddities(g int, at time.Time) {
	h := t.Holes[min(1, len(t.Holes)-1)]
	switch g {
	case 7:
		t.tell(at, demoSteward, Moved{Cover: cover(h, 1), State: Missing, Words: "Not at the hole, not in the box."})
		t.tell(at.Add(10*time.Minute), demoSteward, Moved{Cover: cover(h, 2), State: In})
		t.tell(at.Add(20*time.Minute), demoSecond, Moved{Cover: cover(h, 1), State: Returned, Words: "Under the bench."})
		t.tell(at.Add(22*time.Minute), demoSecond, Moved{Cover: cover(h, 1), State: In})
		t.tell(at.Add(23*time.Minute), demoSecond, Moved{Cover: cover(h, 2), State: Stored})
	case 15:
		t.tell(at, demoSteward, Moved{Cover: cover(h, 2), State: Damaged, Words: "Tab broken off."})
		t.tell(at.Add(time.Minute), demoSteward, Retired{cover(h, 2)})
		t.tell(at.Add(2*time.Minute), demoSteward, Issued{cover(h, 3), h})
	case 22:
		t.tell(at, demoSteward, Incident{What: BrokenPane, Hole: t.Holes[0], Pane: t.Panes[t.Holes[0]], Spare: true, Words: "Invented, for the demo: cracked from the lower corner."})
		t.tell(at.Add(12*time.Hour), demoCutter, Replaced{t.Holes[0], t.Panes[t.Holes[0]]})
		t.tell(at.Add(13*time.Hour), demoInspector, t.inspected(t.Holes[0], asDrawn))
	case 30:
		wrong := t.tell(at, demoSecond, Moved{Cover: cover(h, 1), State: Damaged})
		t.tell(at.Add(time.Minute), demoSecond, Withdrawn{})
		t.events[len(t.events)-1].Corrects = wrong
	}
}
