package game

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// Table is what each hole shows of each kind and phase of moments through each set of
// lenses: scored once, and combined for as many games as there are. It may be used by many
// goroutines.
type Table struct {
	holes map[string]int
	bags  map[string][]shown // by the lenses' ids; by hole
}

// shown is what a hole shows, by kind and phase.
type shown [kinds][phases]cell

// cell sums the moments of a kind and phase.
type cell struct {
	weight float64 // of the moments, without unit
	score  float64 // weighted sum of the scores
	seen   float64 // weight of the moments that the hole sees
}

// What the moments of a table are: half of them with the home team first toward end B,
// half toward A, so that each team has as many toward each end. Of a team's attacks toward
// an end there are 3000, of their celebrations some 300: a share of those is right to
// about 0.03.
const (
	tableMoments = 6000
	tableSeed    = 1
)

// Score scores holes of an arena for sets of lenses, each by ids of the kit in its order.
// Errors: those of package sight and of the sampler, ctx's.
func Score(ctx context.Context, a arena.Arena, k kit.Kit, holes []string, bags [][]string) (*Table, error) {
	return score(ctx, a, k, holes, bags, tableMoments)
}

func score(ctx context.Context, a arena.Arena, k kit.Kit, holes []string, bags [][]string, moments int) (*Table, error) {
	t := &Table{holes: map[string]int{}, bags: map[string][]shown{}}
	var openings []glass.Hole
	for i, id := range holes {
		h, ok := a.Hole(id)
		if !ok {
			return nil, fmt.Errorf("no hole is called %q in %s", id, a.Name)
		}
		t.holes[id], openings = i, append(openings, h)
	}
	var sets []*play.Set
	for half, first := range []int{+1, -1} {
		playing := a.Playing()
		playing.Game.Ends = play.EndsFrom(first)
		set, err := play.Sample(ctx, a.Rink, playing, tableSeed+uint64(half), moments)
		if err != nil {
			return nil, err
		}
		sets = append(sets, set)
	}
	for _, bag := range bags {
		if _, done := t.bags[bagKey(bag)]; done {
			continue
		}
		seen := make([]shown, len(holes))
		a.Lenses = bag
		scorer, err := sight.NewScorer(a, k, sight.DefaultJudgement())
		if err != nil {
			return nil, err
		}
		for _, set := range sets {
			for _, keeper := range []bool{false, true} {
				scores, err := scorer.Score(ctx, openings, watched(set, keeper), nil)
				if err != nil {
					return nil, err
				}
				for i := range seen {
					seen[i].add(set, scores.Row(i), keeper)
				}
			}
		}
		t.bags[bagKey(bag)] = seen
	}
	return t, nil
}

func bagKey(lenses []string) string { return strings.Join(lenses, " ") }

// add counts scored moments.
func (s *shown) add(set *play.Set, scores []float32, keeper bool) {
	for m, score := range scores {
		k, p, w := kind{int(set.Team[m]), int(set.End[m]), keeper}, set.Phase[m], float64(set.Weight[m])
		if !k.awaits(p) {
			continue
		}
		c := &s[k.index()][p]
		c.weight += w
		c.score += w * float64(score)
		if score >= choose.SeenFrom {
			c.seen += w
		}
	}
}

// Score returns the table of a season: of its holes, with what each person brings.
func (s Season) Score(ctx context.Context) (*Table, error) {
	var bags [][]string
	for _, p := range s.People {
		if !slices.ContainsFunc(bags, func(b []string) bool { return slices.Equal(b, p.Lenses) }) {
			bags = append(bags, p.Lenses)
		}
	}
	return Score(ctx, s.Arena, s.Kit, s.Holes, bags)
}
