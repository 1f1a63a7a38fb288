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
func (s *Shelf) Night(ctx context.Context, g Games, id string) (n Night, err error) {
	n.Before = &seat.Ledger{}
	err = s.nights(ctx, g, func(one Night) bool {
		n = one
		return one.Game.ID != id
	}, id)
	return n, err
}

// Seatings seats all games of a season that are played, in their order.
func (s *Shelf) Seatings(ctx context.Context, g Games) (out []seat.Seating, err error) {
	err = s.nights(ctx, g, func(n Night) bool {
		out = append(out, n.Seating)
		return true
	}, "")
	return out, err
}

// nights seats the games of a season that are played, and that of an id, one after another
// until see returns false. The ledger before a game is see's until it returns.
func (s *Shelf) nights(ctx context.Context, g Games, see func(Night) bool, id string) error {
	n := Night{Before: &seat.Ledger{}}
	var err error
	if n.Table, err = s.Score(ctx, g); err != nil {
		return err
	}
	row, err := s.rows.get(ctx, g.Document.ID, func(context.Context) (*row, error) { return &row{}, nil })
	if err != nil {
		return err
	}
	row.mu.Lock()
	defer row.mu.Unlock()
	row.follow(g)
	at := 0
	for _, n.Game = range g.Season.Games {
		switch {
		case n.Game.Off && n.Game.ID != id:
			continue
		case n.Game.Off:
			n.Night, n.Seating = g.Season.Night(n.Table, n.Game), seat.Seating{}
			see(n)
			return nil
		}
		if n.Night, n.Seating, err = row.seat(ctx, at, n); err != nil {
			return fmt.Errorf("game %s: %w", n.Game.ID, err)
		}
		if !see(n) {
			return nil
		}
		n.Before.Enter(&n.Night, n.Seating)
		at++
	}
	return nil
}

// row is the games of a season that were seated last, one after another.
type row struct {
	mu     sync.Mutex
	of     Games
	nights []rowNight
}

type rowNight struct {
	game    game.Game
	night   seat.Night
	seating seat.Seating
}

// follow forgets the games of the row from the first on whose seating problem may have
// changed since.
func (r *row) follow(g Games) {
	was := r.of
	r.of, r.of.Text = g, nil
	if was.key() == g.key() {
		return
	}
	keep := 0
	if was.grounds == g.grounds {
		stirred := g.Season.Stirred(was.Season)
		for _, is := range g.Season.Games {
			if is.Off {
				continue
			}
			if keep == len(r.nights) || stirred(is) || !reflect.DeepEqual(r.nights[keep].game, is) {
				break
			}
			keep++
		}
	}
	r.nights = r.nights[:keep]
}

// seat returns the row's game at a place as it is a problem, and its seats.
func (r *row) seat(ctx context.Context, at int, n Night) (seat.Night, seat.Seating, error) {
	if at < len(r.nights) {
		return r.nights[at].night, r.nights[at].seating, nil
	}
	night := r.of.Season.Night(n.Table, n.Game)
	seating, err := seat.Assign(ctx, &night, n.Before)
	if err == nil {
		r.nights = append(r.nights, rowNight{n.Game, night, seating})
	}
	return night, seating, err
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
