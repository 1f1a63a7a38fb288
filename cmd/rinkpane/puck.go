package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"example.org/rinkpane/puck"
	"example.org/rinkpane/unit"
)

// puckFlags are the flags of the bare form: one hole without an arena.
type puckFlags struct {
	size, thick, angle string
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
		Use:   "puck",
		Short: "What can come through a hole, and where does it go?",
		Long: `Says what can come through a photo hole: the window that a flat and a tumbling
puck have at an angle from the pane's normal, and the angle at which it closes.
It is no strength check.`,
		Example: `  # the common hole in a half-inch pane, a puck coming in at 30 degrees
  rinkpane puck --hole-size "5.5 in x 4.5 in" --thick "1/2 in" --angle 30`,
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error { return runPuckBare(a, f) },
	}
	c.Flags().StringVar(&f.size, "hole-size", "", `width x height of the hole, as "5.5 in x 4.5 in"`)
	c.Flags().StringVar(&f.thick, "thick", "", `thickness of the pane, as "12.7 mm"`)
	c.Flags().StringVar(&f.angle, "angle", "0", "angle of the flight from the pane's normal, in the horizontal plane, degrees")
	return c
}

func runPuckBare(a *app, f puckFlags) error {
	if f.size == "" || f.thick == "" {
		return errors.New(`puck needs --hole-size "5.5 in x 4.5 in" and --thick "12.7 mm"`)
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
	sys, err := a.system(unit.Metric)
	if err != nil {
		return err
	}
	w := windowAt(o, q)
	return a.print(w, func(out io.Writer) { writeWindow(out, o, q, w, sys) })
}

func windowAt(o puck.Opening, q unit.Angle) bareWindow {
	flat := o.Flat(q)
	tumbling := o.Tumbling(puck.Flight{Along: q}, puck.NewOrientations(tumblingDraws, 1))
	return bareWindow{
		FlatWindowMM:    [2]float64{flat.W.Millimetres(), flat.H.Millimetres()},
		FlatLimitDeg:    degrees(o.FlatLimit()),
		AnyLimitDeg:     degrees(o.AnyLimit()),
		TumblingAreaMM2: tumbling.AreaM2 * 1e6,
		TumblingPass:    tumbling.Pass,
	}
}

// degrees is an angle for JSON: null when there is none.
func degrees(m unit.Maybe[unit.Angle]) *float64 {
	q, ok := m.Get()
	if !ok {
		return nil
	}
	d := q.Degrees()
	return &d
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
	for _, line := range puck.LeftOut() {
		fmt.Fprintln(out, line)
	}
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
