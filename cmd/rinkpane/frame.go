package main

import (
	"bytes"
	"context"
	"fmt"
	"image/png"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

type frameFlags struct {
	source
	lensFlags
	hole                        string
	out                         target
	hood, empty, planes, checks bool
	moment                      unit.Maybe[int]
	seed                        uint64
	aim                         unit.Maybe[geom.Vec3]
	focal, focus                unit.Maybe[unit.Length]
	stop                        unit.Maybe[unit.Stop]
	orientation                 unit.Maybe[orientation]
	shutter                     unit.Maybe[unit.Shutter]
	speed                       unit.Maybe[unit.Speed]
	iso                         unit.Maybe[unit.ISO]
	size                        unit.Maybe[[2]int]
	through                     unit.Maybe[frame.Through]
	pane                        paneFlags
}

// What a picture is drawn with when nothing else is asked for.
const (
	usualAcross  = 1200   // pixels on the longer side
	mostAcross   = 6000   // pixels on a side
	mostMoments  = 10_000 // that --moment may count to
	bestOf       = 400    // moments of which a hole's best is taken
	frameAimHelp = "20 m, -3 m, 1.2 m"
)

func frameCommand(a *app) *cobra.Command {
	var f frameFlags
	c := &cobra.Command{
		Use:   "frame ARENA",
		Short: "What will the picture look like through this hole?",
		Long: `Draws the picture that a lens takes through a hole or a low window, as PNG or SVG:
the rink, a moment of a game, the hole's shadow, depth of field, motion blur and the
boards' ledge. Without --out it only tells the numbers.`,
		Example: `  # the slot from hole B1 with a 70-200 mm zoom at 120 mm
  rinkpane frame my.yaml --hole B1 --lens 70-200 --focal 120 --aim "24 m, 2 m, 1.2 m" --out b1.png

  # another moment, portrait, slower shutter
  rinkpane frame my.yaml --hole B1 --moment 12 --orientation portrait --shutter 1/250 --out b1.svg

  # the same as the first, through the worn pane instead of the hole
  rinkpane frame my.yaml --hole B1 --lens 70-200 --focal 120 --aim "24 m, 2 m, 1.2 m" \
    --through pane --out pane.png`,
		Args: oneArena,
		RunE: func(c *cobra.Command, args []string) error {
			if err := needFlags(c, "hole"); err != nil {
				return err
			}
			return runFrame(c.Context(), a, args[0], f)
		},
	}
	fl := c.Flags()
	fl.StringVar(&f.hole, "hole", "", "id of the hole or low window")
	f.kitFlag(c)
	f.lensFlags.flags(c)
	quantity(c, &f.orientation, "orientation", "word", form.Words(landscape, portrait), "landscape (the default) or portrait")
	fl.BoolVar(&f.hood, "hood", false, "the hood is on")
	f.out.flags(c, "out", "picture to write, .png or .svg")
	fl.BoolVar(&f.empty, "empty", false, "an empty rink")
	fl.BoolVar(&f.planes, "planes", false, "draw where the plane of focus and the limits of depth of field meet the ice")
	fl.BoolVar(&f.checks, "check-points", false, "number known places of the rink in the picture, to lay it over a real frame")
	quantity(c, &f.moment, "moment", "n", strconv.Atoi, "which of the sampled moments, from 0 (default: the hole's own best)")
	fl.Uint64Var(&f.seed, "seed", 1, "seed of the sampled moments, and of the picture's noise")
	quantity(c, &f.aim, "aim", "x,y,z", parsePlace, "point to aim at, from centre ice (default: the moment's subject)")
	quantity(c, &f.focal, "focal", "mm", unit.ParseFocal, "focal length, in mm unless said (default: the subject framed; with --aim or --moment the lens's shortest)")
	quantity(c, &f.focus, "focus", "length", unit.ParseLength, "focus distance (default: the aim's)")
	quantity(c, &f.stop, "stop", "f/N", unit.ParseStop, "stop (default: wide open)")
	quantity(c, &f.shutter, "shutter", "time", unit.ParseShutter, "shutter time (default 1/1000 s)")
	quantity(c, &f.speed, "speed", "speed", unit.ParseSpeed, "skaters' speed, of all alike (default: in the picture the moment's own, in the numbers 5 m/s)")
	quantity(c, &f.iso, "iso", "n", unit.ParseISO, "ISO that the picture is taken at (default: what faces at the aim ask for, as far as the body goes)")
	quantity(c, &f.size, "size", "w x h", parsePictureSize, "the picture's pixels (default 1200 on the longer side)")
	quantity(c, &f.through, "through", "hole|pane", frame.ParseThrough, "look through the hole, or through its pane as if it were whole (default hole)")
	f.pane.add(c)
	return c
}

func runFrame(ctx context.Context, a *app, path string, f frameFlags) error {
	if err := f.out.may(".png", ".svg"); err != nil {
		return err
	}
	if err := f.open(a, path); err != nil {
		return err
	}
	q, err := f.request(ctx)
	if err != nil {
		return err
	}
	s, err := frame.NewShot(f.arena, q)
	if err != nil {
		return err
	}
	r, err := frame.Measure(s, q)
	if err != nil {
		return err
	}
	if f.checks {
		size := f.pixels(s)
		r.Points = s.CheckPoints(size[0], size[1])
	}
	if err := f.write(s); err != nil {
		return err
	}
	return a.print(wire.Frame(r, f.out.path, f.arena.Units), func() string { return words.Frame(r, f.out.path, f.arena.Units) })
}

// request turns the flags into a picture's request.
func (f frameFlags) request(ctx context.Context) (frame.Request, error) {
	lens, body, err := f.lensFlags.of(&f.source)
	if err != nil {
		return frame.Request{}, err
	}
	m, err := f.subject(ctx)
	if err != nil {
		return frame.Request{}, err
	}
	upright, focal := f.orientation.Or(landscape) == portrait, lens.FocalMin
	if f.picksMoment() {
		focal = frame.FramedFocal(f.arena, f.hole, m, lens, body, upright)
	}
	use, err := fit.Use(lens, unit.Known(f.focal.Or(focal)), f.stop, f.hood, upright)
	if err != nil {
		return frame.Request{}, fmt.Errorf("--%w", err)
	}
	q := frame.Request{
		Hole: f.hole, Lens: lens, Body: body, Use: use, Focus: f.focus, Moment: &m, Planes: f.planes, Target: f.aim.Or(frame.Chest(m)),
		Shutter: f.shutter.Or(light.UsualShutter), Speed: f.speed.Or(frame.UsualSpeed), Paced: f.speed.IsZero(),
		ISO: f.iso, Seed: f.seed, Through: f.through.Or(frame.ByHole), Haze: f.pane.haze, Mirror: f.pane.stands,
	}
	if f.empty {
		q.Moment = nil
	}
	if f.checks {
		for _, l := range resect.Landmarks(f.arena) {
			q.Checks = append(q.Checks, frame.Check{Name: l.Name, At: l.At})
		}
	}
	return q, nil
}

// picksMoment reports whether the picture is of the hole's own best moment, framed: unless
// a moment or a place to aim at is asked for.
func (f frameFlags) picksMoment() bool { return f.moment.IsZero() && f.aim.IsZero() }

// subject samples the moment that is photographed.
func (f frameFlags) subject(ctx context.Context) (play.Moment, error) {
	n := f.moment.Or(0)
	if n < 0 || n >= mostMoments {
		return play.Moment{}, fmt.Errorf("--moment %d: write 0 to %d", n, mostMoments-1)
	}
	count := n + 1
	if f.picksMoment() {
		count = bestOf
	}
	set, err := play.Sample(ctx, f.arena.Rink, f.arena.Playing(), f.seed, count)
	if err != nil {
		return play.Moment{}, err
	}
	if f.picksMoment() {
		n = frame.BestMoment(f.arena, set, f.hole, nil)
	}
	return set.At(n), nil
}

// write writes the picture, if one was asked for.
func (f frameFlags) write(s *frame.Shot) error {
	if f.out.path == "" {
		return nil
	}
	if err := s.Dark(); err != nil {
		return fmt.Errorf("hole %s: %w", f.hole, err)
	}
	size := f.pixels(s)
	var b bytes.Buffer
	var err error
	if f.out.kind() == ".svg" {
		err = s.WriteSVG(&b, size[0], size[1])
	} else {
		err = s.WritePNG(&b, s.Picture(size[0], size[1]), png.DefaultCompression)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", f.out.path, err)
	}
	return f.out.write(b.Bytes())
}

// pixels are the picture's: as asked, else usualAcross on its longer side.
func (f frameFlags) pixels(s *frame.Shot) [2]int {
	long := max(s.Case.TanX, s.Case.TanY)
	return f.size.Or([2]int{int(usualAcross*s.Case.TanX/long + 0.5), int(usualAcross*s.Case.TanY/long + 0.5)})
}

// parsePlace reads x, y and z from centre ice; one closing unit serves all.
func parsePlace(s string) (geom.Vec3, error) {
	parts := strings.Split(s, ",")
	if len(parts) != 3 {
		return geom.Vec3{}, fmt.Errorf("%q: write x, y and z with units, as in %q", s, frameAimHelp)
	}
	closing := strings.TrimLeft(strings.TrimSpace(parts[2]), "+-0123456789.")
	var v [3]float64
	for i, p := range parts {
		p = strings.TrimSpace(p)
		if strings.TrimLeft(p, "+-0123456789.") == "" {
			p += closing
		}
		l, err := unit.ParseOffset(p)
		if err != nil {
			return geom.Vec3{}, fmt.Errorf("%c: %w", "xyz"[i], err)
		}
		v[i] = l.Metres()
	}
	return geom.Vec3{X: v[0], Y: v[1], Z: v[2]}, nil
}

func parsePictureSize(s string) ([2]int, error) {
	size, err := parsePixels(s)
	if err != nil {
		return size, err
	}
	if size[0] > mostAcross || size[1] > mostAcross {
		return size, fmt.Errorf("%q: at most %d pixels on a side", s, mostAcross)
	}
	return size, nil
}
