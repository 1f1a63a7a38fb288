package shelf

import (
	"context"
	"fmt"
	"reflect"
	"strings"
	"sync"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/draw/card"
)

// bags names what a season's scores are made from: the arena, the kit, the holes that are
// given, the lenses that people bring.
func (g Games) bags() string {
	key := g.grounds + strings.Join(g.Season.Holes, " ")
	for _, p := range g.Season.People {
		key += "," + strings.Join(p.Lenses, " ")
	}
	return key
}

// Score returns what each hole shows to each set of lenses of a season.
func (s *Shelf) Score(ctx context.Context, g Games) (*game.Table, error) {
	return s.scores.get(ctx, g.bags(), func(ctx context.Context) (*game.Table, error) { return g.Season.Score(ctx) })
}

// Cards returns what the cards of a season stand on.
func (s *Shelf) Cards(ctx context.Context, g Games) (card.Rink, error) {
	r, err := s.rinks.get(ctx, g.bags(), func(ctx context.Context) (card.Rink, error) { return card.Prepare(ctx, g.Season) })
	return r.For(g.Season), err
}

// Night is a game's seats, and what they were worked out from.
type Night struct {
	Game    game.Game
	Table   *game.Table
	Night   seat.Night
	Before  *seat.Ledger // of the games before it
	Seating seat.Seating
}

// Night seats a game of a season and, since the ledger decides what is equal, those before
// it. What did not change since the last time is not worked out anew. The error names the
// game that cannot be seated. A game that is off has no seats.
func (s *Shelf) Night(ctx context.Context, g Games, id string) (Night, error) {
	n := Night{Before: &seat.Ledger{}}
	var err error
	if n.Table, err = s.Score(ctx, g); err != nil {
		return n, err
	}
	row, err := s.rows.get(ctx, g.Document.ID, func(context.Context) (*row, error) { return &row{}, nil })
	if err != nil {
		return n, err
	}
	row.mu.Lock()
	defer row.mu.Unlock()
	at := 0
	for _, n.Game = range g.Season.Games {
		if n.Game.Off && n.Game.ID != id {
			continue
		}
		n.Night = g.Season.Night(n.Table, n.Game)
		if n.Game.Off {
			return n, nil
		}
		if n.Seating, err = row.seat(ctx, at, n.Night, n.Before); err != nil {
			return n, fmt.Errorf("game %s: %w", n.Game.ID, err)
		}
		if n.Game.ID == id {
			return n, nil
		}
		n.Before.Enter(&n.Night, n.Seating)
		at++
	}
	return n, nil
}

// row is the games of a season that were seated last, one after another.
type row struct {
	mu     sync.Mutex
	nights []seat.Night
	seated []seat.Seating
}

// seat returns the seats of the row's game at a place, anew where it or one before it is
// not as it was.
func (r *row) seat(ctx context.Context, at int, n seat.Night, before *seat.Ledger) (seat.Seating, error) {
	if at < len(r.nights) && reflect.DeepEqual(r.nights[at], n) {
		return r.seated[at], nil
	}
	seating, err := seat.Assign(ctx, &n, before)
	if err == nil {
		r.nights, r.seated = append(r.nights[:at], n), append(r.seated[:at], seating)
	}
	return seating, err
}

// SeasonSeats seats all games of a season, by the house's rule and by others beside it.
func (s *Shelf) SeasonSeats(ctx context.Context, g Games) (seat.Answer, error) {
	return s.answers.get(ctx, g.key(), func(ctx context.Context) (seat.Answer, error) {
		table, err := s.Score(ctx, g)
		if err != nil {
			return seat.Answer{}, err
		}
		return seat.Solve(ctx, g.Season.Nights(table), seat.Question{Compare: true, Seed: lotterySeed})
	})
}

// lotterySeed is of the lottery that a season is held against, the command's usual one.
const lotterySeed = 1
