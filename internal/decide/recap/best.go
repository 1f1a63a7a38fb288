package recap

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// Best is the best legal sets of holes by two assumptions about the moments.
type Best struct {
	By     choose.Answer // by what the frames say
	Before choose.Answer // by what was assumed
}

// BestOptions returns what the best sets are asked for with: as many moments and places as a
// plan's folder asks, and one set alone.
func BestOptions() choose.Options {
	o := choose.FolderOptions()
	o.Ladder, o.Alternatives = false, 0
	return o
}

// Choose returns the best legal sets by what was learnt and by what was assumed before, all
// else by the options: what choose --play gives for the file of [Learnt.YAML], and without
// it. Errors: those of [choose.ForArena].
func (l Learnt) Choose(ctx context.Context, a arena.Arena, sets rules.Sets, k kit.Kit, opt choose.Options) (b Best, err error) {
	opt.Play = l.Assumptions
	if b.By, err = choose.ForArena(ctx, a, sets, k, opt); err != nil {
		return b, err
	}
	opt.Play = l.Before
	b.Before, err = choose.ForArena(ctx, a, sets, k, opt)
	return b, err
}

// Moved lists the panes of the best set by the frames that the set before leaves whole.
func (b Best) Moved() (panes []string) {
	for _, c := range b.By.Holes {
		if !slices.ContainsFunc(b.Before.Holes, func(d choose.Choice) bool { return d.Hole.Pane == c.Hole.Pane }) {
			panes = append(panes, c.Hole.Pane)
		}
	}
	return panes
}
