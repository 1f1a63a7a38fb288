package game

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// Visitor is somebody who has not seen the rink yet: what they have, and what they follow.
type Visitor struct {
	Follows Follow
	Ends    play.Ends
}

// Bag is a set of lenses and what it shows through a hole, over the three periods.
type Bag struct {
	Lenses []string // of the kit, in its order
	View
}

// Stand is a hole and what it shows with some lenses, over the three periods.
type Stand struct {
	Hole string
	View
}

// Pack answers which lenses to pack for a hole: of the lenses of an arena the best one, the
// best two and the best three, by trying every set as long as there are no more than
// mostSets of them. The last bag holds all. Errors: those of [Score], a hole that is not there.
func Pack(ctx context.Context, a arena.Arena, k kit.Kit, hole string, v Visitor) ([]Bag, error) {
	if _, err := a.Opening(hole); err != nil {
		return nil, err
	}
	lenses, err := k.InUse(a.Lenses)
	if err != nil {
		return nil, err
	}
	all := kit.Kit{Lenses: lenses}.LensIDs()
	sets := setsOf(all)
	t, err := Score(ctx, a, k, []string{hole}, sets)
	if err != nil {
		return nil, err
	}
	var out []Bag
	for _, set := range sets {
		b := Bag{set, v.over(t, hole, set)}
		k := slices.IndexFunc(out, func(o Bag) bool { return len(o.Lenses) == len(set) })
		switch {
		case k < 0:
			out = append(out, b)
		case b.Value > out[k].Value:
			out[k] = b
		}
	}
	return out, nil
}

// mostPacked is how many lenses a bag holds at most, mostSets how many bags are tried.
const mostPacked, mostSets = 3, 250

// setsOf lists the sets of one lens, of two and of three, as long as they are not too many,
// and the set of all.
func setsOf(all []string) [][]string {
	sets := [][]string{{}}
	for from, size := 0, 1; size <= mostPacked; size++ {
		to := len(sets)
		for _, set := range sets[from:to] {
			for _, id := range all {
				if len(set) == 0 || slices.Index(all, id) > slices.Index(all, set[len(set)-1]) {
					sets = append(sets, append(slices.Clone(set), id))
				}
			}
		}
		if from = to; len(sets) > mostSets {
			sets = sets[:to]
			break
		}
	}
	if sets = sets[1:]; len(all) > len(sets[len(sets)-1]) {
		sets = append(sets, all)
	}
	return sets
}

// AskFor answers which hole of an arena to ask for with some lenses: the holes that are cut,
// else planned, the best first. Errors: those of [Score], a lens that the kit lacks.
func AskFor(ctx context.Context, a arena.Arena, k kit.Kit, lenses []string, v Visitor) ([]Stand, error) {
	holes, _ := given(a)
	if len(holes) == 0 {
		return nil, errors.New("no hole is cut or planned at " + a.Name)
	}
	for _, id := range lenses {
		if _, ok := k.Lens(id); !ok {
			return nil, fmt.Errorf("%s", k.Lacking(id))
		}
	}
	t, err := Score(ctx, a, k, holes, [][]string{lenses})
	if err != nil {
		return nil, err
	}
	var out []Stand
	for _, hole := range holes {
		out = append(out, Stand{hole, v.over(t, hole, lenses)})
	}
	slices.SortStableFunc(out, func(a, b Stand) int { return cmp.Compare(b.Value, a.Value) })
	return out, nil
}

// over returns the mean of what a hole shows over three periods.
func (v Visitor) over(t *Table, hole string, lenses []string) View {
	g := Game{Ends: v.Ends}
	var kinds []kind
	for period := 1; period <= Periods; period++ {
		kinds = append(kinds, v.Follows.kinds(g, period)...)
	}
	return t.bags[bagKey(lenses)][t.holes[hole]].view(kinds)
}

// Of returns this value's share of another's, from 0 to 1 where it is no more; 0 of nothing.
func (v View) Of(all View) float64 {
	if s := share(v.Value, all.Value); !math.IsNaN(s) {
		return s
	}
	return 0
}
