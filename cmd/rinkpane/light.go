package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/wire"
)

type lightFlags struct {
	lux         unit.Maybe[unit.Illuminance]
	shutter     unit.Maybe[unit.Shutter]
	stop        unit.Maybe[unit.Stop]
	iso         unit.Maybe[unit.ISO]
	calibration unit.Maybe[float64]
	mains       unit.Maybe[float64]
	holes       []string
	lens        string
	body        string
	kit         string
}

func (f lightFlags) wanted() optics.Wanted {
	return optics.Wanted{Shutter: f.shutter, Stop: f.stop, ISO: f.iso}
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
	quantity(c, &f.shutter, "shutter", "time", unit.ParseShutter, "exposure time, as 1/1000")
	quantity(c, &f.stop, "stop", "stop", unit.ParseStop, "f-number, as f/2.8")
	quantity(c, &f.iso, "iso", "ISO", unit.ParseISO, "sensitivity, as 3200")
	quantity(c, &f.calibration, "calibration", "number", parseNumber, "the meter's constant C, 240 to 400 (default 250)")
	quantity(c, &f.mains, "mains", "Hz", parseMains, "50 or 60: adds the flicker-safe times")
	c.Flags().StringSliceVar(&f.holes, "hole", nil, "with an ARENA: only these holes")
	c.Flags().StringVar(&f.lens, "lens", "", "with an ARENA: the lens, by its id in the kit")
	c.Flags().StringVar(&f.body, "body", "", "with an ARENA: the body, by its id in the kit")
	c.Flags().StringVar(&f.kit, "kit", "", "with an ARENA: your own kit file instead of the built-in one")
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

// exposureAnswer is the JSON of the bare form.
type exposureAnswer struct {
	LightLx float64 `json:"light_lx"`
	wire.Exposure
	FlickerSafe []unit.Shutter `json:"flicker_safe_s,omitempty"`
}

func runLight(a *app, c *cobra.Command, f lightFlags) error {
	for _, name := range []string{"hole", "lens", "body", "kit"} {
		if c.Flags().Changed(name) {
			return fmt.Errorf("--%s needs an ARENA, as in rinkpane light my.yaml", name)
		}
	}
	if !c.Flags().Changed("lux") {
		return errors.New("light needs --lux, and two of --shutter, --stop and --iso; see the example in rinkpane light --help")
	}
	lux := f.lux.Or(0)
	x, err := f.constant().Solve(lux, f.wanted())
	if err != nil {
		return err
	}
	sys, err := a.system(unit.Metric)
	if err != nil {
		return err
	}
	answer := exposureAnswer{LightLx: lux.Lux(), Exposure: wire.ExposureOf(x)}
	mains, known := f.mains.Get()
	if known {
		if answer.FlickerSafe, err = optics.FlickerSafe(mains); err != nil {
			return err
		}
	}
	return a.print(answer, func(w io.Writer) {
		writeExposure(w, lux, x, sys)
		if known {
			writeFlicker(w, mains, answer.FlickerSafe, x.Shutter)
		}
	})
}

func writeExposure(w io.Writer, lux unit.Illuminance, x optics.Exposure, sys unit.System) {
	shutter, stop, iso := x.Marks()
	solved := func(name string) string {
		if x.Solved == name {
			return "  <- solved"
		}
		return ""
	}
	fmt.Fprintf(w, "light    %s, EV %.2f at ISO 100\n\n", lux.Format(sys), x.EV100)
	fmt.Fprintf(w, "shutter  %-12s mark %-8s%s\n", x.Shutter.Format(), shutter.Text, solved("shutter"))
	fmt.Fprintf(w, "stop     %-12s mark %-8s%s\n", x.Stop.Format(), stop.Text, solved("stop"))
	fmt.Fprintf(w, "ISO      %-12.4g mark %-8v%s\n", float64(x.ISO), iso.Nominal, solved("iso"))
}
