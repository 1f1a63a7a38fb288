package choose

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/unit"
)

// mostPoints bounds the frontier: where every pane costs something else it
// could grow without end.
const mostPoints = 200

// frontier returns what each amount of money buys, from nothing spent upward: each
// set is worth more than all that cost as little. The best set for a budget is
// found, then the best for one less than that costs, and so on down to
// what is cut today (the epsilon-constraint method; Haimes, Lasdon and Wismer
// 1971), which is exact since money is counted in whole units. whole is false where
// the most points there may be were not enough: those that cost least are missing.
func (s *Study) frontier(ctx context.Context, budget unit.Maybe[cost.Money], today Step, start []int, most int) (out []Step, whole bool) {
	whole = true
	for ctx.Err() == nil {
		q := s.within(budget)
		res := s.best(ctx, &q, start, "frontier")
		if res.Set == nil || res.Status == solve.Stopped && ctx.Err() != nil {
			break
		}
		step := s.step(SpendStep, 0, res)
		if step.Value <= today.Value+solve.Tolerance || step.Bill.Money == 0 {
			break
		}
		if n := len(out); n > 0 && out[n-1].Value <= step.Value+solve.Tolerance {
			out = out[:n-1] // as good, and cheaper
		}
		if whole = len(out) < most; !whole {
			break
		}
		step.NewCuts = len(step.Cut())
		out = append(out, step)
		budget, start = unit.Known(step.Bill.Money-1), res.Set
	}
	out = append(out, today)
	slices.Reverse(out)
	return out, whole
}

// within is the problem of spending at most so much.
func (s *Study) within(budget unit.Maybe[cost.Money]) Problem {
	q := s.problem
	q.Exact, q.Caps = false, nil
	if most, ok := budget.Get(); ok {
		q.Caps = []Cap{s.budget(most)}
	}
	return q
}
