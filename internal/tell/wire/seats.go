package wire

import (
	"example.org/rinkpane/internal/decide/seat"
)

// Seats encodes the seats of a season. Names are the contract's.
func Seats(s seat.Answer) Object {
	var games []Object
	for _, n := range s.Season.Nights {
		if s.Only == "" || s.Only == n.Game {
			games = append(games, seating(n))
		}
	}
	o := Object{"games", list(games), "ledger", Accounts(&s.Season.Ledger), "level", s.Season.Ledger.Level()}
	if s.Next != nil {
		o = append(o, "next", seating(*s.Next))
	}
	if s.Price != nil {
		o = append(o, "price", price(*s.Price))
	}
	if s.Compare != nil {
		var rules []Object
		for _, c := range append([]seat.Season{s.Season}, s.Compare...) {
			rules = append(rules, spread(c))
		}
		o = append(o, "rules", list(rules))
	}
	if s.Redo != nil {
		o = append(o, "redo", Each(s.Redo, func(r seat.Redo) Object {
			return Object{"game", r.Game, "period", r.Seat.Period, "hole", r.Seat.Hole, "who", r.Seat.Who, "why", r.Why, "moved_m", r.By}
		}))
	}
	if s.Ceiling >= 0 {
		o = append(o, "ceiling", s.Ceiling)
	}
	return o
}

func seating(n seat.Seating) Object {
	return Object{
		"id", n.Game,
		"seats", Each(n.Seats, oneSeat),
		"kept", Each(n.Kept, func(k seat.Kept) Object {
			return Object{"period", k.Period, "hole", k.Hole, "for", k.For, "rule", k.Rule}
		}),
		"not_kept", Each(n.Unkept, func(u seat.Unkept) Object {
			return Object{"period", u.Period, "where", u.Where, "holes", u.Lacks, "for", u.For, "rule", u.Rule}
		}),
		"value", n.Value,
		"proof", Object{"by", n.Proof.By, "value_nights", n.Proof.Value, "bound_nights", n.Proof.Bound, "gap_nights", n.Proof.Gap()},
		"people", Each(n.People, func(p seat.Outcome) Object {
			return Object{"who", p.Who, "worth", p.Worth, "could", p.Could, "share", p.Share(), "weight", p.Weight, "periods", p.Periods, "moves", p.Moves, "why", string(p.Why)}
		}),
	}
}

func oneSeat(s seat.Seat) Object { return Object{"period", s.Period, "hole", s.Hole, "who", s.Who} }

// Accounts encodes a season's ledger.
func Accounts(l *seat.Ledger) []Object {
	return Each(l.Accounts(), func(a seat.Account) Object {
		return Object{"who", a.Who, "asked_nights", a.Asked, "had_nights", a.Had, "share", known("share", a.Share()), "owed_nights", l.Owed(a.Who),
			"games", a.Games, "seated", a.Seated, "late", a.Late, "missed", a.Missed}
	})
}

func price(p seat.Price) Object {
	return Object{
		"wish", Each(p.Wish, oneSeat), "nights", p.Nights, "worth", p.Worth,
		"changes", Each(p.Change, func(c seat.Change) Object {
			return Object{"who", c.Who, "worth", c.By, "from", c.From, "to", c.To}
		}),
		"with", seating(p.With),
	}
}

func spread(s seat.Season) Object {
	x := s.Spread()
	return Object{"rule", s.Rule, "games", x.Games, "least", x.Least, "most", x.Most, "mean", x.Mean, "deviation", x.Deviation, "worst_off", x.WorstOff, "best_off", x.BestOff, "nights_had", x.Nights}
}
