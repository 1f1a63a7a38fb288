package seat

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/decide/solve"
)

// open is a way that is given to the solver: of anybody of one class, whose prices
// leave a loss below its best way.
type open struct {
	class  int
	at     way
	points int64
	loss   int64
}

// How much of a search there is at most. What is larger ends with a bound and a gap.
const (
	mostRounds = 200  // of the relaxation with the ways known so far
	mostOpen   = 1200 // ways that the solver is given at once
	mostSeen   = 4000 // ways of one class that are looked through
	mostNodes  = 2000 // parts of the solver's search
	fewOpen    = 240  // ways that need no better prices; by measurement
)

// settle closes what prices leave open. Where few ways have a loss below the gap, the
// solver is given them: no seating with any other is better than the best known
// (fixing by reduced costs). Else the relaxation is first solved to its end over the
// ways that its own prices ask for (column generation; Gilmore and Gomory 1961), which
// gives the best prices that there are.
func (h *hunt) settle(ctx context.Context) {
	if h.done() || h.close(ctx, fewOpen) || h.done() {
		return
	}
	h.relax(ctx)
	for gap := int64(math.MaxInt64); h.bound-h.value < gap && !h.done() && ctx.Err() == nil; {
		gap = h.bound - h.value
		if h.close(ctx, mostOpen) {
			return
		}
	}
}

// close gives the solver what is open, the least losses where that is more than so
// many ways, and reports whether the seating is proved.
func (h *hunt) close(ctx context.Context, most int) bool {
	ways, every := h.open(ctx, most)
	_, best := h.choose(ctx, ways, mostNodes)
	if !best || !every {
		return false
	}
	h.bound, h.proved = min(h.bound, h.value), BySearch
	return true
}

// relax brings prices to where the relaxation over all ways has its best.
func (h *hunt) relax(ctx context.Context) {
	pool := &pool{laid: h.laid, met: map[string]bool{}}
	for c, who := range h.alike {
		for _, i := range who {
			pool.join(c, h.all[i])
		}
		pool.ask(c, h.prices, nil)
	}
	for range mostRounds {
		known := len(pool.known)
		rent, _ := h.choose(ctx, pool.known, 1)
		if h.done() || ctx.Err() != nil || rent == nil {
			return
		}
		for _, part := range []int64{2, 5, 8, tenths} {
			h.toward(ctx, pool, rent, part)
			if len(pool.known) > known {
				break
			}
		}
		if len(pool.known) == known || len(pool.known) == mostOpen {
			return
		}
	}
}

// tenths is the whole way from the best prices to those of the relaxation.
const tenths = 10

// toward asks for ways at prices between the best known and those of the relaxation,
// which alone jump about where many want the same (Wentges 1997).
func (h *hunt) toward(ctx context.Context, p *pool, rent []int64, part int64) {
	at := make([]int64, len(h.prices))
	for k := range at {
		at[k] = (h.prices[k]*(tenths-part) + rent[k]*part) / tenths
	}
	if b := h.ceiling(at); b < h.bound {
		h.bound = b
		copy(h.prices, at)
	}
	for c := range h.alike {
		if ctx.Err() != nil {
			return
		}
		p.ask(c, at, rent)
	}
}

// pool is the ways that a relaxation knows.
type pool struct {
	*laid
	known []open
	met   map[string]bool
}

func (p *pool) join(class int, at way) {
	key := fmt.Sprint(class, at)
	if p.met[key] || len(p.known) == mostOpen || !slices.ContainsFunc(at, func(k int8) bool { return k != none }) {
		return
	}
	p.met[key] = true
	p.known = append(p.known, open{class: class, at: slices.Clone(at), points: p.worth(p.alike[class][0], at)})
}

// ask joins of one class, for each seat, the best way through it at some prices that
// leaves more at the relaxation's than the class has there.
func (p *pool) ask(class int, prices, rent []int64) {
	who := p.alike[class][0]
	if rent != nil && p.net(who, rent) <= rent[len(prices)+class] || p.net(who, prices) <= 0 || len(p.known) == mostOpen {
		return
	}
	out := make(way, p.periods)
	for q := range p.periods {
		value := p.ways.of(p.ways.value, q)
		all := slices.Clone(value)
		for k := range all {
			for j := range value {
				value[j] = barred
			}
			value[k] = all[k]
			if p.ways.best() > 0 && p.gains(class, p.ways.walk(out), rent) {
				p.join(class, out)
			}
		}
		copy(value, all)
	}
}

// gains reports whether a way has more points than the relaxation asks for it.
func (p *pool) gains(class int, at way, rent []int64) bool {
	if rent == nil {
		return true
	}
	left := p.worth(p.alike[class][0], at) - rent[p.periods*p.holes+class]
	for q, k := range at {
		if k != none {
			left -= rent[q*p.holes+int(k)]
		}
	}
	return left > int64(p.periods)
}

// open lists the ways whose loss is below the gap, the least losses where they are
// more than so many; every says that it lists all.
func (h *hunt) open(ctx context.Context, most int) (ways []open, every bool) {
	gap := h.bound - h.value
	every = true
	for c, who := range h.alike {
		best := h.net(who[0], h.prices)
		seen := 0
		every = h.ways.within(best-gap, func(at way, left int64) bool {
			if seen++; seen > mostSeen || ctx.Err() != nil {
				return false
			}
			ways = append(ways, open{class: c, at: slices.Clone(at), loss: best - left, points: h.worth(who[0], at)})
			return true
		}) && every
		if len(ways) > most {
			slices.SortStableFunc(ways, func(a, b open) int { return cmp.Compare(a.loss, b.loss) })
			ways, every = slices.Delete(ways, most, len(ways)), false
		}
	}
	return ways, every
}

// choose solves the choice among open ways, each class as often as it has people,
// takes what it finds, and tries its prices. It returns what each seat, then each
// class, is worth in the relaxation, in points, and whether the choice is the best.
func (h *hunt) choose(ctx context.Context, ways []open, nodes int) (rent []int64, best bool) {
	p := solve.Program{Columns: len(ways), Rows: make([]solve.Row, len(h.prices)+len(h.alike))}
	worth := make(solve.Linear, len(ways))
	for c, o := range ways {
		worth[c] = float64(o.points) / full
		row := &p.Rows[len(h.prices)+o.class]
		row.Columns = append(row.Columns, c)
		for q, k := range o.at {
			if k != none {
				row := &p.Rows[q*h.holes+int(k)]
				row.Columns = append(row.Columns, c)
			}
		}
	}
	for r := range p.Rows {
		p.Rows[r].Most = 1
	}
	for c, who := range h.alike {
		p.Rows[len(h.prices)+c].Most = len(who)
	}
	p.Worth = worth
	s, err := solve.New(p)
	if err != nil { // not for columns that exist and rows that ascend
		return nil, false
	}
	var res solve.Result
	if nodes == 1 { // the relaxation alone, without swaps for a better set
		res = s.Again(ctx, solve.Other{Rows: p.Rows, Nodes: nodes})
	} else {
		res = s.Solve(ctx, nodes, nil)
	}
	h.take(ways, res.Set)
	for _, x := range res.Prices {
		rent = append(rent, max(0, int64(math.Round(full*x))))
	}
	if rent == nil {
		return nil, false
	}
	if b := h.ceiling(rent[:len(h.prices)]); b < h.bound {
		h.bound = b
		copy(h.prices, rent)
	}
	return rent, res.Status == solve.Optimal
}

// take offers chosen ways, those of a class to its people in their order.
func (h *hunt) take(ways []open, chosen []int) {
	for _, w := range h.trial {
		for q := range w {
			w[q] = none
		}
	}
	next := make([]int, len(h.alike))
	for _, c := range chosen {
		class := ways[c].class
		copy(h.trial[h.alike[class][next[class]]], ways[c].at)
		next[class]++
	}
	h.offer()
	h.polish()
}
