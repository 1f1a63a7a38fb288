package choose

import (
	"context"
	"fmt"
	"math"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/solve"
)

// Candidates that must be in and groups that leave no room beside them make
// programs with a single point, which rounding lets a simplex call impossible.
// Each of these instances kept a search without end before.
func TestSearchEndsWhereRoundingHidesTheOnlySet(t *testing.T) {
	tests := []struct {
		seed                uint64
		candidates, moments int
	}{
		{276602530524909, 8, 36},
		{17213930465497629, 9, 40},
		{85970, 10, 2},
	}
	for _, tt := range tests {
		t.Run(fmt.Sprint(tt.seed), func(t *testing.T) {
			p := instance(tt.seed, tt.candidates, tt.moments)
			want, value := brute(&p)
			ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
			defer cancel()
			res := solver(t, p).Solve(ctx, 0, nil)
			if res.Status != solve.Optimal || math.Abs(res.Value-value) > solve.Tolerance {
				t.Errorf("%s value %.9f of %v, brute force %.9f of %v", res.Status, res.Value, res.Set, value, want)
			}
		})
	}
}
