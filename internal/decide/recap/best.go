package recap

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// Best returns the best legal set of holes by what was learnt, all else by the options: what
// choose --play gives for the file of [Learnt.YAML]. By l.Before in the options' Play, choose
// gives the one beside it. Errors: those of [choose.ForArena].
func (l Learnt) Best(ctx context.Context, a arena.Arena, sets rules.Sets, k kit.Kit, opt choose.Options) (choose.Answer, error) {
	opt.Play = l.Assumptions
	return choose.ForArena(ctx, a, sets, k, opt)
}

// Best is the best legal sets of holes by two assumptions about the moments.
type Best struct {
	By     choose.Answer // by what the frames say
	Before choose.Answer // by what was assumed
}

// Choose returns the best legal sets by what was learnt and by what was assumed before, of
// as many moments and places as a plan's folder asks. Errors: those of [choose.ForArena].
func (l Learnt) Choose(ctx context.Context, a arena.Arena, sets rules.Sets, k kit.Kit) (b Best, err error) {
	o := choose.FolderOptions()
	o.Ladder, o.Alternatives = false, 0
	if b.By, err = l.Best(ctx, a, sets, k, o); err != nil {
		return b, err
	}
	o.Play = l.Before
	b.Before, err = choose.ForArena(ctx, a, sets, k, o)
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
