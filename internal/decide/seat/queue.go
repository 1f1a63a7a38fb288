package seat

import (
	"fmt"

	"example.org/rinkpane/internal/measure/form"
)

// queue seats a night by turns: firm requests in time, then wishes in time, then
// who came late; among each in the order given. Each takes the best that is left.
func (r *room) queue(asks []int) Seating {
	all := make([]way, len(r.who))
	weight := make([]float64, len(r.who))
	person := make([]int, len(r.who))
	for i, k := range r.who {
		person[k], weight[i] = i, 1
		all[i] = make(way, r.periods)
		for p := range all[i] {
			all[i][p] = none
		}
	}
	taken := make([]bool, r.periods*r.holes)
	held := map[int]bool{}
	for _, f := range r.fixed {
		all[f.who][f.period], taken[r.at(f.period, f.hole)] = int8(f.hole), true
		held[f.who*r.periods+f.period] = true
	}
	turn := newWays[float64](r.periods, r.holes)
	for _, group := range []Ask{{Must: true}, {}, {Late: true, Must: true}, {Late: true}} {
		for _, k := range asks {
			if a := r.night.Asks[k]; a.Must != group.Must || a.Late != group.Late {
				continue
			}
			i := person[k]
			turn.move = r.move(i)
			for at := range turn.value {
				turn.value[at] = r.worth[i][at]
				own := all[i][at/r.holes] == int8(at%r.holes)
				if !own && (taken[at] || held[i*r.periods+at/r.holes]) {
					turn.value[at] = cannot
				} else if own {
					turn.value[at] += -cannot / 2
				}
			}
			turn.best()
			for p, h := range turn.walk(all[i]) {
				if h != none {
					taken[r.at(p, int(h))] = true
				}
			}
		}
	}
	return r.tell(all, weight)
}

// inGame says in which game something is wrong.
func inGame(n *Night, err error) error {
	return fmt.Errorf("game %s: %w", form.Quote(n.Game), err)
}
