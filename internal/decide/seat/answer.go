package seat

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/form"
)

// Question is what is asked of a season's nights.
type Question struct {
	Only    string // one game's id: what else could be there is asked of it
	Wish    []Seat // with Only: what these seats would cost the others; with Compare: in every game
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
			return a, form.Known("game", q.Only, games)
		}
		before, err := Run(ctx, nights[:i], Level, q.Seed)
		if err != nil {
			return a, err
		}
		return One(ctx, &nights[i], &before.Ledger, q.Wish)
	}
	if a.Season, err = Run(ctx, nights, Level, q.Seed); err != nil {
		return a, err
	}
	if !q.Compare {
		return a, nil
	}
	return a, a.compare(ctx, nights, q)
}

// One seats one game when what was before it is known, and answers what else the
// night could be: what a change of one game asks for.
func One(ctx context.Context, n *Night, before *Ledger, wish []Seat) (a Answer, err error) {
	a = Answer{Only: n.Game, Ceiling: -1, Season: Season{Rule: Level, Proved: map[Proved]int{}}}
	night, err := Assign(ctx, n, before)
	if err != nil {
		return a, inGame(n, err)
	}
	a.Season.Nights = []Seating{night}
	a.Season.Proved[night.Proof.By]++
	a.Season.Ledger = before.with(n, night)
	return a, a.around(ctx, n, before, wish)
}

// compare seats the season by the other rules, and by the level rule with the wish
// fixed in every game that can have it.
func (a *Answer) compare(ctx context.Context, nights []Night, q Question) (err error) {
	others := []Rule{FirstCome, Lottery}
	if len(q.Wish) > 0 {
		others = append(others, WithWish)
	}
	a.Compare = make([]Season, len(others))
	if err = cores.Try(len(others), func(i int) (err error) {
		these := nights
		if others[i] == WithWish {
			these = wishing(nights, q.Wish)
		}
		a.Compare[i], err = Run(ctx, these, others[i], q.Seed)
		return err
	}); err == nil {
		a.Ceiling, err = a.Season.Ceiling(ctx, nights)
	}
	return err
}

// wishing fixes in each night the seats of a wish that can be had there.
func wishing(nights []Night, wish []Seat) []Night {
	out := slices.Clone(nights)
	for i, n := range out {
		for _, s := range wish {
			n.Fixed = append(slices.Clip(n.Fixed), s)
			if n.check() == nil {
				out[i].Fixed = n.Fixed
			}
			n.Fixed = out[i].Fixed
		}
	}
	return out
}

// around answers what else the last night could be.
func (a *Answer) around(ctx context.Context, n *Night, before *Ledger, wish []Seat) error {
	night := a.Season.Nights[len(a.Season.Nights)-1]
	next, is, err := Next(ctx, n, before, night)
	if err != nil {
		return inGame(n, err)
	}
	if is {
		a.Next = &next
	}
	if len(wish) == 0 {
		return nil
	}
	price, err := PriceOf(ctx, n, before, night, wish)
	if err != nil {
		return inGame(n, err)
	}
	a.Price = &price
	return nil
}
