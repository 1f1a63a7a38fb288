package game

import (
	"example.org/rinkpane/internal/decide/seat"
)

// Night returns the seating problem of a game: names and numbers only.
func (s Season) Night(t *Table, g Game) seat.Night {
	asks := s.Asks(g)
	n := seat.Night{Game: g.ID, Holes: s.Holes, Move: s.MoveCost, Whole: s.WholeGame, Kept: s.kept(g, asks)}
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
	for _, f := range s.Fixed {
		for period := 1; period <= g.Periods; period++ {
			if f.Game == g.ID && !g.Off && covers(f.Periods, period) {
				n.Fixed = append(n.Fixed, seat.Seat{Period: period, Hole: f.Hole, Who: f.Who})
			}
		}
	}
	return n
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

// kept returns the holes that reservations keep at a game at which somebody asks for them.
func (s Season) kept(g Game, asks []Ask) []seat.Kept {
	var out []seat.Kept
	for _, r := range s.Reservations {
		var who []string
		for _, a := range asks {
			if a.Camera == r.For {
				who = append(who, a.ID)
			}
		}
		if len(who) == 0 || !r.Games.Has(g) {
			continue
		}
		for _, hole := range r.Holes {
			for period := 1; period <= g.Periods; period++ {
				if covers(r.Periods, period) {
					out = append(out, seat.Kept{Hole: hole, Period: period, For: who})
				}
			}
		}
	}
	return out
}
