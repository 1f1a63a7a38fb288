package main

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// mostMapHeight is the greatest height above the ice that is mapped: nothing of
// a game is higher.
const mostMapHeight = 10 * unit.Metre

type sightFlags struct {
	source
	holes  []string
	height unit.Maybe[unit.Length]
	grid   unit.Maybe[unit.Length]
	out    target
}

func sightCommand(a *app) *cobra.Command {
	var f sightFlags
	c := &cobra.Command{
		Use:   "sight ARENA",
		Short: "What part of the ice does a hole see?",
		Long: `Maps for each hole the part of the ice at which some lens can be aimed with half
of its light or more at the frame's centre, over the hole's edges and the boards' top:
at the height of a puck and of a face. Whole frame: the same at a puck's height with
half of the light at every corner of the frame too. The blind strip is the ice along
the near boards that is not seen straight ahead of the hole.`,
		Example: `  # every hole of an arena
  rinkpane sight my.yaml

  # one hole, with a map of how many lenses reach what
  rinkpane sight my.yaml --hole B1 --grid 20cm --map b1.svg`,
		Args: oneArena,
		RunE: func(c *cobra.Command, args []string) error { return runSight(c.Context(), a, args[0], f) },
	}
	c.Flags().StringSliceVar(&f.holes, "hole", nil, "hole or low window by its id; repeat it or use commas\n(default every working hole)")
	quantity(c, &f.height, "height", "length", unit.ParseLength, "one more height above the ice to map, and the one to draw")
	quantity(c, &f.grid, "grid", "length", unit.ParseLength, `side of the map's cells (default "100 mm")`)
	f.kitFlag(c)
	f.out.flags(c, "map", "file to draw the map to, .png or .svg")
	return c
}

func runSight(ctx context.Context, a *app, path string, f sightFlags) error {
	if err := f.out.may(".png", ".svg"); err != nil {
		return err
	}
	if err := f.open(a, path); err != nil {
		return err
	}
	holes, err := f.openings(f.holes)
	if err != nil {
		return err
	}
	reaches, err := f.reaches(ctx, holes)
	if err != nil {
		return err
	}
	if f.out.path != "" {
		if err := f.drawReach(a, reaches); err != nil {
			return err
		}
	}
	scores, err := sight.Usual(ctx, f.arena, f.Kit, holes)
	if err != nil {
		return err
	}
	_, asked := f.height.Get()
	return a.print(wire.Sight(reaches, scores, asked, f.arena.Units), func() string {
		return words.Sight(f.arena.Name, reaches, scores, f.arena.Units)
	})
}

// reaches maps each hole at the puck's and the face's height, and at the
// height asked for.
func (f sightFlags) reaches(ctx context.Context, holes []arena.Opening) ([]sight.Reach, error) {
	heights := []unit.Length{sight.PuckHeight, sight.FaceHeight}
	if h, ok := f.height.Get(); ok {
		if h > mostMapHeight {
			return nil, fmt.Errorf("--height %s: write a height up to %s", h.Format(f.arena.Units), mostMapHeight.Format(f.arena.Units))
		}
		heights = append(heights, h)
	}
	m, err := sight.NewMapper(f.arena, f.Kit)
	if err != nil {
		return nil, err
	}
	m.MindCorners(arena.MaxHoles)
	g, err := sight.NewGrid(f.arena.Rink, f.grid.Or(sight.DefaultStep))
	if err != nil {
		return nil, fmt.Errorf("--grid: %w", err)
	}
	out := make([]sight.Reach, len(holes))
	for i, h := range holes {
		if out[i], err = m.MapOpening(ctx, h, g, heights); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// drawReach draws the map: for one hole how many of the lenses reach each
// place, for several from how many holes some lens does.
func (f sightFlags) drawReach(a *app, reaches []sight.Reach) error {
	if len(reaches) == 0 {
		return fmt.Errorf("--map: there is no working hole to draw")
	}
	layer := 0
	if _, asked := f.height.Get(); asked {
		layer = len(reaches[0].Layers) - 1
	}
	height := reaches[0].Layers[layer].Height.Format(f.arena.Units)
	title, picked := fmt.Sprintf("Holes that reach, %s above the ice", height), ""
	if len(reaches) == 1 {
		picked = reaches[0].Hole
		title = fmt.Sprintf("Lenses that reach from %s, %s above the ice", picked, height)
	}
	return f.out.draw(a, chart.PlanMap(chart.Content{Arena: f.arena, Heat: chart.HeatOf(title, layer, reaches...), Picked: picked}, mapWidthMM))
}
