package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// puckFlags are the flags of both forms: one hole without an arena, or all
// holes of an arena.
type puckFlags struct {
	source
	options puck.Options
	size    unit.Maybe[unit.Size]
	thick   unit.Maybe[unit.Length]
	floor   unit.Maybe[unit.Length]
	first   unit.Maybe[unit.Length]
	deep    unit.Maybe[unit.Length]
	angle   unit.Maybe[unit.Angle]
	out     target
}

// tumblingDraws is how many orientations stand for a tumbling puck: the window's area is then
// right to about a thousandth.
const tumblingDraws = 10_000

// maxPuckAngle is 90 degrees: a puck along the pane never meets the hole.
const maxPuckAngle = 90 * unit.Degree

func puckCommand(a *app) *cobra.Command {
	f := puckFlags{options: puck.DefaultOptions()}
	c := &cobra.Command{
		Use:   "puck [ARENA]",
		Short: "What can come through a hole, and where does it go?",
		Long: `Says what can come through a photo hole: the window that a flat and a tumbling
puck have at an angle from the pane's normal, and the angle at which it closes.
With an arena: per hole the share of struck pucks that pass, the sector behind it
to keep clear, and what reaches through, the most exposed hole first. It is no
strength check.`,
		Example: `  # the common hole in a half-inch pane, a puck coming in at 30 degrees
  rinkpane puck --hole-size "5.5 in x 4.5 in" --thick "1/2 in" --angle 30

  # every hole of an arena, covers out for 20 minutes of practice
  rinkpane puck arena.yaml --practice-minutes 20 --map sectors.svg`,
		Args: atMostOne,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 1 {
				return runPuckArena(a, c, args[0], f)
			}
			return runPuckBare(a, c, f)
		},
	}
	o := &f.options
	quantity(c, &f.size, "hole-size", "size", unit.ParseSize, `width x height of the hole, as "5.5 in x 4.5 in"`)
	quantity(c, &f.thick, "thick", "length", unit.ParseLength, `thickness of the pane, as "12.7 mm" (with an arena: of panes not surveyed)`)
	quantity(c, &f.angle, "angle", "angle", unit.ParseAngle, "of the flight from the pane's normal, in the horizontal plane, degrees (default 0)")
	c.Flags().StringVar(&o.Only, "hole", "", "only this hole or low window of the arena")
	quantity(c, &f.floor, "floor", "length", unit.ParseOffset, `height of the spectators' floor above the ice, negative below (default "0 m")`)
	quantity(c, &f.first, "first-row", "length", unit.ParseOffset, "from the glass to the first row of seats (default 4 ft)")
	quantity(c, &f.deep, "row-depth", "length", unit.ParseLength, "depth of one row of seats (default 33 in, in a metric arena 850 mm)")
	f.out.flags(c, "map", "draw the sectors to be kept clear to this file (.svg or .png)")
	c.Flags().Float64Var(&o.GameShots, "game-shots", o.GameShots, "struck pucks per hour of play, both ends")
	c.Flags().Float64Var(&o.PracticeShots, "practice-shots", o.PracticeShots, "struck pucks per hour of practice, both ends")
	c.Flags().Float64Var(&o.GameMinutes, "game-minutes", o.GameMinutes, "minutes of play for which covers are out")
	c.Flags().Float64Var(&o.PracticeMinutes, "practice-minutes", o.PracticeMinutes, "minutes of practice for which covers are out")
	return c
}

// Flags that belong to one form only.
var (
	bareFlags  = []string{"hole-size", "angle"}
	arenaFlags = []string{"hole", "floor", "first-row", "row-depth", "map", "force", "game-shots", "practice-shots", "game-minutes", "practice-minutes"}
)

func runPuckArena(a *app, c *cobra.Command, path string, f puckFlags) error {
	if err := refuseFlags(c, bareFlags, "is for one hole without an arena; leave it out or leave the arena out"); err != nil {
		return err
	}
	if err := f.out.may(".png", ".svg"); err != nil {
		return err
	}
	if err := f.open(a, path); err != nil {
		return err
	}
	if t, given := f.thick.Get(); given {
		f.arena = f.arena.TakingThickness(t)
	}
	f.options.Floor = f.floor.Or(0)
	seats := puck.UsualSeating(f.arena.Units)
	f.options.Seating = puck.Seating{First: f.first.Or(seats.First), Deep: f.deep.Or(seats.Deep)}
	if f.options.Only != "" {
		if _, err := f.openings([]string{f.options.Only}); err != nil {
			return err
		}
	}
	ctx, end := a.watched(c.Context())
	guards, err := puck.Assess(ctx, f.arena, f.options)
	end()
	if err != nil {
		return err
	}
	if f.out.path != "" {
		if err := f.out.draw(a, chart.GuardMap(f.arena, guards, f.options.Only, mapWidthMM)); err != nil {
			return err
		}
	}
	return a.print(wire.Object{"holes", wire.GuardsOf(guards, f.arena.Units), "together", wire.TogetherOf(guards), "interval", puck.Interval(), "left_out", puck.LeftOut()}, func() string {
		return words.GuardsText(f.arena.Name, guards, f.arena.Units)
	})
}

func runPuckBare(a *app, c *cobra.Command, f puckFlags) error {
	if err := refuseFlags(c, arenaFlags, "is for the holes of an arena; name its file"); err != nil {
		return err
	}
	if err := needFlags(c, "hole-size", "thick"); err != nil {
		return fmt.Errorf("%w, or name an arena file", err)
	}
	at := f.angle.Or(0)
	if at <= -maxPuckAngle || at >= maxPuckAngle {
		return fmt.Errorf("--angle %s: give an angle from the pane's normal below 90 degrees", at.Format())
	}
	o, err := puck.NewOpening(f.size.Or(unit.Size{}), f.thick.Or(0))
	if err != nil {
		return fmt.Errorf("the hole: %w", err)
	}
	sys, err := a.system(unit.SystemOf(c.Flags().Lookup("hole-size").Value.String()))
	if err != nil {
		return err
	}
	tumbling := o.Tumbling(puck.Flight{Along: at}, puck.NewOrientations(tumblingDraws))
	return a.print(wire.Window(o, at, tumbling), func() string { return words.Window(o, at, tumbling, sys) })
}
