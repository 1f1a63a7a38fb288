package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/measure/form"
)

// wishes reads what --wish says of the game that is told, or of all.
func (f seatFlags) wishes(s game.Season) ([]seat.Seat, error) {
	if f.game != "" {
		return f.seats(s, "wish", f.wish)
	}
	anybody := game.Game{Periods: game.Periods}
	var asks []game.Ask
	for _, p := range s.People {
		asks = append(asks, game.Ask{Person: p})
	}
	return readSeats(s.Holes, anybody, asks, "wish", f.wish)
}

// seats reads what --fix and --wish say of the game that is told.
func (f seatFlags) seats(s game.Season, flag string, said []string) (out []seat.Seat, err error) {
	g, known := s.Game(f.game)
	if !known {
		return nil, nil // seat.Solve names the nearest
	}
	return readSeats(s.Holes, g, s.Asks(g), flag, said)
}

// readSeats reads WHO HOLE, for every period that they ask for, or WHO HOLE PERIOD.
func readSeats(holes []string, g game.Game, asks []game.Ask, flag string, said []string) (out []seat.Seat, err error) {
	var ids []string
	for _, a := range asks {
		ids = append(ids, a.ID)
	}
	for _, text := range said {
		words := strings.Fields(text)
		if len(words) < 2 || len(words) > 3 {
			return nil, fmt.Errorf("--%s %s: write who, a hole and perhaps a period, as 'ann B1' or 'ann B1 2'", flag, form.Quote(text))
		}
		what := "person"
		if g.ID != "" {
			what += " who asks for game " + g.ID
		}
		if err := knownID(flag, what, words[0], ids); err != nil {
			return nil, err
		}
		if err := knownID(flag, "hole that is given", words[1], holes); err != nil {
			return nil, err
		}
		ask := asks[slices.Index(ids, words[0])]
		first, last := 1, g.Periods
		if len(words) == 3 {
			if first, err = strconv.Atoi(words[2]); err != nil || first < 1 || first > g.Periods {
				return nil, fmt.Errorf("--%s %s: no period %s; the game has 1 to %d", flag, form.Quote(text), form.Quote(words[2]), g.Periods)
			}
			last = first
		}
		for p := first; p <= last; p++ {
			if first == last || ask.Wants(p) {
				out = append(out, seat.Seat{Period: p, Hole: words[1], Who: words[0]})
			}
		}
	}
	return out, nil
}
