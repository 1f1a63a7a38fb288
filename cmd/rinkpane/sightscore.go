package main

import (
	"context"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/play"
)

// The moments that holes are scored with where nobody says which: enough for a
// score right to about 0.005.
const (
	scoreMoments = 5000
	scoreSeed    = 1
)

// scoreHoles returns the mean score of each hole over the shipped moments; nil
// on a rink that is too small to hold a game.
func scoreHoles(ctx context.Context, a *app, ar arena.Arena, holes []arena.Opening, kitPath string) ([]float64, error) {
	set, err := play.Sample(ar.Rink, play.DefaultAssumptions(), scoreSeed, scoreMoments)
	if err != nil {
		return nil, nil // the only assumption that can fail is the rink's size
	}
	k, err := readKit(a, kitPath)
	if err != nil {
		return nil, err
	}
	s, err := sight.NewScorer(ar, k, sight.DefaultJudgement())
	if err != nil {
		return nil, err
	}
	return s.Means(ctx, holes, set)
}
