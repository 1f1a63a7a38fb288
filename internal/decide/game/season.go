package game

import (
	"slices"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// Season is a checked games document: every id in it is known. Make one with [Read].
// Treat its slices as read only.
type Season struct {
	Name, Note string
	Arena      arena.Arena
	ArenaFile  string // as the document names it
	Kit        kit.Kit
	Holes      []string // that are given, in the arena's order
	// Planned says that holes are among them which are not cut yet, since the document
	// names none and none is cut.
	Planned      bool
	Closing      time.Duration // requests are due this long before a game starts; 0: at any time
	MoveCost     float64       // of changing holes between two periods, in worth, from 0 to 1
	WholeGame    bool          // everybody keeps one hole for the whole game
	People       []Person
	Reservations []Reservation
	Keeps        []rules.Keep // what the rule sets in force keep for cameras: see [Season.Under]
	Closed       []Closed
	Games        []Game // in the order of their starts, then ids
	Requests     []Request
	Fixed        []Fixed
	Revoked      []Revoked
	Bodies       []Body
	Clocks       []Clocked
	Passed       []string // entries of the schedule that are no games, each with its place
}

// Under returns the season under rule sets: what they keep for cameras is kept.
func (s Season) Under(sets rules.Sets) Season {
	s.Keeps = sets.On(s.Arena).Keeps()
	return s
}

// Person returns the person of an id.
func (s Season) Person(id string) (Person, bool) {
	k := slices.IndexFunc(s.People, func(p Person) bool { return p.ID == id })
	if k < 0 {
		return Person{}, false
	}
	return s.People[k], true
}

// Game returns the game of an id.
func (s Season) Game(id string) (Game, bool) {
	k := slices.IndexFunc(s.Games, func(g Game) bool { return g.ID == id })
	if k < 0 {
		return Game{}, false
	}
	return s.Games[k], true
}

// Revocations returns how many links of somebody's card of a game open nothing any more.
func (s Season) Revocations(game, who string) int {
	for _, c := range s.Revoked {
		if c.Game == game && c.Who == who {
			return c.Links
		}
	}
	return 0
}

// WhyClosed says why a hole is not given at a game, "" where it is.
func (s Season) WhyClosed(g Game, hole string) string {
	for _, c := range s.Closed {
		if c.Hole == hole && c.Games.Has(g) {
			return c.Why
		}
	}
	return ""
}

// Closures returns why holes are not given at a game, by hole.
func (s Season) Closures(g Game) map[string]string {
	out := map[string]string{}
	for _, hole := range s.Holes {
		if why := s.WhyClosed(g, hole); why != "" {
			out[hole] = why
		}
	}
	return out
}

// given returns the arena's holes that are given where the document names none: those that
// are cut, else all that are planned.
func given(a arena.Arena) (holes []string, planned bool) {
	for _, state := range []glass.State{glass.Cut, glass.Planned} {
		for _, h := range a.Working() {
			if h.State == state {
				holes = append(holes, h.ID)
			}
		}
		if len(holes) > 0 {
			return holes, state == glass.Planned
		}
	}
	return nil, false
}

// EndOf returns the end of the rink in which a hole of the arena stands: +1 for B, -1 for A.
func (s Season) EndOf(hole string) int {
	h, _ := s.Arena.Hole(hole)
	if s.Arena.Rink.Point(h.Station).X > 0 {
		return +1
	}
	return -1
}
