package plan

import (
	"context"
	"fmt"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// ReachQuestion asks for the map of what a hole sees.
type ReachQuestion struct {
	Hole string
	Step unit.Length // side of a cell, 0.1 to 2 m; 0 for 0.25 m
	Face bool        // at the height of faces; else at that of a puck on the ice
}

// The steps that a page may ask for: finer ones take longer than a hand rests.
const (
	finestStep   = 0.1 * unit.Metre
	coarsestStep = 2 * unit.Metre
)

// Reach maps what a hole of an arena document sees: one layer. Errors are
// ctx's, those of [Maker.Arena], and ErrAsked.
func (l *Live) Reach(ctx context.Context, doc *arena.Document, q ReachQuestion) (sight.Reach, error) {
	a, _, err := l.maker.Arena(doc)
	if err != nil {
		return sight.Reach{}, err
	}
	h, ok := a.Hole(q.Hole)
	if !ok || h.State == glass.Off {
		return sight.Reach{}, fmt.Errorf("%w: the arena has no working hole %.40q", ErrAsked, q.Hole)
	}
	if q.Step == 0 {
		q.Step = reachStep
	}
	if !(q.Step >= finestStep && q.Step <= coarsestStep) {
		return sight.Reach{}, fmt.Errorf("%w: a cell of %g m; ask for %g to %g", ErrAsked, q.Step.Metres(), finestStep.Metres(), coarsestStep.Metres())
	}
	g, err := l.groundOf(a)
	if err != nil {
		return sight.Reach{}, err
	}
	grid, err := sight.NewGrid(a.Rink, q.Step)
	if err != nil {
		return sight.Reach{}, err
	}
	height := sight.PuckHeight
	if q.Face {
		height = sight.FaceHeight
	}
	return g.mapper.Map(ctx, h, grid, []unit.Length{height})
}
