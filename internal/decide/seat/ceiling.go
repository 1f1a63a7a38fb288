package seat

import (
	"context"
	"math"

	"example.org/rinkpane/internal/measure/cores"
)

// Ceiling returns what share, in [0, 1], the worst off could have had at most by any
// rule that knew the whole season from the start and seated firm requests first. For
// any weights m of the people that add up to 1,
//
//	min over people of share <= sum m share = sum over nights of sum (m / asked) share of the night
//	                         <= sum over nights of the proved bound with weights m / asked
//
// The weights are those that the level rule used on average, which the method of
// multiplicative weights brings near the best ones; people who came late or stayed
// away in any game have none, since what they asked for depends on the rule.
func (s Season) Ceiling(ctx context.Context, nights []Night) (float64, error) {
	steady := s.steady(nights)
	weight, sum, scale := map[string]float64{}, 0.0, 0.0
	for _, a := range steady {
		sum += s.mean[a.Who] / a.Asked
	}
	for _, a := range steady {
		weight[a.Who] = s.mean[a.Who] / a.Asked / sum / a.Asked
		scale = max(scale, weight[a.Who])
	}
	if scale == 0 {
		return 1, nil
	}
	bounds := make([]float64, len(nights))
	_, err := cores.With(ctx, len(nights), func() struct{} { return struct{}{} }, func(_ struct{}, i int) {
		n := &nights[i]
		byAsk := make([]float64, len(n.Asks))
		for k, a := range n.Asks {
			byAsk[k] = weight[a.Who] / scale
		}
		r, err := enter(n)
		if err != nil { // not for a night that Run has seated
			return
		}
		p := r.assign(ctx, byAsk).Proof
		bounds[i] = p.Bound + r.tieMost()
	})
	if err != nil {
		return 0, err
	}
	total := 0.0
	for _, b := range bounds {
		total += b * scale
	}
	return min(1, total), nil
}

// steady lists the accounts of who asked in time and came to every game.
func (s Season) steady(nights []Night) (out []Account) {
	other := map[string]bool{}
	for _, n := range nights {
		for _, a := range n.Asks {
			other[a.Who] = other[a.Who] || a.Late || a.NoShow
		}
	}
	for _, a := range s.Ledger.Accounts() {
		if a.Asked > 0 && !other[a.Who] {
			out = append(out, a)
		}
	}
	return out
}

// tieMost is by how much, in nights, ties and rounding may hide a better seating.
func (r *room) tieMost() float64 {
	seats := float64(r.periods * min(r.holes, len(r.who)))
	return seats * (math.Min(tieSteps, float64(len(r.who)))*float64(r.holes) + 1) / full
}
