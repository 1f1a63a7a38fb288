package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

type opticsFlags struct {
	focal, coc, distance unit.Maybe[unit.Length]
	stop                 unit.Maybe[unit.Stop]
	sensor               unit.Maybe[unit.Size]
	pixels               unit.Maybe[[2]int]
	speed                unit.Maybe[unit.Speed]
	shutter              unit.Maybe[unit.Shutter]
	follow               unit.Maybe[float64]
}

func opticsCommand(a *app) *cobra.Command {
	var f opticsFlags
	c := &cobra.Command{
		Use:   "optics",
		Short: "Depth of field, view, magnification and blur of a lens",
		Long: `Says what a lens focused on a subject gives: the range that looks sharp, the angle
of view, the magnification and, for a subject that crosses the view, its blur in
pixels. Distances are from the lens; the lens is thin.`,
		Example: `  # a skater at full speed, 15 m away
  rinkpane optics --focal "200 mm" --stop f/2.8 --distance "15 m" \
    --sensor "36 x 24 mm" --pixels "6000 x 4000" --speed 8.2 --shutter 1/1000`,
		Args: noArgument,
		RunE: func(c *cobra.Command, _ []string) error { return runOptics(a, c, f) },
	}
	quantity(c, &f.focal, "focal", "mm", unit.ParseFocal, `focal length, as 200 or "200 mm"`)
	quantity(c, &f.stop, "stop", "stop", unit.ParseStop, "f-number, as f/2.8")
	quantity(c, &f.coc, "coc", "length", unit.ParseLength, `circle of confusion (default: 0.03 mm on 36 x 24 mm, in proportion)`)
	quantity(c, &f.distance, "distance", "length", unit.ParseLength, `lens to subject, as "15 m"`)
	quantity(c, &f.sensor, "sensor", "size", unit.ParseSize, `as "36 x 24 mm" (the default)`)
	quantity(c, &f.pixels, "pixels", "count", parsePixels, `as "6000 x 4000"`)
	quantity(c, &f.speed, "speed", "speed", unit.ParseSpeed, "of the subject across the view, m/s unless said")
	quantity(c, &f.shutter, "shutter", "time", unit.ParseShutter, "exposure time, as 1/1000")
	quantity(c, &f.follow, "follow", "share", parseNumber, "share of the subject's motion that the pan follows, 0 to 1")
	return c
}

func parsePixels(s string) ([2]int, error) {
	w, h, err := unit.ParsePixels(s)
	return [2]int{w, h}, err
}

func runOptics(a *app, c *cobra.Command, f opticsFlags) error {
	if err := needFlags(c, "focal", "stop", "distance"); err != nil {
		return err
	}
	k, err := f.shot()
	if err != nil {
		return err
	}
	sys, err := a.system(unit.SystemOf(c.Flags().Lookup("distance").Value.String()))
	if err != nil {
		return err
	}
	r, err := k.Report()
	if err != nil {
		return err
	}
	return a.print(wire.Shot(k, r), func() string { return words.Shot(k, r, sys) })
}

// shot gathers the flags; blur wants speed, shutter and pixels, all or none.
func (f opticsFlags) shot() (optics.Shot, error) {
	sensor := f.sensor.Or(optics.FullFrame)
	k := optics.Shot{
		Focal: f.focal.Or(0), Stop: f.stop.Or(0), Distance: f.distance.Or(0),
		Coc: f.coc.Or(optics.CircleOfConfusion(sensor)), Sensor: sensor,
		PixelsAcross: f.pixels.Or([2]int{})[0],
	}
	speed, moves := f.speed.Get()
	shutter, timed := f.shutter.Get()
	follow, pans := f.follow.Get()
	switch {
	case !moves && !timed && !pans:
		return k, nil
	case !moves || !timed || k.PixelsAcross == 0:
		return k, errors.New(`blur needs --speed, --shutter and --pixels together, as --speed 8.2 --shutter 1/1000 --pixels "6000 x 4000"`)
	case follow < 0 || follow > 1:
		return k, fmt.Errorf("--follow %v: write a share from 0 (held still) to 1 (followed exactly)", follow)
	}
	k.Moving = &optics.Crossing{Speed: speed, Shutter: shutter, Follow: follow}
	return k, nil
}
