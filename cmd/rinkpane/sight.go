package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/wire"
)

// mostMapHeight is the greatest height above the ice that is mapped: nothing of
// a game is higher.
const mostMapHeight = 10 * unit.Metre

type sightFlags struct {
	holes  []string
	height unit.Maybe[unit.Length]
	grid   unit.Maybe[unit.Length]
	kit    string
	out    string
	force  bool
}

func sightCommand(a *app) *cobra.Command {
	var f sightFlags
	c := &cobra.Command{
		Use:   "sight ARENA",
		Short: "What part of the ice does a hole see?",
		Long: `Maps for each hole the part of the ice at which some lens can be aimed with half
of its light or more, over the hole's edges and the boards' top: at the height of a
puck and of a face. The blind strip is the ice along the near boards that is not
seen straight ahead of the hole.`,
		Example: `  # every hole of an arena
  rinkpane sight my.yaml

  # one hole, with a map of how many lenses reach what
  rinkpane sight my.yaml --hole B1 --grid 20cm --map b1.svg`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return errors.New("sight needs one arena file (- for standard input), as in: rinkpane sight my.yaml")
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error { return runSight(c.Context(), a, args[0], f) },
	}
	c.Flags().StringSliceVar(&f.holes, "hole", nil, "hole or low window by its id; repeat it or use commas\n(default every working hole)")
	quantity(c, &f.height, "height", "length", unit.ParseLength, "one more height above the ice to map, and the one to draw")
	quantity(c, &f.grid, "grid", "length", unit.ParseLength, `side of the map's cells (default "100 mm")`)
	c.Flags().StringVar(&f.kit, "kit", "", "kit file (default the built-in kit)")
	c.Flags().StringVar(&f.out, "map", "", "file to draw the map to, .png or .svg")
	c.Flags().BoolVar(&f.force, "force", false, "replace the map's file when it is there")
	return c
}

func runSight(ctx context.Context, a *app, path string, f sightFlags) error {
	if err := mayDraw(f.out, f.force); err != nil {
		return err
	}
	ar, err := readArena(a, path)
	if err != nil {
		return err
	}
	holes, err := pickOpenings(ar, f.holes)
	if err != nil {
		return err
	}
	reaches, err := mapHoles(ctx, a, ar, holes, f)
	if err != nil {
		return err
	}
	if f.out != "" {
		if err := drawReach(a, ar, reaches, f); err != nil {
			return err
		}
	}
	k, err := readKit(a, f.kit)
	if err != nil {
		return err
	}
	scores, err := sight.Usual(ctx, ar, k, holes)
	if err != nil {
		return err
	}
	_, asked := f.height.Get()
	return a.print(sightAnswer(reaches, scores, asked, ar.Units), func(w io.Writer) { writeSight(w, ar, reaches, scores) })
}

// pickOpenings returns the working holes and low windows with the ids asked for,
// all working holes without any.
func pickOpenings(ar arena.Arena, ids []string) ([]arena.Opening, error) {
	out, err := ar.Pick(ids)
	if err != nil {
		return nil, fmt.Errorf("--hole %w", err)
	}
	return out, nil
}

// mapHoles maps each hole at the puck's and the face's height, and at the
// height asked for.
func mapHoles(ctx context.Context, a *app, ar arena.Arena, holes []arena.Opening, f sightFlags) ([]sight.Reach, error) {
	heights := []unit.Length{sight.PuckHeight, sight.FaceHeight}
	if h, ok := f.height.Get(); ok {
		if h > mostMapHeight {
			return nil, fmt.Errorf("--height %s: write a height up to %s", h.Format(ar.Units), mostMapHeight.Format(ar.Units))
		}
		heights = append(heights, h)
	}
	k, err := readKit(a, f.kit)
	if err != nil {
		return nil, err
	}
	m, err := sight.NewMapper(ar, k)
	if err != nil {
		return nil, err
	}
	g, err := sight.NewGrid(ar.Rink, f.grid.Or(sight.DefaultStep))
	if err != nil {
		return nil, fmt.Errorf("--grid: %w", err)
	}
	out := make([]sight.Reach, 0, len(holes))
	for _, h := range holes {
		r, err := m.MapOpening(ctx, h, g, heights)
		if err != nil {
			return nil, err
		}
		out = append(out, r)
	}
	return out, nil
}

// The answer of sight; contract field names.
type (
	sightJSON struct {
		GridM float64         `json:"grid_m"`
		Holes []sightHoleJSON `json:"holes"`
	}
	sightHoleJSON struct {
		Hole        string   `json:"hole"`
		Reach       float64  `json:"reach_share"`
		ReachFace   float64  `json:"reach_face_share"`
		Score       *float64 `json:"score"` // null on a rink too small for a game
		HeightM     *float64 `json:"height_m,omitempty"`
		ReachHeight *float64 `json:"reach_height_share,omitempty"`
		blindJSON
		LedgeM  *float64          `json:"ledge_strip_m"` // null: the boards hide all
		Lenses  []sightLensJSON   `json:"lenses"`
		Assumed []wire.Assumption `json:"assumed"`
	}
	blindJSON struct {
		BlindM     float64 `json:"blind_strip_m"`
		BlindMeanM float64 `json:"blind_strip_mean_m"`
	}
	sightLensJSON struct {
		Lens      string  `json:"lens"`
		FocalMM   float64 `json:"focal_mm"`
		Stop      float64 `json:"stop"`
		Fits      bool    `json:"fits"`
		Reach     float64 `json:"reach_share"`
		ReachFace float64 `json:"reach_face_share"`
		blindJSON
	}
)

func sightAnswer(reaches []sight.Reach, scores []float64, asked bool, sys unit.System) sightJSON {
	out := sightJSON{Holes: []sightHoleJSON{}}
	for i, r := range reaches {
		out.GridM = r.Grid.Step
		h := sightHoleJSON{
			Hole: r.Hole, Reach: r.Layers[0].Share, ReachFace: r.Layers[1].Share,
			blindJSON: blindOf(r.Blind), Lenses: []sightLensJSON{}, Assumed: wire.Assumed(r.Assumed, sys),
		}
		if ledge := r.Blind.Ledge; !math.IsInf(ledge, 0) {
			h.LedgeM = &ledge
		}
		if scores != nil {
			h.Score = &scores[i]
		}
		if asked {
			z, share := r.Layers[2].Height.Metres(), r.Layers[2].Share
			h.HeightM, h.ReachHeight = &z, &share
		}
		for _, l := range r.Lenses {
			h.Lenses = append(h.Lenses, sightLensJSON{
				Lens: l.ID, FocalMM: l.Focal.Millimetres(), Stop: float64(l.Stop), Fits: l.Fits,
				Reach: l.Share[0], ReachFace: l.Share[1], blindJSON: blindOf(l.Blind),
			})
		}
		out.Holes = append(out.Holes, h)
	}
	return out
}

func blindOf(b sight.Blind) blindJSON { return blindJSON{BlindM: b.Ahead, BlindMeanM: b.Mean} }
