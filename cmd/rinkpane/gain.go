package main

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/answer/gain"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

type gainFlags struct {
	source
	lensFlags
	hole    string
	focal   unit.Maybe[unit.Length]
	stop    unit.Maybe[unit.Stop]
	pane    paneFlags
	moments int
}

// paneFlags say what a pane adds to a picture taken through it.
type paneFlags struct{ haze, stands unit.Maybe[float64] }

func (f *paneFlags) add(c *cobra.Command) {
	quantity(c, &f.haze, "haze", "share", parseShare, `of the pane by ASTM D1003, as "6 %" (default: a worn pane's)`)
	quantity(c, &f.stands, "stands", "share", parseShare, `how bright it is behind the camera, over the scene (default "10 %")`)
}

// parseShare reads "6 %" or 0.06.
func parseShare(s string) (float64, error) {
	number, percent := strings.CutSuffix(strings.TrimSpace(s), "%")
	v, err := parseNumber(strings.TrimSpace(number))
	if percent {
		v /= 100
	}
	if err != nil || !(v >= 0 && v < 1) {
		return 0, fmt.Errorf("%s: write a share from 0 to below 1, as \"6 %%\" or 0.06", form.Quote(s))
	}
	return v, nil
}

const mostGainMoments = 200_000

func gainCommand(a *app) *cobra.Command {
	var f gainFlags
	c := &cobra.Command{
		Use:   "gain ARENA",
		Short: "What does a hole bring over shooting through the pane?",
		Long: `Sets the two ways beside each other for one lens: light lost, contrast left, mirrored
stands and the second image of the pane, angle by angle and over the moments of a game.
frame --through pane draws the picture.`,
		Example: `  # the usual zoom at hole B1
  rinkpane gain my.yaml --hole B1

  # another lens, and a pane whose haze was measured
  rinkpane gain my.yaml --hole B1 --lens 24-70 --focal 35 --haze "4 %"`,
		Args: oneArena,
		RunE: func(c *cobra.Command, args []string) error {
			if err := needFlags(c, "hole"); err != nil {
				return err
			}
			return runGain(c.Context(), a, args[0], f)
		},
	}
	fl := c.Flags()
	fl.StringVar(&f.hole, "hole", "", "id of the hole")
	f.kitFlag(c)
	f.lensFlags.flags(c)
	fl.IntVar(&f.moments, "moments", gain.UsualMoments, "how many sampled moments of a game")
	quantity(c, &f.focal, "focal", "mm", unit.ParseFocal, "focal length, in mm unless said (default: the lens's longest)")
	quantity(c, &f.stop, "stop", "f/N", unit.ParseStop, "stop (default: wide open)")
	f.pane.add(c)
	return c
}

func runGain(ctx context.Context, a *app, path string, f gainFlags) error {
	if f.moments < 1 || f.moments > mostGainMoments {
		return fmt.Errorf("--moments %d: write 1 to %d", f.moments, mostGainMoments)
	}
	if err := f.open(a, path); err != nil {
		return err
	}
	lens, body, err := f.lensFlags.of(&f.source)
	if err != nil {
		return err
	}
	use, err := fit.Use(lens, f.focal, f.stop, false, false)
	if err != nil {
		return fmt.Errorf("--%w", err)
	}
	set, err := play.Sample(ctx, f.arena.Rink, f.arena.Playing(), 1, f.moments)
	if err != nil {
		return err
	}
	g, err := gain.Of(f.arena, frame.Request{
		Hole: f.hole, Lens: lens, Body: body, Use: use, Haze: f.pane.haze, Mirror: f.pane.stands,
	}, set)
	if err != nil {
		return err
	}
	return a.print(wire.Gain(g, f.arena.Units), func() string { return words.Gain(g, f.arena.Units) })
}
