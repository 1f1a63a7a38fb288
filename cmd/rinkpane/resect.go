package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

type resectFlags struct {
	source
	marks  string
	pixels unit.Maybe[[2]int]
	sensor unit.Maybe[unit.Size]
	focal  unit.Maybe[unit.Length]
	about  unit.Maybe[unit.Length]
	names  bool
}

// usualSensor is taken when nothing is said of the sensor: full frame.
func usualSensor() unit.Size { return unit.Size{W: 36 * unit.Millimetre, H: 24 * unit.Millimetre} }

func resectCommand(a *app) *cobra.Command {
	var f resectFlags
	c := &cobra.Command{
		Use:   "resect ARENA",
		Short: "Find where a hole truly stands, from a frame that was taken through it",
		Long: `Finds the camera that took a frame from four or more places of the rink that are
marked in it, better six or more, and so where the hole is that it looked through,
with an error ellipse. Pixels count from the frame's upper left corner, x to the right
and y down, pixel centres at .5. A column frame in the file of marks names the frame
of each mark; frames of one hole are solved together. Landmarks (--landmarks lists
this arena's): B:post-bench:foot, B:post-box:top, A:goal-line:box, B:blue-line:bench,
red-line:box, B:spot-bench, A:neutral-box, centre-spot, B:circle-box:top, pane:P031.`,
		Example: `  rinkpane resect arena.yaml --marks b1.csv --pixels "6000 x 4000" --focal 200

  # the file of marks
  landmark,x_px,y_px
  B:post-bench:foot,2739.0,2683.9
  B:post-bench:top,2736.0,1242.8`,
		Args: oneArena,
		RunE: func(c *cobra.Command, args []string) error { return runResect(a, args[0], f) },
	}
	fl := c.Flags()
	fl.StringVar(&f.marks, "marks", "", "file of marks: landmark,x_px,y_px and, if there are several frames, frame")
	quantity(c, &f.pixels, "pixels", "count", parsePixels, `the frame's size, as "6000 x 4000"`)
	quantity(c, &f.sensor, "sensor", "size", unit.ParseSize, `the sensor's, as the frame is held (default "36 x 24 mm")`)
	quantity(c, &f.focal, "focal", "mm", unit.ParseFocal, "focal length, if it is known exactly (default: found from the marks)")
	quantity(c, &f.about, "focal-about", "mm", unit.ParseFocal, "focal length as the zoom ring or the frame's data tell it, within some percent")
	fl.BoolVar(&f.names, "landmarks", false, "list this arena's landmarks instead")
	return c
}

func runResect(a *app, path string, f resectFlags) error {
	if f.marks == "" && !f.names {
		return errors.New("resect needs --marks; see the example in rinkpane resect --help")
	}
	if path == "-" && f.marks == "-" {
		return errors.New("standard input cannot be both the arena and the marks; name a file for one of them")
	}
	if !f.focal.IsZero() && !f.about.IsZero() {
		return errors.New("--focal and --focal-about together: give one or the other")
	}
	if err := f.open(a, path); err != nil {
		return err
	}
	if f.names {
		list := resect.Landmarks(f.arena)
		return a.print(wire.Landmarks(list), func() string { return words.Landmarks(list, f.arena.Units) })
	}
	var frames []resect.Frame
	if err := withInput(a, f.marks, func(name string, r io.Reader) (err error) { frames, err = resect.ReadPins(name, r); return err }); err != nil {
		return err
	}
	pixels, told := f.pixels.Get()
	if !told {
		return errors.New(`resect needs --pixels, the frame's size, as "6000 x 4000"`)
	}
	for i := range frames {
		frames[i].Pixels, frames[i].Sensor = pixels, f.sensor.Or(usualSensor()).W
		if focal, known := f.focal.Get(); known {
			frames[i].Focal = resect.FocalExactly(focal)
		} else if focal, told := f.about.Get(); told {
			frames[i].Focal = resect.FocalAbout(focal)
		}
	}
	got, err := resect.Solve(f.arena, frames)
	if err != nil {
		return fmt.Errorf("%s: %w", f.marks, err)
	}
	return a.print(wire.Resect(got, f.arena.Units), func() string { return words.ResectText(f.arena, got, f.arena.Units) })
}
