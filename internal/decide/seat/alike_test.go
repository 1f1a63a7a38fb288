package seat_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/seat"
)

// alike makes a night of people of a few kinds: those of one kind are worth the same
// at every hole, and kinds differ by a part of what all like.
func alike(seed uint64, people, holes, periods, kinds int, differ, move float64) seat.Night {
	rng := rand.New(rand.NewPCG(seed, 9))
	n := seat.Night{Game: fmt.Sprint("game ", seed), Move: move}
	for k := range holes {
		n.Holes = append(n.Holes, fmt.Sprint("H", k))
	}
	for i := range people {
		n.Asks = append(n.Asks, seat.Ask{Who: fmt.Sprintf("P%02d", i)})
	}
	for range periods {
		common, rows := make([]float64, holes), make([][]float64, kinds)
		for k := range common {
			common[k] = rng.Float64()
		}
		for i := range rows {
			for _, c := range common {
				rows[i] = append(rows[i], (1-differ)*c+differ*rng.Float64())
			}
		}
		var period [][]float64
		for i := range people {
			period = append(period, rows[i%kinds])
		}
		n.Worth = append(n.Worth, period)
	}
	return n
}

// Nights at which nearly all want the same holes are proved, also once the ledger has
// told equal people apart.
func TestNightsOfEqualPeopleAreProved(t *testing.T) {
	met := 0
	for _, periods := range []int{3, 4} {
		for _, kinds := range []int{1, 2, 4} {
			for _, move := range []float64{0.02, 0.3} {
				var l seat.Ledger
				for seed := range uint64(3) {
					n := alike(seed, 14, 8, periods, kinds, 0.1, move)
					s, err := seat.Assign(context.Background(), &n, &l)
					if err != nil {
						t.Fatal(err)
					}
					if s.Proof.By == seat.NotProved {
						t.Errorf("%d periods, %d kinds of people, moves at %g, night %d: not proved, a gap of %.4f nights", periods, kinds, move, seed, s.Proof.Gap())
					}
					l.Enter(&n, s)
					met++
				}
			}
		}
	}
	if met < 36 {
		t.Errorf("%d nights", met)
	}
}

// Of equal people the earlier name has the better way.
func TestEqualPeopleAreSeatedByName(t *testing.T) {
	n := alike(1, 6, 3, 3, 1, 0.3, 0.02)
	s, err := seat.Assign(context.Background(), &n, &seat.Ledger{})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.IsSortedFunc(s.People, func(a, b seat.Outcome) int {
		switch {
		case a.Worth > b.Worth+1e-6:
			return -1
		case a.Worth < b.Worth-1e-6:
			return 1
		}
		return 0
	}) {
		t.Errorf("worth by name: %v", s.People)
	}
}

// A night that is too large to be proved ends at the search's limits: with seats, a
// bound, a gap that is told, and little memory.
func TestSearchEndsAtItsLimits(t *testing.T) {
	for _, people := range []int{12} {
		n := alike(5, people, 8, 9, people, 0.5, 0.3)
		var before, after runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&before)
		begin := time.Now()
		s, err := seat.Assign(context.Background(), &n, &seat.Ledger{})
		if err != nil {
			t.Fatal(err)
		}
		runtime.ReadMemStats(&after)
		used := (after.HeapSys - min(after.HeapSys, before.HeapSys)) >> 20
		t.Logf("%d people: %s, gap %.5f nights, %d MB more, %v", people, s.Proof.By, s.Proof.Gap(), used, time.Since(begin))
		if len(s.Seats) != 9*8 || s.Proof.By != seat.NotProved || s.Proof.Gap() <= 0 {
			t.Errorf("%d people: %d seats, %s, gap %g", people, len(s.Seats), s.Proof.By, s.Proof.Gap())
		}
		if used > 256 {
			t.Errorf("%d people: %d MB", people, used)
		}
	}
}

// ending is a context that ends after it was asked so often.
type ending struct {
	context.Context
	left *int
}

func (e ending) Err() error {
	if *e.left--; *e.left < 0 {
		return context.Canceled
	}
	return nil
}

// Whoever stops a search is answered with the context's error, wherever it was.
func TestSearchIsStopped(t *testing.T) {
	n := alike(5, 16, 8, 6, 16, 0.5, 0.3)
	for _, left := range []int{0, 1, 50, 121, 140, 200} {
		ctx := ending{context.Background(), &left}
		if _, err := seat.Assign(ctx, &n, &seat.Ledger{}); err == nil {
			t.Error("done before it was stopped")
		}
		if left < -200 {
			t.Errorf("asked %d times more after the end", -left)
		}
	}
}
