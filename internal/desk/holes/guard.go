package holes

import (
	"context"
	"fmt"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/words"
)

// guardOf tells what comes through one hole while its cover is out, nothing of one that
// is turned off or that cannot be told of. The error is ctx's.
func guardOf(ctx context.Context, a arena.Arena, h glass.Hole) ([]shell.Fact, error) {
	if h.State == glass.Off {
		return nil, nil
	}
	a.Holes, a.Windows = []glass.Hole{h}, nil
	guards, err := puck.Assess(ctx, a, puck.DefaultOptions())
	if err != nil || len(guards) == 0 {
		return nil, ctx.Err()
	}
	g := guards[0]
	facts := []shell.Fact{
		{Name: "Pucks in 1000 hours of play", Value: words.PerThousandHours(g.Game)},
		{Name: "A puck comes through, cover out", Value: words.OnceIn(guards) + ", by own judgement of how many are struck"},
		{Name: "A flat puck passes up to", Value: words.Closes(g.FlatLimit) + " from straight"},
		{Name: "Mean energy", Value: fmt.Sprintf("%.0f J", g.MeanJ)},
	}
	if g.Sector.Bounded() {
		facts = append(facts,
			shell.Fact{Name: "Keep clear", Value: words.Bearings(g.Sector) + " from straight, + to the right, to " + words.Within(g.Sector.Clear, a.Units)},
			shell.Fact{Name: "Seats to clear", Value: words.Seats(g, a.Units)})
	}
	return facts, nil
}
