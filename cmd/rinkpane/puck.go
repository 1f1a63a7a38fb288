package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// puckFlags are the flags of both forms: one hole without an arena, or all
// holes of an arena.
type puckFlags struct {
	size, thick, angle    string
	hole, floor, out      string
	force                 bool
	game, practice        float64
	gameOpen, practiceOut float64
}

// tumblingDraws is how many orientations stand for a tumbling puck: the window's area is then
// right to about a thousandth.
const tumblingDraws = 10_000

// maxPuckAngle is 90 degrees: a puck along the pane never meets the hole.
const maxPuckAngle = 90 * unit.Degree

// bareWindow is the answer of the bare form; contract field names.
type bareWindow struct {
	FlatWindowMM    [2]float64 `json:"flat_window_mm"`
	FlatLimitDeg    *float64   `json:"flat_limit_deg"`
	AnyLimitDeg     *float64   `json:"any_limit_deg"`
	TumblingAreaMM2 float64    `json:"tumbling_area_mm2"`
	TumblingPass    float64    `json:"tumbling_pass_share"`
}

func puckCommand(a *app) *cobra.Command {
	var f puckFlags
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
	o := puck.DefaultOptions()
	c.Flags().StringVar(&f.size, "hole-size", "", `width x height of the hole, as "5.5 in x 4.5 in"`)
	c.Flags().StringVar(&f.thick, "thick", "", `thickness of the pane, as "12.7 mm" (with an arena: of panes not surveyed)`)
	c.Flags().StringVar(&f.angle, "angle", "0", "angle of the flight from the pane's normal, in the horizontal plane, degrees")
	c.Flags().StringVar(&f.hole, "hole", "", "only this hole or low window of the arena")
	c.Flags().StringVar(&f.floor, "floor", "0 m", "height of the spectators' floor above the ice (negative: below)")
	c.Flags().StringVar(&f.out, "map", "", "draw the sectors to be kept clear to this file (.svg or .png)")
	c.Flags().BoolVar(&f.force, "force", false, "replace the map's file when it exists")
	c.Flags().Float64Var(&f.game, "game-shots", o.GameShots, "struck pucks per hour of play, both ends")
	c.Flags().Float64Var(&f.practice, "practice-shots", o.PracticeShots, "struck pucks per hour of practice, both ends")
	c.Flags().Float64Var(&f.gameOpen, "game-minutes", o.GameMinutes, "minutes of play for which covers are out")
	c.Flags().Float64Var(&f.practiceOut, "practice-minutes", o.PracticeMinutes, "minutes of practice for which covers are out")
	return c
}

// bareFlags and arenaFlags belong to one form only.
var (
	bareFlags  = []string{"hole-size", "angle"}
	arenaFlags = []string{"hole", "floor", "map", "force", "game-shots", "practice-shots", "game-minutes", "practice-minutes"}
)

// refuseFlags is the error when one of the flags was given where it has no meaning.
func refuseFlags(c *cobra.Command, names []string, why string) error {
	for _, n := range names {
		if c.Flags().Changed(n) {
			return fmt.Errorf("--%s: %s", n, why)
		}
	}
	return nil
}

func runPuckArena(a *app, c *cobra.Command, path string, f puckFlags) error {
	if err := refuseFlags(c, bareFlags, "is for one hole without an arena; leave it out or leave the arena out"); err != nil {
		return err
	}
	ar, err := readArena(a, path)
	if err != nil {
		return err
	}
	if f.thick != "" {
		t, err := unit.ParseLength(f.thick)
		if err != nil {
			return fmt.Errorf("--thick: %w", err)
		}
		ar = ar.TakingThickness(t)
	}
	o, err := f.options()
	if err != nil {
		return err
	}
	if err := mayDraw(f.out, f.force); err != nil {
		return err
	}
	if f.hole != "" {
		if _, err := pickOpenings(ar, []string{f.hole}); err != nil {
			return err
		}
	}
	ctx, end := a.watched(c.Context())
	guards, err := puck.Assess(ctx, ar, o)
	end()
	if err != nil {
		return err
	}
	if f.out != "" {
		if err := drawMap(a, chart.GuardMap(ar, guards, f.hole, mapWidthMM), f.out, f.force); err != nil {
			return err
		}
	}
	answer := struct {
		Holes   []wire.Guard `json:"holes"`
		LeftOut []string     `json:"left_out"`
	}{wire.GuardsOf(guards, ar.Units), puck.LeftOut()}
	return a.print(answer, func(out io.Writer) { io.WriteString(out, words.GuardsText(ar.Name, guards, ar.Units)) })
}

func (f puckFlags) options() (puck.Options, error) {
	o := puck.DefaultOptions()
	o.Only = f.hole
	o.GameShots, o.PracticeShots, o.GameMinutes, o.PracticeMinutes = f.game, f.practice, f.gameOpen, f.practiceOut
	var err error
	if o.Floor, err = unit.ParseOffset(f.floor); err != nil {
		return o, fmt.Errorf("--floor: %w", err)
	}
	return o, nil
}

func runPuckBare(a *app, c *cobra.Command, f puckFlags) error {
	if err := refuseFlags(c, arenaFlags, "is for the holes of an arena; name its file"); err != nil {
		return err
	}
	if f.size == "" || f.thick == "" {
		return errors.New(`puck needs --hole-size "5.5 in x 4.5 in" and --thick "12.7 mm", or an arena file`)
	}
	size, err := unit.ParseSize(f.size)
	if err != nil {
		return fmt.Errorf("--hole-size: %w", err)
	}
	thick, err := unit.ParseLength(f.thick)
	if err != nil {
		return fmt.Errorf("--thick: %w", err)
	}
	q, err := unit.ParseAngle(f.angle)
	if err != nil {
		return fmt.Errorf("--angle: %w", err)
	}
	if q <= -maxPuckAngle || q >= maxPuckAngle {
		return fmt.Errorf("--angle %s: give an angle from the pane's normal below 90 degrees", f.angle)
	}
	o, err := puck.NewOpening(size, thick)
	if err != nil {
		return fmt.Errorf("the hole: %w", err)
	}
	sys, err := a.system(unit.SystemOf(f.size))
	if err != nil {
		return err
	}
	w := windowAt(o, q)
	return a.print(w, func(out io.Writer) { writeWindow(out, o, q, w, sys) })
}

func windowAt(o puck.Opening, q unit.Angle) bareWindow {
	flat := o.Flat(q)
	tumbling := o.Tumbling(puck.Flight{Along: q}, puck.NewOrientations(tumblingDraws))
	return bareWindow{
		FlatWindowMM:    [2]float64{flat.W.Millimetres(), flat.H.Millimetres()},
		FlatLimitDeg:    wire.Degrees(o.FlatLimit()),
		AnyLimitDeg:     wire.Degrees(o.AnyLimit()),
		TumblingAreaMM2: tumbling.AreaM2 * 1e6,
		TumblingPass:    tumbling.Pass,
	}
}

// writeLines prints sentences, each from a line's beginning, broken at words.
func writeLines(out io.Writer, lines []string) {
	for _, line := range lines {
		io.WriteString(out, table.Wrap(line, "  "))
	}
}

// writeAssumed says what the answer rests on that the survey lacks, each once.
func writeAssumed(out io.Writer, list []arena.Assumption, sys unit.System) {
	writeLines(out, words.Assumed(list, sys))
}

func writeWindow(out io.Writer, o puck.Opening, q unit.Angle, w bareWindow, sys unit.System) {
	fmt.Fprintf(out, "hole %s in a pane of %s, puck at %s from the normal\n\n", o.Size().Format(sys), o.Thick().Format(sys), q.Format())
	flat := o.Flat(q)
	if flat.W > 0 {
		fmt.Fprintf(out, "flat puck       window for its centre %s\n", flat.Format(sys))
	} else {
		fmt.Fprintln(out, "flat puck       does not pass at this angle")
	}
	fmt.Fprintf(out, "  closes at     %s\n", limitText(w.FlatLimitDeg, "never open"))
	fmt.Fprintf(out, "tumbling puck   %.1f %% of the orientations pass, mean window %s\n", 100*w.TumblingPass, areaText(w.TumblingAreaMM2, sys))
	fmt.Fprintf(out, "  closes at     %s, whatever the orientation\n\n", limitText(w.AnyLimitDeg, "never open"))
	writeLines(out, puck.LeftOut())
	fmt.Fprintln(out)
	writeLines(out, glass.Cautions())
}

func limitText(deg *float64, none string) string {
	if deg == nil {
		return none
	}
	return fmt.Sprintf("%.1f deg from the normal", *deg)
}

// areaText prints an area in square centimetres or square inches.
func areaText(mm2 float64, sys unit.System) string {
	if sys == unit.Imperial {
		return fmt.Sprintf("%.2f sq in", mm2/(unit.Inch.Millimetres()*unit.Inch.Millimetres()))
	}
	return fmt.Sprintf("%.1f cm2", mm2/100)
}
