package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

type lightFlags struct {
	source
	lensFlags
	wanted      optics.Wanted
	lux         unit.Maybe[unit.Illuminance]
	calibration unit.Maybe[float64]
	mains       unit.Maybe[float64]
	holes       []string
}

func (f lightFlags) constant() optics.Calibration {
	return optics.Calibration(f.calibration.Or(float64(optics.DefaultCalibration)))
}

func lightCommand(a *app) *cobra.Command {
	var f lightFlags
	c := &cobra.Command{
		Use:   "light [ARENA]",
		Short: "Shutter, stop and ISO for the light on the ice",
		Long: `Solves the exposure for a light: give two of shutter, stop and ISO, and the third
is solved, exact and as the nearest third-stop mark. The meter's constant is 250
(ISO 2720) unless --calibration says otherwise.

With an ARENA, its light readings are interpolated over the ice, and every hole
gets a table: the light and the exposure of each zone of the ice, and what looks
sharp there. Without two settings, 1/1000 s and f/2.8 are meant.`,
		Example: `  # what ISO do 1000 lx ask for?
  rinkpane light --lux 1000 --shutter 1/1000 --stop f/2.8

  # which shutter time does ISO 6400 allow?
  rinkpane light --lux "1.2 klx" --iso 6400 --stop f/4

  # a whole rink, one hole of it
  rinkpane light my.yaml --hole B1 --lens 70-200`,
		Args: atMostOne,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 1 {
				return runLightArena(a, args[0], f)
			}
			return runLight(a, c, f)
		},
	}
	quantity(c, &f.lux, "lux", "light", unit.ParseIlluminance, `light on the subject, as 1000, "1.2 klx" or "110 fc"`)
	quantity(c, &f.wanted.Shutter, "shutter", "time", unit.ParseShutter, "exposure time, as 1/1000")
	quantity(c, &f.wanted.Stop, "stop", "stop", unit.ParseStop, "f-number, as f/2.8")
	quantity(c, &f.wanted.ISO, "iso", "ISO", unit.ParseISO, "sensitivity, as 3200")
	quantity(c, &f.calibration, "calibration", "number", parseNumber, "the meter's constant C, 240 to 400 (default 250)")
	quantity(c, &f.mains, "mains", "Hz", parseMains, "50 or 60: adds the flicker-safe times")
	c.Flags().StringSliceVar(&f.holes, "hole", nil, "with an ARENA: only these holes")
	f.lensFlags.flags(c)
	f.kitFlag(c)
	return c
}

func parseMains(s string) (float64, error) {
	switch s {
	case "50", "50 Hz", "50Hz":
		return optics.Mains50, nil
	case "60", "60 Hz", "60Hz":
		return optics.Mains60, nil
	}
	return 0, fmt.Errorf("mains %q: write 50 or 60", s)
}

func runLight(a *app, c *cobra.Command, f lightFlags) error {
	if err := refuseFlags(c, []string{"hole", "lens", "body", "kit"}, "needs an ARENA, as in rinkpane light my.yaml"); err != nil {
		return err
	}
	if !c.Flags().Changed("lux") {
		return fmt.Errorf("light needs --lux, and two of --shutter, --stop and --iso; see the example in rinkpane light --help")
	}
	lux := f.lux.Or(0)
	x, err := f.constant().Solve(lux, f.wanted)
	if err != nil {
		return err
	}
	sys, err := a.system(unit.Metric)
	if err != nil {
		return err
	}
	var safe []unit.Shutter
	if mains, ok := f.mains.Get(); ok {
		if safe, err = optics.FlickerSafe(mains); err != nil {
			return err
		}
	}
	return a.print(wire.LightAlone{Light: lux, Exposure: wire.ExposureOf(x), FlickerSafe: safe}, func() string {
		return words.Exposure(lux, x, f.mains, safe, sys)
	})
}

// runLightArena answers for every hole and zone of an arena; with none of
// shutter, stop and ISO the usual setting is meant.
func runLightArena(a *app, path string, f lightFlags) error {
	if err := f.open(a, path); err != nil {
		return err
	}
	lens, body, err := f.lensFlags.of(&f.source)
	if err != nil {
		return err
	}
	if f.wanted == (optics.Wanted{}) {
		f.wanted = light.Usual()
	}
	r, err := light.Compute(f.arena, light.Request{
		Wanted: f.wanted, Calibration: f.constant(), Uniform: f.lux, Mains: f.mains, Holes: f.holes, Body: body, Lens: unit.Known(lens),
	})
	if err != nil {
		return err
	}
	return a.verdict(r.Known, wire.LightOf(r, f.arena.Units), func() string {
		return words.LightReport(r, f.wanted, f.arena.Units)
	})
}
