package seat

import (
	"cmp"
	"context"
	"math"
	"slices"
)

// Assign seats a night: firm requests first, then what is worth most to all
// together, each one's share of the night weighed by the ledger; who came late is
// seated in what the others leave. Equal seatings are decided by name. An error
// names what the night says wrong, or is the context's. The seats stand in the
// ledger once they are entered there.
func Assign(ctx context.Context, n *Night, l *Ledger) (Seating, error) {
	r, err := enter(n)
	if err != nil {
		return Seating{}, err
	}
	return r.assign(ctx, l.weights(n)), ctx.Err()
}

// assign seats who asked in time, then who came late.
func (r *room) assign(ctx context.Context, byAsk []float64) Seating {
	weight := make([]float64, len(r.who))
	late := false
	for i, k := range r.who {
		weight[i] = byAsk[k]
		late = late || r.ask(i).Late
	}
	laid := r.lay(weight, func(i int) bool { return !r.ask(i).Late })
	f := laid.solve(ctx)
	s := r.tell(f.all, weight)
	s.Proof = r.prove(f, s)
	if !late {
		return s
	}
	stay := r.fixed
	defer func() { r.fixed = stay }()
	r.fixed = slices.Clone(stay)
	for i, w := range f.all {
		for p, h := range w {
			if at := (fixed{i, p, int(h)}); h != none && !slices.Contains(stay, at) {
				r.fixed = append(r.fixed, at)
			}
		}
	}
	inTime := s.Proof
	f = r.lay(weight, func(i int) bool { return r.ask(i).Late }).solve(ctx)
	s = r.tell(f.all, weight)
	s.Proof = r.prove(f, s).with(inTime)
	return s
}

// tell turns ways into seats by name, and what they came to.
func (r *room) tell(all []way, weight []float64) Seating {
	n := r.night
	s := Seating{Game: n.Game, Kept: n.Kept, Unkept: n.Unkept, People: make([]Outcome, len(n.Asks))}
	for i, w := range all {
		o := Outcome{Who: r.ask(i).Who, Could: r.could[i], Weight: weight[i]}
		for p := range n.Worth {
			q := min(p, r.periods-1)
			if h := w[q]; h != none && n.Worth[p][r.who[i]][r.hole[h]] >= 0 {
				o.Worth += n.Worth[p][r.who[i]][r.hole[h]]
				o.Periods++
				if q > 0 && w[q-1] != none && w[q-1] != h {
					o.Moves++
				}
				s.Seats = append(s.Seats, Seat{Period: p + 1, Hole: n.Holes[r.hole[h]], Who: o.Who})
			}
		}
		o.Worth -= float64(o.Moves) * r.move(i)
		s.Value += o.Worth
		s.People[r.who[i]] = o
	}
	slices.SortFunc(s.Seats, func(a, b Seat) int {
		return cmp.Or(cmp.Compare(a.Period, b.Period), cmp.Compare(slices.Index(n.Holes, a.Hole), slices.Index(n.Holes, b.Hole)))
	})
	for i := range s.People {
		if s.People[i].Periods == 0 {
			s.People[i].Why = r.why(i, s)
		}
	}
	return s
}

func (r *room) prove(f found, s Seating) Proof {
	p := Proof{By: f.proved}
	for _, o := range s.People {
		p.Value += o.Weight * o.share()
	}
	p.Bound = p.Value + math.Max(0, float64(f.bound-f.value))/full
	for q := range r.periods {
		row := make([]float64, r.holes)
		for h, k := range r.hole {
			row[k] = float64(f.prices[r.at(q, h)]) / full
		}
		p.Prices = append(p.Prices, row)
	}
	return p
}

// why says why a person has no seat.
func (r *room) why(who int, s Seating) Why {
	n, ask := r.night, r.who[who]
	can := func(p, k int) bool { return n.Worth[p][ask][k] >= 0 }
	could, free, firm := false, false, true
	for p := range n.Worth {
		for k, hole := range n.Holes {
			if !can(p, k) {
				continue
			}
			could = true
			if n.closed(Seat{Period: p + 1, Hole: hole, Who: n.Asks[ask].Who}) {
				continue
			}
			free = true
			at := slices.IndexFunc(s.Seats, func(t Seat) bool { return t.Period == p+1 && t.Hole == hole })
			firm = firm && at >= 0 && slices.ContainsFunc(n.Asks, func(a Ask) bool { return a.Who == s.Seats[at].Who && a.Must })
		}
	}
	switch {
	case !could:
		return NoHole
	case !free:
		return KeptAll
	case r.ask(who).Late:
		return CameLate
	case firm:
		return MustFirst
	}
	return Others
}
