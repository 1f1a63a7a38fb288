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
	set, err := play.Sample(ctx, a.Rink, play.DefaultAssumptions(), usualSeed, usualMoments)
	if errors.Is(err, play.ErrSmall) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	s, err := NewScorer(a, k, DefaultJudgement())
	if err != nil {
		return nil, err
	}
	scores, err := s.scoreAll(ctx, openings, set, nil)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(openings))
	for i := range out {
		out[i] = scores.Mean(i, set.Weight)
	}
	return out, nil
}
