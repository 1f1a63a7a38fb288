package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/keep/frames"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/edit"
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
	take   target
}

// usualSensor is taken when nothing is said of the sensor: full frame.
func usualSensor() unit.Size { return unit.Size{W: 36 * unit.Millimetre, H: 24 * unit.Millimetre} }

func resectCommand(a *app) *cobra.Command {
	var f resectFlags
	c := &cobra.Command{
		Use:   "resect ARENA [FRAME ...]",
		Short: "Find where a hole truly stands, from a frame that was taken through it",
		Long: `Finds the camera that took a frame from four or more places of the rink that are
marked in it, better six or more, and so where the hole is that it looked through,
with an error ellipse. Pixels count from the frame's upper left corner, x to the right
and y down, pixel centres at .5. A column frame in the file of marks names the frame
of each mark; frames of one hole are solved together. A FRAME named tells its own size
and focal length, as it is to be turned. Landmarks (--landmarks lists
this arena's): B:post-bench:foot, B:post-box:top, A:goal-line:box, B:blue-line:bench,
red-line:box, B:spot-bench, A:neutral-box, centre-spot, B:circle-box:top, pane:P031.`,
		Example: `  rinkpane resect arena.yaml DSC_0815.JPG --marks b1.csv
  rinkpane resect arena.yaml --marks b1.csv --pixels "6000 x 4000" --focal 200

  # the file of marks
  landmark,x_px,y_px
  B:post-bench:foot,2736.0,2689.2
  B:post-bench:top,2733.0,1243.8`,
		Args: func(c *cobra.Command, args []string) error { return oneArena(c, args[:min(len(args), 1)]) },
		RunE: func(c *cobra.Command, args []string) error { return runResect(c.Context(), a, args[0], args[1:], f) },
	}
	fl := c.Flags()
	f.rulesFlag(c)
	fl.StringVar(&f.marks, "marks", "", "file of marks: landmark,x_px,y_px and, if there are several frames, frame")
	quantity(c, &f.pixels, "pixels", "count", parsePixels, `the frame's size, as "6000 x 4000"`)
	quantity(c, &f.sensor, "sensor", "size", unit.ParseSize, `the sensor's, as the frame is held (default "36 x 24 mm")`)
	quantity(c, &f.focal, "focal", "mm", unit.ParseFocal, "focal length, if it is known exactly (default: found from the marks)")
	quantity(c, &f.about, "focal-about", "mm", unit.ParseFocal, "focal length as the zoom ring or the frame's data tell it, within some percent")
	f.take.flags(c, "take-over", "write the arena with the hole where the frames say it is to this file (.yaml)")
	fl.BoolVar(&f.names, "landmarks", false, "list this arena's landmarks instead")
	return c
}

func runResect(ctx context.Context, a *app, path string, pictures []string, f resectFlags) error {
	if err := f.take.may(".yaml", ".yml"); err != nil {
		return err
	}
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
	if err := f.describe(frames, pictures); err != nil {
		return err
	}
	got, err := resect.Solve(ctx, f.arena, frames)
	if err != nil {
		return fmt.Errorf("%s: %w", f.marks, err)
	}
	if err := f.takeOver(got); err != nil {
		return err
	}
	return a.print(wire.Resect(got, f.arena.Units), func() string { return words.ResectText(f.arena, got, f.arena.Units) })
}

// describe says of each frame its size, sensor and focal length: from the picture of its
// name, or, of marks that name none, from the only one; flags come before pictures.
func (f resectFlags) describe(marked []resect.Frame, pictures []string) error {
	if len(marked) == 1 && len(pictures) == 1 && marked[0].Name == "" {
		marked[0].Name = filepath.Base(pictures[0])
	}
	for _, path := range pictures {
		i := slices.IndexFunc(marked, func(m resect.Frame) bool { return m.Name == filepath.Base(path) })
		if i < 0 {
			return fmt.Errorf("%s: no mark is made in a frame of this name; name it in the column frame", path)
		}
		said, trouble := frames.ReadFile(path)
		if trouble.Cause != "" && trouble.Cause != frames.NoTime {
			return fmt.Errorf("%s: %s; give --pixels instead", path, words.UnreadCause(string(trouble.Cause)))
		}
		marked[i].Pixels = said.Shown()
		if wide, ok := said.Across(); ok {
			marked[i].Sensor = wide
		}
		if focal, ok := said.Focal.Get(); ok {
			marked[i].Focal = resect.FocalAbout(focal)
		}
	}
	for i := range marked {
		m := &marked[i]
		m.Pixels = f.pixels.Or(m.Pixels)
		if size, said := f.sensor.Get(); said {
			m.Sensor = size.W
		} else if m.Sensor == 0 {
			m.Sensor = usualSensor().W
			if m.Pixels[1] > m.Pixels[0] {
				m.Sensor = usualSensor().H
			}
		}
		if focal, known := f.focal.Get(); known {
			m.Focal = resect.FocalExactly(focal)
		} else if focal, told := f.about.Get(); told {
			m.Focal = resect.FocalAbout(focal)
		}
		if m.Pixels[0] == 0 {
			return errors.New(`resect needs the frame, or --pixels with its size, as "6000 x 4000"`)
		}
	}
	return nil
}

// takeOver writes the arena with the hole where the frames say it is, when it is asked for.
func (f resectFlags) takeOver(got resect.Answer) error {
	if f.take.path == "" {
		return nil
	}
	doc, _, err := edit.Editor{Standard: f.Rules.Standard}.Apply(f.doc, []edit.Edit{resect.TakeOver(got)})
	if err == nil {
		err = f.take.write(doc.Bytes())
	}
	if err != nil {
		return fmt.Errorf("--take-over: %w", err)
	}
	return nil
}
