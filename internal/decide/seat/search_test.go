package seat

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"
)

// night makes an invented night: so many holes and people, whose tastes are alike
// but for a share of their own.
func night(rng *rand.Rand, people, holes, periods int, alike, move float64) *Night {
	n := &Night{Game: "invented", Move: move}
	for k := range holes {
		n.Holes = append(n.Holes, fmt.Sprintf("H%d", k+1))
	}
	common := make([]float64, holes*periods)
	for k := range common {
		common[k] = rng.Float64()
	}
	for i := range people {
		n.Asks = append(n.Asks, Ask{Who: fmt.Sprintf("P%02d", i+1)})
	}
	for p := range periods {
		var period [][]float64
		for range people {
			var row []float64
			for k := range holes {
				row = append(row, alike*common[p*holes+k]+(1-alike)*rng.Float64())
			}
			period = append(period, row)
		}
		n.Worth = append(n.Worth, period)
	}
	return n
}

func (r *room) everybody() []float64 {
	w := make([]float64, len(r.who))
	for i := range w {
		w[i] = 1
	}
	return w
}

func all(int) bool { return true }

func TestHowOften(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	met := map[string]int{}
	for range 300 {
		n := night(rng, 14, 8, 3, rng.Float64(), rng.Float64()*0.3)
		r, err := enter(n)
		if err != nil {
			t.Fatal(err)
		}
		f := r.lay(r.everybody(), all).solve(context.Background())
		met[string(f.proved)]++
	}
	t.Log(met)
}

func BenchmarkNight(b *testing.B) {
	rng := rand.New(rand.NewPCG(7, 7))
	var ns []*Night
	for range 200 {
		ns = append(ns, night(rng, 14, 8, 3, rng.Float64(), rng.Float64()*0.3))
	}
	k := 0
	for b.Loop() {
		r, _ := enter(ns[k%len(ns)])
		r.lay(r.everybody(), all).solve(context.Background())
		k++
	}
}
