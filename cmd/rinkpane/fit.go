package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// fitFlags are the flags of both forms: a lens and a hole by their numbers, or
// a lens of the kit in a hole of an arena.
type fitFlags struct {
	size, sensor, bodySize     unit.Maybe[unit.Size]
	corner, thick, nose, focal unit.Maybe[unit.Length]
	depth, pupil, front, back  unit.Maybe[unit.Length]
	length                     unit.Maybe[unit.Length]
	stop                       unit.Maybe[unit.Stop]
	pivot                      unit.Maybe[fit.Pivot]
	orientation                unit.Maybe[orientation]
	at                         unit.Maybe[[2]unit.Angle]
	step                       unit.Maybe[unit.Angle]
	source
	lensFlags
	hole string
	hood bool
}

// orientation is how the camera is held.
type orientation string

const (
	landscape orientation = "landscape"
	portrait  orientation = "portrait"
)

// The loss tables: rows this far apart unless --step says otherwise, and never
// wider apart nor finer.
const (
	fitStep     = 5 * unit.Degree
	fitStepFine = unit.Degree / 20
)

// fitEnd is how far --at may aim from straight ahead: the end of the range search.
const fitEnd = 89.9 * unit.Degree

func fitCommand(a *app) *cobra.Command {
	var f fitFlags
	c := &cobra.Command{
		Use:   "fit [ARENA]",
		Short: "How far can a lens pan in a hole, and what light does it lose?",
		Long: `Puts a lens into a hole in three dimensions: whether the nose enters, how far the
lens pans and tilts until it touches the pane (body), until the camera behind it meets
the glass (camera), until a frame corner loses 5 % of its light (clear) and until the
frame's centre loses half or the camera pushes the nose out of the hole (usable), and
the loss on the way. The camera is hand-held: for each aim it stands in the best place, unless
--pivot centre fixes its axis to the hole's centre. Nothing passes the rink face.`,
		Example: `  # a 70-200 mm f/2.8 zoom at 200 mm in the common hole of a half-inch pane
  rinkpane fit --hole-size "5.5 in x 4.5 in" --hole-corner "1/2 in" --thick "1/2 in" \
    --nose "89 mm" --focal "200 mm" --stop f/2.8 --at 40,5

  # a lens of the kit in a hole of an arena, with its hood
  rinkpane fit my.yaml --hole B1 --lens 70-200 --focal "200 mm" --hood`,
		Args: atMostOne,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 1 {
				return runFitArena(a, c, args[0], f)
			}
			return runFitBare(a, c, f)
		},
	}
	quantity(c, &f.size, "hole-size", "size", unit.ParseSize, `width x height of the hole, as "5.5 in x 4.5 in"`)
	quantity(c, &f.corner, "hole-corner", "length", unit.ParseLength, "corner radius of the hole (default 0: square)")
	quantity(c, &f.thick, "thick", "length", unit.ParseLength, "thickness of the pane (with an arena: when it is not surveyed)")
	quantity(c, &f.nose, "nose", "length", unit.ParseLength, "outer diameter of the lens's foremost part")
	quantity(c, &f.focal, "focal", "mm", unit.ParseFocal, "focal length, in mm unless said (with an arena: the lens's longest by default)")
	quantity(c, &f.stop, "stop", "f/N", unit.ParseStop, "stop (with an arena: wide open by default)")
	quantity(c, &f.sensor, "sensor", "size", unit.ParseSize, `of the camera, landscape (default "36 x 24 mm")`)
	quantity(c, &f.depth, "pupil-depth", "length", unit.ParseLength, "of the entrance pupil behind the nose (default: the front glass just passes the field)")
	quantity(c, &f.pupil, "pupil", "length", unit.ParseLength, "diameter of the entrance pupil (default focal length over stop)")
	quantity(c, &f.front, "front", "length", unit.ParseLength, "clear diameter of the front glass (default 0.9 x nose)")
	quantity(c, &f.length, "length", "length", unit.ParseLength, "of the lens, from the nose to the camera's mount (with --body-size: where the camera meets the glass)")
	quantity(c, &f.bodySize, "body-size", "size", unit.ParseSize, `width x height of the camera's front, landscape, as "138 x 98 mm"`)
	quantity(c, &f.back, "back", "length", unit.ParseLength, "hold the nose's foremost point this far behind the pane's rear face")
	quantity(c, &f.pivot, "pivot", "free|centre", fit.ParsePivot, "hand-held, or a fixed camera whose axis goes through the hole's centre (default free)")
	quantity(c, &f.orientation, "orientation", "word", form.Words(landscape, portrait), "landscape (the default) or portrait")
	quantity(c, &f.at, "at", "pan,tilt", parseAim, "also tell the light at this aim, degrees: --at=-40,5 looks left and up")
	quantity(c, &f.step, "step", "angle", unit.ParseAngle, "between two rows of the loss tables, at most 5 degrees (default 5)")
	fl := c.Flags()
	fl.StringVar(&f.hole, "hole", "", "hole of the arena by its id")
	f.lensFlags.flags(c)
	f.kitFlag(c)
	fl.BoolVar(&f.hood, "hood", false, "the hood is on")
	return c
}

// The flags that belong to one form only.
var (
	fitBareFlags  = []string{"hole-size", "hole-corner", "nose", "sensor", "pupil-depth", "pupil", "front", "length", "body-size"}
	fitArenaFlags = []string{"hole", "lens", "body", "kit", "hood"}
)

// parseAim reads "40,5": pan and tilt, each an angle.
func parseAim(s string) ([2]unit.Angle, error) {
	var out [2]unit.Angle
	parts := strings.Split(s, ",")
	if len(parts) != 2 {
		return out, fmt.Errorf("%s: write pan and tilt in degrees with a comma, as 40,5", form.Quote(s))
	}
	for i, name := range []string{"pan", "tilt"} {
		v, err := unit.ParseAngle(strings.TrimSpace(parts[i]))
		if err != nil {
			return out, fmt.Errorf("%s: %w", name, err)
		}
		if v < -fitEnd || v > fitEnd {
			return out, fmt.Errorf("%s %s: write -89.9 to 89.9 degrees", name, v.Format())
		}
		out[i] = v
	}
	return out, nil
}

func runFitBare(a *app, c *cobra.Command, f fitFlags) error {
	if err := refuseFlags(c, fitArenaFlags, "is for a hole of an arena; name its file"); err != nil {
		return err
	}
	if err := needFlags(c, "hole-size", "thick", "nose", "focal"); err != nil {
		return err
	}
	if !c.Flags().Changed("stop") && !c.Flags().Changed("pupil") {
		return fmt.Errorf("fit needs --stop, or --pupil; see the example in rinkpane fit --help")
	}
	sys, err := a.system(unit.SystemOf(c.Flags().Lookup("hole-size").Value.String()))
	if err != nil {
		return err
	}
	s := fit.Setup{
		Hole: f.size.Or(unit.Size{}), Corner: f.corner.Or(0), Thick: f.thick.Or(0),
		Nose: f.nose.Or(0), Focal: f.focal.Or(0), Stop: f.stop.Or(0), Sensor: f.sensor.Or(optics.FullFrame),
		Portrait: f.orientation.Or(landscape) == portrait,
		Pupil:    f.pupil, Front: f.front, PupilDepth: f.depth, Length: f.length, Body: f.bodySize, Back: f.back, Pivot: f.pivot.Or(fit.Free),
	}
	cs, err := s.Case()
	if err != nil {
		return err
	}
	return f.print(a, cs, "", sys, nil)
}

// print computes and prints the fit; the answer is no when the nose cannot enter
// the hole.
func (f fitFlags) print(a *app, c fit.Case, title string, sys unit.System, assumed []arena.Assumption) error {
	step := f.step.Or(fitStep)
	if step < fitStepFine || step > fitStep {
		return fmt.Errorf("--step %s: write 0.05 to 5 degrees", step.Format())
	}
	r := c.Answer(step, f.at)
	r.Assumed = assumed
	return a.verdict(r.Limits.Fits, wire.Fit(r, sys), func() string {
		return words.Fit(title, r, f.orientation.Or(landscape) == portrait, sys)
	})
}

func runFitArena(a *app, c *cobra.Command, path string, f fitFlags) error {
	if err := refuseFlags(c, fitBareFlags, "is for a lens and a hole by their numbers; leave it out or leave the arena out"); err != nil {
		return err
	}
	if err := f.open(a, path); err != nil {
		return err
	}
	if f.hole == "" || f.lens == "" {
		return fmt.Errorf("fit with an arena needs --hole (%s) and --lens (%s)", strings.Join(f.arena.Openings(), ", "), strings.Join(f.Kit.LensIDs(), ", "))
	}
	lens, body, err := f.lensFlags.of(&f.source)
	if err != nil {
		return err
	}
	if t, given := f.thick.Get(); given {
		f.arena = f.arena.TakingThickness(t)
	}
	openings, err := f.openings([]string{f.hole})
	if err != nil {
		return err
	}
	use, err := fit.Use(lens, f.focal, f.stop, f.hood, f.orientation.Or(landscape) == portrait)
	if err != nil {
		return fmt.Errorf("--%w", err)
	}
	cs, err := fit.FromKit(openings[0], lens, body, use)
	if err != nil {
		return err
	}
	cs.Pivot = f.pivot.Or(fit.Free)
	if b, ok := f.back.Get(); ok {
		cs.Back = unit.Known(b.Metres())
	}
	if err := cs.Validate(); err != nil {
		return err
	}
	title := fmt.Sprintf("%s, hole %s: %s at %s, f/%.3g", f.arena.Name, f.hole, lens.Name, use.Focal.Format(unit.Metric), float64(use.Stop))
	if use.Hood {
		title += ", hood on"
	}
	return f.print(a, cs, title, f.arena.Units, arena.Assumed(fit.Facts(openings[0])...))
}
