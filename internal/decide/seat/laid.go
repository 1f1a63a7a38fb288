package seat

import (
	"cmp"
	"math"
	"slices"
)

// Seatings are compared in whole numbers, so that no rounding decides which is the
// best or whether it is proved: full is one person's best night at full weight.
const full = 1 << 24

// barred stands in place of the points of a hole that somebody may not be given.
const barred = math.MinInt64 / 8

// laid is a night in points.
type laid struct {
	periods, holes int
	points         [][]int64 // by person, then period * holes + hole
	alike          [][]int   // people with the same points and the same cost of moves, in the order of names
	move           []int64   // by person: what a change of holes costs
	bonus          int64     // in the points of each seat that goes before every wish
	ways           *ways[int64]
}

// tieSteps bounds in how many steps equal seatings are told apart.
const tieSteps = 64

// lay lays out the chosen people and the seats that stay. Weights are by person,
// in (0, 1]; of who is not chosen only the seats that stay count.
//
//	points = full weight share + tie [+ bonus],   share = worth / could
//
// The tie lets the earlier name have what it likes better where all else is equal;
// it adds at most tieSteps^2 / full to a seat. People for whom all is equal have one
// tie together, that of the first: they are one class, and [laid.byNames] says who of
// them has what.
func (r *room) lay(weight []float64, chosen func(who int) bool) *laid {
	l := &laid{periods: r.periods, holes: r.holes, ways: newWays[int64](r.periods, r.holes)}
	l.bonus = full * int64(2*l.periods*l.holes+2) // more than all shares and moves together
	for i := range r.who {
		row := make([]int64, len(r.worth[i]))
		for k, worth := range r.worth[i] {
			if row[k] = barred; worth >= 0 && chosen(i) {
				row[k] = int64(math.Round(full * weight[i] * r.part(i, worth)))
				if r.ask(i).Must {
					row[k] += l.bonus
				}
			}
		}
		l.points = append(l.points, row)
		l.move = append(l.move, int64(math.Round(full*weight[i]*r.part(i, r.move(i)))))
	}
	for _, f := range r.fixed {
		l.fix(f)
	}
	l.class()
	for _, who := range l.alike {
		name := int64(1 + (len(r.who)-1-who[0])*min(tieSteps, len(r.who))/len(r.who))
		for p := range l.periods {
			l.tie(l.points[who[0]][p*l.holes:(p+1)*l.holes], name)
		}
		for _, i := range who[1:] {
			copy(l.points[i], l.points[who[0]])
		}
	}
	return l
}

// class finds the people for whom all is equal.
func (l *laid) class() {
	for i, row := range l.points {
		c := slices.IndexFunc(l.alike, func(who []int) bool {
			return l.move[who[0]] == l.move[i] && slices.Equal(l.points[who[0]], row)
		})
		if c < 0 {
			c, l.alike = len(l.alike), append(l.alike, nil)
		}
		l.alike[c] = append(l.alike[c], i)
	}
}

// byNames hands the ways of people for whom all is equal to the earlier names first,
// the best ways first, which leaves the points of all as they are.
func (l *laid) byNames(all []way) {
	for _, who := range l.alike {
		ways := make([]way, len(who))
		for k, i := range who {
			ways[k] = all[i]
		}
		slices.SortStableFunc(ways, func(a, b way) int {
			return cmp.Or(cmp.Compare(l.worth(who[0], b), l.worth(who[0], a)), slices.Compare(a, b))
		})
		for k, i := range who {
			all[i] = ways[k]
		}
	}
}

// tie adds to one period's points what tells equal seatings apart.
func (l *laid) tie(row []int64, name int64) {
	order := byLiking(row)
	for k, h := range order {
		if row[h] == barred {
			return
		}
		row[h] += name * int64(len(order)-k)
	}
}

func byLiking(row []int64) []int {
	order := make([]int, len(row))
	for h := range order {
		order[h] = h
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(row[b], row[a]) })
	return order
}

// fix gives a seat that stays: it carries the bonus, and what stands against it is barred.
func (l *laid) fix(f fixed) {
	at := f.period*l.holes + f.hole
	here := max(0, l.points[f.who][at])
	if here < l.bonus {
		here += l.bonus
	}
	for h := range l.holes {
		l.points[f.who][f.period*l.holes+h] = barred
	}
	for i := range l.points {
		l.points[i][at] = barred
	}
	l.points[f.who][at] = here
}

// total returns what a seating has in points.
func (l *laid) total(all []way) (sum int64) {
	for i, w := range all {
		sum += l.worth(i, w)
	}
	return sum
}

// worth returns the points of one person's way.
func (l *laid) worth(who int, w way) (sum int64) {
	for p, h := range w {
		if h == none {
			continue
		}
		sum += l.points[who][p*l.holes+int(h)]
		if p > 0 && w[p-1] != none && w[p-1] != h {
			sum -= l.move[who]
		}
	}
	return sum
}

// net sets the ways of one person at prices of the seats, by period * holes + hole,
// and returns what the best of them leaves, 0 or more.
func (l *laid) net(who int, prices []int64) int64 {
	for k, x := range l.points[who] {
		l.ways.value[k] = x - prices[k]
	}
	l.ways.move = l.move[who]
	return l.ways.best()
}

// ceiling returns what no seating has more of, at any prices of 0 or more:
//
//	value <= sum of prices + sum over people of max(0, best way's points - its prices)
//
// since each seat is held by one at most (weak duality). It asks nobody where the
// prices come from.
func (l *laid) ceiling(prices []int64) (sum int64) {
	for _, p := range prices {
		sum += p
	}
	for _, who := range l.alike {
		sum += int64(len(who)) * l.net(who[0], prices)
	}
	return sum
}
