package main

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

type visitFlags struct {
	source
	hole, follows, attacks string
	lenses                 []string
}

func visitCommand(a *app) *cobra.Command {
	var f visitFlags
	c := &cobra.Command{
		Use:   "visit ARENA",
		Short: "Before the journey: which lenses to pack, or which hole to ask for?",
		Long: `Answers a photographer who has not seen the rink: with --hole which lenses to pack for
it, the best one, two and three of those used there; with --lens which hole to ask for.
Worth is of the moments of whom you follow, over three periods with the ends changed.`,
		Example: `  # I have hole B1, and follow the guests
  rinkpane visit my.yaml --hole B1 --follows away

  # I have two zooms
  rinkpane visit my.yaml --lens 24-70 --lens 70-200`,
		Args: oneArena,
		RunE: func(c *cobra.Command, args []string) error { return runVisit(c.Context(), a, args[0], f) },
	}
	fl := c.Flags()
	fl.StringVar(&f.hole, "hole", "", "id of the hole that you have")
	fl.StringSliceVar(&f.lenses, "lens", nil, "id of a lens that you have; repeat it for more")
	fl.StringVar(&f.follows, "follows", string(game.Away), "whom you follow: home, away, both, home-goalkeeper, away-goalkeeper, end-A or end-B")
	fl.StringVar(&f.attacks, "home-attacks", "", "end that the home team plays toward first, A or B (default: as the arena says, else B)")
	f.kitFlag(c)
	return c
}

func runVisit(ctx context.Context, a *app, path string, f visitFlags) error {
	if (f.hole == "") == (len(f.lenses) == 0) {
		return errors.New("say either --hole, the one that you have, or --lens, each that you have")
	}
	follows, err := form.Words(game.Follows()...)(f.follows)
	if err != nil {
		return fmt.Errorf("--follows: %w", err)
	}
	if err := f.open(a, path); err != nil {
		return err
	}
	v := game.Visitor{Follows: follows, Ends: f.arena.Game.Ends}
	switch strings.ToUpper(f.attacks) {
	case "":
	case "A":
		v.Ends = play.EndsFrom(-1)
	case "B":
		v.Ends = play.EndsFrom(+1)
	default:
		return fmt.Errorf("--home-attacks: %s; write A or B", form.Quote(f.attacks))
	}
	ctx, done := a.watched(ctx)
	defer done()
	if f.hole != "" {
		bags, err := game.Pack(ctx, f.arena, f.Kit, f.hole, v)
		if err != nil {
			return err
		}
		done()
		return a.print(wire.Pack(f.arena, f.hole, bags), func() string { return words.PackText(f.arena, f.hole, bags) })
	}
	stands, err := game.AskFor(ctx, f.arena, f.Kit, f.lenses, v)
	if err != nil {
		return err
	}
	done()
	return a.print(wire.AskFor(f.arena, f.lenses, stands), func() string { return words.AskText(f.arena, f.lenses, stands) })
}
