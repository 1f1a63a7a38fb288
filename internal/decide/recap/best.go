package recap

import (
	"context"

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
