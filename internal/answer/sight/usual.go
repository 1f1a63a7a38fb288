package sight

import (
	"context"
	"errors"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// The moments that openings are scored with where nobody says which: enough for
// a score right to about 0.005.
const (
	usualMoments = 5000
	usualSeed    = 1
)

// Usual returns each opening's mean score over the usual moments of a game, in
// [0, 1], without unit; nil on a rink that is too small to hold one. Errors: a kit
// without use, an opening that lies in no pane, ctx's.
func Usual(ctx context.Context, a arena.Arena, k kit.Kit, openings []arena.Opening) ([]float64, error) {
	scores, set, err := usual(ctx, a, k, openings)
	if err != nil || set == nil {
		return nil, err
	}
	out := make([]float64, len(openings))
	for i := range out {
		out[i] = scores.Mean(i, set.Weight)
	}
	return out, nil
}

// Together returns what some openings are worth together: the mean over the usual
// moments of the score of whichever sees each best, in [0, 1], without unit; known is
// false on a rink that is too small to hold a moment. Errors: those of [Usual].
func Together(ctx context.Context, a arena.Arena, k kit.Kit, openings []arena.Opening) (score float64, known bool, err error) {
	scores, set, err := usual(ctx, a, k, openings)
	if err != nil || set == nil {
		return 0, false, err
	}
	var sum, all float64
	for m, weight := range set.Weight {
		best := float32(0)
		for i := range openings {
			best = max(best, scores.Row(i)[m])
		}
		sum += float64(best) * float64(weight)
		all += float64(weight)
	}
	return sum / all, all > 0, nil
}

// usual scores openings over the usual moments; the set is nil on a rink that is too
// small to hold one.
func usual(ctx context.Context, a arena.Arena, k kit.Kit, openings []arena.Opening) (Scores, *play.Set, error) {
	set, err := play.Sample(ctx, a.Rink, a.Playing(), usualSeed, usualMoments)
	if errors.Is(err, play.ErrSmall) {
		return Scores{}, nil, nil
	}
	if err != nil {
		return Scores{}, nil, err
	}
	s, err := NewScorer(a, k, DefaultJudgement())
	if err != nil {
		return Scores{}, nil, err
	}
	scores, err := s.scoreAll(ctx, openings, set, nil)
	return scores, set, err
}
