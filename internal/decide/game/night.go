package game

import (
	"context"

	"example.org/rinkpane/internal/decide/seat"
)

// Night returns the seating problem of a game: names and numbers only.
func (s Season) Night(t *Table, g Game) seat.Night {
	asks := s.Asks(g)
	n := seat.Night{Game: g.ID, Holes: s.Holes, Move: s.MoveCost, Whole: s.WholeGame}
	for _, a := range asks {
		n.Asks = append(n.Asks, seat.Ask{Who: a.ID, Must: a.Must, Late: a.Late, NoShow: a.NoShow, Asked: a.Asked})
	}
	for period := 1; period <= g.Periods; period++ {
		rows := make([][]float64, len(asks))
		for i, a := range asks {
			rows[i] = s.row(t, g, a, period)
		}
		n.Worth = append(n.Worth, rows)
	}
	if !g.Off {
		n.Fixed = s.ByHand(g)
	}
	keeper{s, g, asks, &n}.keep()
	return n
}

// ByHand returns the seats that hands gave in a game, period by period.
func (s Season) ByHand(g Game) (out []seat.Seat) {
	for _, f := range s.Fixed {
		for period := 1; period <= g.Periods; period++ {
			if f.Game == g.ID && covers(f.Periods, period) {
				out = append(out, seat.Seat{Period: period, Hole: f.Hole, Who: f.Who})
			}
		}
	}
	return out
}

// Nights returns the seating problems of the games that are played, in their order.
func (s Season) Nights(t *Table) (out []seat.Night) {
	for _, g := range s.Games {
		if !g.Off {
			out = append(out, s.Night(t, g))
		}
	}
	return out
}

// Seated returns the seating of one game that is played: what hands gave, and the rest as
// the season's rule has it after the games before.
func (s Season) Seated(ctx context.Context, id string) (seat.Seating, error) {
	table, err := s.Score(ctx)
	if err != nil {
		return seat.Seating{}, err
	}
	a, err := seat.Solve(ctx, s.Nights(table), seat.Question{Only: id})
	if err != nil {
		return seat.Seating{}, err
	}
	night, _ := a.Night()
	return night, nil
}

// row returns what each hole is worth to a request in a period.
func (s Season) row(t *Table, g Game, a Ask, period int) []float64 {
	out := make([]float64, len(s.Holes))
	kinds, bag := a.Request.Follows.kinds(g, period), t.bags[bagKey(a.Lenses)]
	for i, hole := range s.Holes {
		v := bag[t.holes[hole]].view(kinds)
		if out[i] = v.Value; v.Value == 0 || !s.barred(g, a, period, hole).IsZero() {
			out[i] = seat.Impossible
		}
	}
	return out
}
