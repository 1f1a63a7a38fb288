package seat

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/measure/cores"
)

// Question is what is asked of a season's nights.
type Question struct {
	Only    string // one game's id: what else could be there is asked of it
	Wish    []Seat // with Only: what these seats would cost the others
	Compare bool   // the season by other rules, and what no rule passes
	Seed    uint64 // of the lottery
}

// Answer is a season seated by the level rule, and what else was asked.
type Answer struct {
	Season  Season
	Only    string
	Next    *Seating // the second best seating of that game; nil when there is none
	Price   *Price
	Compare []Season // by the other rules
	Redo    []Redo   // seats that a changed plan touches, where one was given
	// Ceiling is the share, in [0, 1], that the worst off can have at most by any rule;
	// below zero where it was not asked for.
	Ceiling float64
}

// Night returns the seating of the game that was asked for.
func (a Answer) Night() (Seating, bool) {
	i := slices.IndexFunc(a.Season.Nights, func(s Seating) bool { return s.Game == a.Only })
	if i < 0 {
		return Seating{}, false
	}
	return a.Season.Nights[i], true
}

// Solve seats a season's nights, one after another, and answers what else is asked.
// Of a game it seats only what was played before it. An error names the game.
func Solve(ctx context.Context, nights []Night, q Question) (a Answer, err error) {
	a = Answer{Only: q.Only, Ceiling: -1}
	if q.Only != "" {
		i := slices.IndexFunc(nights, func(n Night) bool { return n.Game == q.Only })
		if i < 0 {
			var games []string
			for _, n := range nights {
				games = append(games, n.Game)
			}
			return a, unknown("game", q.Only, games)
		}
		nights = nights[:i+1]
	}
	if a.Season, err = Run(ctx, nights, Level, q.Seed); err != nil {
		return a, err
	}
	if q.Only != "" {
		return a, a.around(ctx, nights, q.Wish)
	}
	if !q.Compare {
		return a, nil
	}
	others := slices.DeleteFunc(Rules(), func(r Rule) bool { return r == Level })
	a.Compare = make([]Season, len(others))
	if err = cores.Try(len(others), func(i int) (err error) {
		a.Compare[i], err = Run(ctx, nights, others[i], q.Seed)
		return err
	}); err == nil {
		a.Ceiling, err = a.Season.Ceiling(ctx, nights)
	}
	return a, err
}

// around answers what else the last night could be.
func (a *Answer) around(ctx context.Context, nights []Night, wish []Seat) error {
	last := len(nights) - 1
	var before Ledger
	for i := range nights[:last] {
		before.Enter(&nights[i], a.Season.Nights[i])
	}
	n, night := &nights[last], a.Season.Nights[last]
	next, is, err := Next(ctx, n, &before, night)
	if err != nil {
		return inGame(n, err)
	}
	if is {
		a.Next = &next
	}
	if len(wish) == 0 {
		return nil
	}
	price, err := PriceOf(ctx, n, &before, night, wish)
	if err != nil {
		return inGame(n, err)
	}
	a.Price = &price
	return nil
}
