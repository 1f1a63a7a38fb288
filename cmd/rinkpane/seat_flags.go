package main

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/measure/form"
)

// wishes reads what --wish says of every game.
func (f seatFlags) wishes(s game.Season) ([]seat.Seat, error) {
	var anybody []game.Ask
	for _, p := range s.People {
		anybody = append(anybody, game.Ask{Person: p})
	}
	return readSeats(s.Holes, game.Game{Periods: game.Periods}, anybody, "wish", f.wish)
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
		if err := cmp.Or(form.Known(what, words[0], ids), form.Known("hole that is given", words[1], holes)); err != nil {
			return nil, fmt.Errorf("--%s: %w", flag, err)
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
