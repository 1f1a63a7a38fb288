package seat

import (
	"cmp"
	"context"
	"slices"
)

// Next returns the best seating that is not s: what is given up by any other.
// False when there is none. The seats given by hand stay in both.
func Next(ctx context.Context, n *Night, l *Ledger, s Seating) (Seating, bool, error) {
	var best Seating
	met := false
	for _, seat := range s.Seats {
		if slices.Contains(n.Fixed, seat) || n.Whole && slices.ContainsFunc(n.Fixed, func(f Seat) bool { return f.Who == seat.Who }) {
			continue
		}
		r, err := enter(n)
		if err != nil {
			return best, false, err
		}
		r.bar(seat)
		other := r.assign(ctx, l.weights(n))
		if ctx.Err() != nil {
			return best, false, ctx.Err()
		}
		if !met || cmp.Or(-cmp.Compare(firm(n, best), firm(n, other)), -cmp.Compare(best.Proof.Value, other.Proof.Value)) > 0 {
			best, met = other, true
		}
	}
	return best, met, nil
}

// firm counts the periods for which firm requests have a seat.
func firm(n *Night, s Seating) (periods int) {
	for i, o := range s.People {
		if n.Asks[i].Must {
			periods += o.Periods
		}
	}
	return periods
}

// Price is what a wish costs the others.
type Price struct {
	Wish []Seat
	With Seating // the best seating with the wish
	// Nights is by how much all together have less, each one's share weighed by the
	// ledger, in nights, without unit. It is below zero only where the wish takes
	// seats from firm requests.
	Nights float64
	Worth  float64 // by how much the seats are worth less, in the unit of the night's worth
	Change []Change
}

// Change is what another seating means for one person, in the unit of the night's worth.
type Change struct {
	Who  string
	From []string // their hole in each period, "" for none
	To   []string
	By   float64 // worth; below zero for a loss
}

// PriceOf seats a night again with the wish fixed, the seats by hand and all that
// binds as before, and compares it with the seating s: the price is exact, since
// both are the best that there are. An error says why the wish cannot be.
func PriceOf(ctx context.Context, n *Night, l *Ledger, s Seating, wish []Seat) (Price, error) {
	m := *n
	m.Fixed = slices.Concat(n.Fixed, wish)
	with, err := Assign(ctx, &m, l)
	if err != nil {
		return Price{}, err
	}
	return Price{Wish: wish, With: with, Nights: s.Proof.Value - with.Proof.Value, Worth: s.Value - with.Value, Change: Changes(s, with)}, nil
}

// Changes lists whose seats differ between two seatings of the same requests, the
// greatest loss first.
func Changes(from, to Seating) (out []Change) {
	periods := 0
	for _, s := range slices.Concat(from.Seats, to.Seats) {
		periods = max(periods, s.Period)
	}
	for i, o := range from.People {
		c := Change{Who: o.Who, From: from.Holes(o.Who, periods), To: to.Holes(o.Who, periods), By: to.People[i].Worth - o.Worth}
		if !slices.Equal(c.From, c.To) {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b Change) int { return cmp.Compare(a.By, b.By) })
	return out
}
