package seat_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/decide/seat"
)

// tried is a seating of one period: by ask, the hole or -1.
type tried []int

// seatings lists all seatings of one period, one by one.
func seatings(asks, holes int) (out []tried) {
	at := make(tried, asks)
	var fill func(i int)
	fill = func(i int) {
		if i == asks {
			out = append(out, slices.Clone(at))
			return
		}
		for h := -1; h < holes; h++ {
			if h >= 0 && slices.Contains(at[:i], h) {
				continue
			}
			at[i] = h
			fill(i + 1)
		}
	}
	fill(0)
	return out
}

// closed says whether a hole is kept for others, read plainly from the night.
func closed(n *seat.Night, p, i, h int) bool {
	mine, kept := false, false
	for _, k := range n.Kept {
		if k.Hole == n.Holes[h] && (k.Period == 0 || k.Period == p+1) {
			kept, mine = true, mine || slices.Contains(k.For, n.Asks[i].Who)
		}
	}
	return kept && !mine
}

// may says whether one period's seating keeps to what binds.
func may(n *seat.Night, p int, at tried) bool {
	for i, h := range at {
		if h >= 0 && (n.Worth[p][i][h] < 0 || closed(n, p, i, h)) {
			return false
		}
	}
	for _, f := range n.Fixed {
		if f.Period == p+1 && at[slices.IndexFunc(n.Asks, func(a seat.Ask) bool { return a.Who == f.Who })] != slices.Index(n.Holes, f.Hole) {
			return false
		}
	}
	return true
}

// bestByHand tries every seating of every period: how many periods firm requests
// are seated at most, and the most shares of all together with so many.
func bestByHand(n *seat.Night, could, weight []float64) (firm int, nights float64) {
	type state struct {
		firm   int
		nights float64
	}
	better := func(a, b state) bool { return a.firm > b.firm || a.firm == b.firm && a.nights > b.nights }
	all := seatings(len(n.Asks), len(n.Holes))
	none := state{firm: -1}
	before := slices.Repeat([]state{none}, len(all))
	for p := range n.Worth {
		now := slices.Repeat([]state{none}, len(all))
		for k, at := range all {
			if !may(n, p, at) {
				continue
			}
			own := state{}
			for i, h := range at {
				if h < 0 {
					continue
				}
				if own.nights += weight[i] * part(n.Worth[p][i][h], could[i]); n.Asks[i].Must {
					own.firm++
				}
			}
			best := none
			for j, was := range all {
				if p > 0 && before[j].firm < 0 || p == 0 && j > 0 {
					continue
				}
				from := before[j]
				if p == 0 {
					from = state{}
				}
				for i, h := range at {
					if p > 0 && h >= 0 && was[i] >= 0 && was[i] != h {
						from.nights -= weight[i] * part(min(n.Move, could[i]), could[i])
					}
				}
				if best.firm < 0 || better(from, best) {
					best = from
				}
			}
			if best.firm >= 0 {
				now[k] = state{best.firm + own.firm, best.nights + own.nights}
			}
		}
		before = now
	}
	best := none
	for _, s := range before {
		if best.firm < 0 || better(s, best) {
			best = s
		}
	}
	return best.firm, best.nights
}

func part(worth, could float64) float64 {
	if could <= 0 {
		return 0
	}
	return worth / could
}

// drawNight draws a small night with all that a night can have but late requests.
func drawNight(t *rapid.T) *seat.Night {
	n := &seat.Night{Game: "g", Move: rapid.SampledFrom([]float64{0, 0.1, 0.3, 2}).Draw(t, "move"), Whole: rapid.IntRange(0, 4).Draw(t, "whole") == 0}
	asks, holes, periods := rapid.IntRange(1, 4).Draw(t, "asks"), rapid.IntRange(1, 3).Draw(t, "holes"), rapid.IntRange(1, 3).Draw(t, "periods")
	for h := range holes {
		n.Holes = append(n.Holes, fmt.Sprint("H", h))
	}
	for i := range asks {
		n.Asks = append(n.Asks, seat.Ask{Who: fmt.Sprint("P", i), Must: rapid.IntRange(0, 3).Draw(t, "must") == 0})
	}
	for range periods {
		var period [][]float64
		for range asks {
			var row []float64
			for range holes {
				row = append(row, float64(rapid.IntRange(-2, 8).Draw(t, "worth"))/8)
			}
			period = append(period, row)
		}
		n.Worth = append(n.Worth, period)
	}
	if rapid.IntRange(0, 2).Draw(t, "kept") == 0 {
		n.Kept = append(n.Kept, seat.Kept{Hole: "H0", Period: rapid.IntRange(0, periods).Draw(t, "period"), For: []string{"P0"}})
	}
	if rapid.IntRange(0, 2).Draw(t, "fixed") == 0 {
		p, i, h := rapid.IntRange(0, periods-1).Draw(t, "p"), rapid.IntRange(0, asks-1).Draw(t, "i"), rapid.IntRange(0, holes-1).Draw(t, "h")
		if ok := n.Worth[p][i][h] >= 0 && !closed(n, p, i, h) && !n.Whole; ok {
			n.Fixed = append(n.Fixed, seat.Seat{Period: p + 1, Hole: n.Holes[h], Who: n.Asks[i].Who})
		}
	}
	return n
}

// together is a night on which all keep one hole, as one period: a period of which
// somebody can work no hole does not count for them, any other must be theirs.
func together(n *seat.Night) *seat.Night {
	m := &seat.Night{Holes: n.Holes, Asks: n.Asks, Worth: [][][]float64{nil}}
	for i := range n.Asks {
		row, asked := make([]float64, len(n.Holes)), false
		for p := range n.Worth {
			here := slices.Max(n.Worth[p][i]) >= 0
			asked = asked || here
			for h := range row {
				if here && (n.Worth[p][i][h] < 0 || closed(n, p, i, h)) {
					row[h] = -1000
				} else if here {
					row[h] += n.Worth[p][i][h]
				}
			}
		}
		if !asked {
			row = slices.Repeat([]float64{-1}, len(row))
		}
		m.Worth[0] = append(m.Worth[0], row)
	}
	return m
}

// ties is what equal seatings may differ by in nights: 4 people, 3 holes, 3 periods.
const ties = 9 * (4*3 + 1) / float64(1<<24)

// Every seating of thousands of small nights, tried one by one.
func TestAssignIsBest(t *testing.T) {
	drawn := rapid.Custom(drawNight)
	for seed := range 4000 {
		n := drawn.Example(seed)
		s, err := seat.Assign(context.Background(), n, nil)
		if err != nil {
			t.Fatal(err)
		}
		var could, weight []float64
		firm, nights := 0, 0.0
		for i, o := range s.People {
			could, weight = append(could, o.Could), append(weight, o.Weight)
			if nights += o.Weight * part(o.Worth, o.Could); n.Asks[i].Must {
				firm += o.Periods
			}
		}
		m := n
		if n.Whole {
			m, firm = together(n), 0
			for i, o := range s.People {
				if n.Asks[i].Must && o.Periods > 0 {
					firm++
				}
			}
		}
		wantFirm, want := bestByHand(m, could, weight)
		if firm != wantFirm || math.Abs(nights-want) > ties {
			t.Fatalf("firm %d, %.9f nights; by hand %d, %.9f\n%+v\n%+v", firm, nights, wantFirm, want, n, s.Seats)
		}
		if s.Proof.By == seat.NotProved || s.Proof.Gap() > 1e-5 {
			t.Fatalf("proved by %s, gap %g", s.Proof.By, s.Proof.Gap())
		}
	}
}
