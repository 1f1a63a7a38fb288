package seat_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"example.org/rinkpane/internal/decide/seat"
)

func invented(games, people, holes, periods int, move float64) (out []seat.Night) {
	rng := rand.New(rand.NewPCG(uint64(games), 3))
	for g := range games {
		n := seat.Night{Game: fmt.Sprint("game ", g), Move: move}
		for k := range holes {
			n.Holes = append(n.Holes, fmt.Sprint("H", k))
		}
		for i := range people {
			n.Asks = append(n.Asks, seat.Ask{Who: fmt.Sprintf("P%02d", i)})
		}
		common := make([]float64, holes)
		for k := range common {
			common[k] = rng.Float64()
		}
		for range periods {
			var period [][]float64
			for range people {
				var row []float64
				for k := range holes {
					row = append(row, 0.7*common[k]+0.3*rng.Float64())
				}
				period = append(period, row)
			}
			n.Worth = append(n.Worth, period)
		}
		out = append(out, n)
	}
	return out
}

func BenchmarkSeason(b *testing.B) {
	nights := invented(1312, 14, 8, 3, 0.1)
	for b.Loop() {
		for _, rule := range seat.Rules() {
			s, err := seat.Run(context.Background(), nights, rule, 1, nil)
			if err != nil {
				b.Fatal(err)
			}
			if rule == seat.Level {
				c, _ := s.Ceiling(context.Background(), nights)
				b.Log(c, s.Proved)
			}
			b.Logf("%s %+v", rule, s.Spread())
		}
	}
}
