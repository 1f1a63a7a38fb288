package seat

import (
	"cmp"
	"slices"
)

// room is a checked night with people and holes by name, so that the answer does
// not depend on the order in which they were written down. A night on which
// everybody keeps one hole has one period in it, worth what all are together.
type room struct {
	night          *Night
	periods, holes int
	who            []int       // index in the night's list, by person
	hole           []int       // index in the night's list, by hole
	worth          [][]float64 // by person, then [room.at]: without unit; below zero where it cannot be
	could          []float64   // by person: what the best that they could have had alone is worth
	fixed          []fixed
}

// fixed is a seat that stays.
type fixed struct{ who, period, hole int }

// at returns the place of a period and a hole in lists of both.
func (r *room) at(period, hole int) int { return period*r.holes + hole }

// enter checks a night and lays it out.
func enter(n *Night) (*room, error) {
	if err := n.check(); err != nil {
		return nil, err
	}
	r := &room{night: n, periods: len(n.Worth), holes: len(n.Holes)}
	r.who = byName(len(n.Asks), func(i int) string { return n.Asks[i].Who })
	r.hole = byName(len(n.Holes), func(k int) string { return n.Holes[k] })
	for _, i := range r.who {
		r.worth = append(r.worth, r.worthTo(i))
	}
	if n.Whole {
		r.periods = 1
	}
	alone := newWays[float64](r.periods, r.holes)
	alone.move = n.Move
	for i := range r.who {
		copy(alone.value, r.worth[i])
		r.could = append(r.could, alone.best())
	}
	for _, s := range n.Fixed {
		r.fix(s)
	}
	return r, nil
}

func byName(n int, name func(i int) string) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	slices.SortFunc(out, func(a, b int) int { return cmp.Compare(name(a), name(b)) })
	return out
}

// cannot is a worth so low, without unit, that no way with it is ever the best.
const cannot = -1e15

// worthTo returns what the holes are worth to an ask, kept ones of others left out.
func (r *room) worthTo(ask int) []float64 {
	n := r.night
	out := make([]float64, r.periods*r.holes)
	for p := range r.periods {
		for h, k := range r.hole {
			if out[r.at(p, h)] = n.Worth[p][ask][k]; out[r.at(p, h)] < 0 {
				out[r.at(p, h)] = cannot
			}
		}
	}
	for _, k := range n.Kept {
		h := slices.IndexFunc(r.hole, func(i int) bool { return n.Holes[i] == k.Hole })
		for p := range r.periods {
			if n.closed(Seat{Period: p + 1, Hole: k.Hole, Who: n.Asks[ask].Who}) {
				out[r.at(p, h)] = cannot
			}
		}
	}
	if n.Whole {
		return r.together(ask, out)
	}
	return out
}

// together adds the periods up. Who can work no hole in a period did not ask for
// it; in every other one the hole must be theirs to have.
func (r *room) together(ask int, worth []float64) []float64 {
	out := make([]float64, r.holes)
	asked := false
	for p := range r.periods {
		if slices.Max(r.night.Worth[p][ask]) < 0 {
			continue
		}
		asked = true
		for h := range out {
			if out[h] += worth[r.at(p, h)]; out[h] < 0 {
				out[h] = cannot
			}
		}
	}
	if !asked {
		return slices.Repeat([]float64{cannot}, r.holes)
	}
	return out
}

// fix adds a seat that stays, once.
func (r *room) fix(s Seat) {
	if f := r.place(s); !slices.Contains(r.fixed, f) {
		r.fixed = append(r.fixed, f)
	}
}

// place finds a seat by its names; on a whole night all periods are one.
func (r *room) place(s Seat) fixed {
	n := r.night
	return fixed{
		who:    slices.IndexFunc(r.who, func(i int) bool { return n.Asks[i].Who == s.Who }),
		period: min(s.Period, r.periods) - 1,
		hole:   slices.IndexFunc(r.hole, func(k int) bool { return n.Holes[k] == s.Hole }),
	}
}

// part returns a worth as a share of what a person could have had, in [0, 1].
func (r *room) part(who int, worth float64) float64 {
	if r.could[who] <= 0 {
		return 0
	}
	return worth / r.could[who]
}

// bar takes a seat out.
func (r *room) bar(s Seat) {
	f := r.place(s)
	r.worth[f.who][r.at(f.period, f.hole)] = cannot
}

// move is what a change of holes costs a person: no more than their best night.
func (r *room) move(who int) float64 { return min(r.night.Move, r.could[who]) }

func (r *room) ask(who int) Ask { return r.night.Asks[r.who[who]] }
