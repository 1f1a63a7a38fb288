package main

import (
	"bytes"
	"fmt"
	"image/png"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/tell/wire"
)

type frameFlags struct {
	hole, kit, lens, body      string
	out                        string
	force, hood, empty, planes bool
	moment                     int
	seed                       uint64
	aim                        unit.Maybe[geom.Vec3]
	focal, focus               unit.Maybe[unit.Length]
	stop                       unit.Maybe[unit.Stop]
	orientation                unit.Maybe[orientation]
	shutter                    unit.Maybe[unit.Shutter]
	speed                      unit.Maybe[unit.Speed]
	size                       unit.Maybe[[2]int]
	through                    unit.Maybe[frame.Through]
	pane                       paneFlags
}

// What a picture is drawn with when nothing else is asked for.
const (
	usualAcross  = 1200   // pixels on the longer side
	mostAcross   = 6000   // pixels on a side
	mostMoments  = 10_000 // that --moment may count to
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
  rinkpane frame my.yaml --hole B1 --lens 70-200 --focal 120 --aim "24 m, 2 m, 1.2 m" --through pane --out pane.png`,
		Args: oneArena,
		RunE: func(c *cobra.Command, args []string) error {
			if err := needFlags(c, "hole"); err != nil {
				return err
			}
			return runFrame(a, args[0], f)
		},
	}
	fl := c.Flags()
	fl.StringVar(&f.hole, "hole", "", "id of the hole or low window")
	fl.StringVar(&f.kit, "kit", "", "kit file (default: the built-in kit)")
	fl.StringVar(&f.lens, "lens", "", "lens of the kit (default: the usual 70-200 mm zoom)")
	fl.StringVar(&f.body, "body", "", "body of the kit (default: its first)")
	quantity(c, &f.orientation, "orientation", "word", form.Words(landscape, portrait), "landscape (the default) or portrait")
	fl.BoolVar(&f.hood, "hood", false, "the hood is on")
	fl.StringVar(&f.out, "out", "", "picture to write, .png or .svg")
	fl.BoolVar(&f.force, "force", false, "overwrite the picture")
	fl.BoolVar(&f.empty, "empty", false, "an empty rink")
	fl.BoolVar(&f.planes, "planes", false, "draw where the plane of focus and the limits of depth of field meet the ice")
	fl.IntVar(&f.moment, "moment", 0, "which of the sampled moments, from 0")
	fl.Uint64Var(&f.seed, "seed", 1, "seed of the sampled moments")
	quantity(c, &f.aim, "aim", "x,y,z", parsePlace, "point to aim at, from centre ice (default: the moment's subject)")
	quantity(c, &f.focal, "focal", "mm", unit.ParseFocal, "focal length, in mm unless said (default: the lens's shortest)")
	quantity(c, &f.focus, "focus", "length", unit.ParseLength, "focus distance (default: the aim's)")
	quantity(c, &f.stop, "stop", "f/N", unit.ParseStop, "stop (default: wide open)")
	quantity(c, &f.shutter, "shutter", "time", unit.ParseShutter, "shutter time (default 1/1000 s)")
	quantity(c, &f.speed, "speed", "speed", unit.ParseSpeed, "skaters' speed (default 5 m/s)")
	quantity(c, &f.through, "through", "hole|pane", frame.ParseThrough, "look through the hole, or through its pane as if it were whole (default hole)")
	f.pane.add(c)
	quantity(c, &f.size, "size", "w x h", parsePictureSize, "the picture's pixels (default 1200 on the longer side)")
	return c
}

// frameJSON is the contract's answer.
type frameJSON struct {
	Hole         string            `json:"hole"`
	Lens         string            `json:"lens"`
	PanDeg       float64           `json:"pan_deg"`
	TiltDeg      float64           `json:"tilt_deg"`
	DistanceM    float64           `json:"distance_m"`
	SubjectPx    float64           `json:"subject_px"`
	Transmission float64           `json:"transmission"`
	Corners      [4]float64        `json:"transmission_corners"`
	FocalMM      float64           `json:"focal_mm"`
	Stop         float64           `json:"stop"`
	Served       float64           `json:"served"` // share of the frame about its centre that the pose is for, 1: all of it
	BlurPx       float64           `json:"blur_px"`
	File         string            `json:"file,omitempty"`
	Pane         *wire.PaneSeen    `json:"pane,omitempty"` // what the pane does, of a picture through it
	Assumed      []wire.Assumption `json:"assumed"`
}

func runFrame(a *app, path string, f frameFlags) error {
	ar, err := readArena(a, path)
	if err != nil {
		return err
	}
	q, err := f.request(a, ar)
	if err != nil {
		return err
	}
	s, err := frame.NewShot(ar, q)
	if err != nil {
		return err
	}
	px, err := s.SubjectPixels()
	if err != nil {
		return err
	}
	blur, err := s.MotionPixels()
	if err != nil {
		return err
	}
	if err := f.write(s); err != nil {
		return err
	}
	sys, err := a.system(ar.Units)
	if err != nil {
		return err
	}
	r := frameJSON{
		Hole: f.hole, Lens: q.Lens.ID, PanDeg: s.Aim.Pan.Degrees(), TiltDeg: s.Aim.Tilt.Degrees(),
		DistanceM: s.Aim.Distance.Metres(), SubjectPx: px, Transmission: s.View.Centre, Corners: s.View.Corners,
		FocalMM: s.Focal.Millimetres(), Stop: float64(s.Stop), File: f.out,
		Served: s.Served, BlurPx: blur, Assumed: wire.Assumed(s.Assumed, sys),
	}
	if seen, ok := s.Seen(0, 0); ok {
		ghost, err := s.GhostPixels()
		if err != nil {
			return err
		}
		r.Pane = wire.PaneSeenOf(seen, ghost)
	}
	return a.print(r, func(w io.Writer) { writeShotText(w, r, s, q, sys) })
}

// request turns the flags into a picture's request.
func (f frameFlags) request(a *app, ar arena.Arena) (frame.Request, error) {
	k, err := readKit(a, f.kit)
	if err != nil {
		return frame.Request{}, err
	}
	lens, body, err := pickKit(k, ar, f.lens, f.body)
	if err != nil {
		return frame.Request{}, err
	}
	use, err := fit.Use(lens, unit.Known(f.focal.Or(lens.FocalMin)), f.stop, f.hood, f.orientation.Or(landscape) == portrait)
	if err != nil {
		return frame.Request{}, fmt.Errorf("--%w", err)
	}
	m, err := f.subject(ar.Rink)
	if err != nil {
		return frame.Request{}, err
	}
	q := frame.Request{
		Hole: f.hole, Lens: lens, Body: body, Use: use, Focus: f.focus, Moment: &m, Planes: f.planes, Target: f.aim.Or(frame.Chest(m)),
		Through: f.through.Or(frame.ByHole), Haze: f.pane.haze, Mirror: f.pane.stands.Or(frame.UsualMirror),
		Shutter: f.shutter.Or(light.UsualShutter), Speed: f.speed.Or(frame.UsualSpeed),
	}
	if f.empty {
		q.Moment = nil
	}
	return q, nil
}

// subject samples the moment that is photographed.
func (f frameFlags) subject(r rink.Rink) (play.Moment, error) {
	if f.moment < 0 || f.moment >= mostMoments {
		return play.Moment{}, fmt.Errorf("--moment %d: write 0 to %d", f.moment, mostMoments-1)
	}
	set, err := play.Sample(r, play.DefaultAssumptions(), f.seed, f.moment+1)
	if err != nil {
		return play.Moment{}, err
	}
	return set.At(f.moment), nil
}

// write writes the picture, if one was asked for.
func (f frameFlags) write(s *frame.Shot) error {
	if f.out == "" {
		return nil
	}
	long := max(s.Case.TanX, s.Case.TanY)
	size := f.size.Or([2]int{int(usualAcross*s.Case.TanX/long + 0.5), int(usualAcross*s.Case.TanY/long + 0.5)})
	var b bytes.Buffer
	switch strings.ToLower(filepath.Ext(f.out)) {
	case ".png":
		if err := png.Encode(&b, s.Picture(size[0], size[1])); err != nil {
			return fmt.Errorf("%s: %w", f.out, err)
		}
	case ".svg":
		if err := s.WriteSVG(&b, size[0], size[1]); err != nil {
			return fmt.Errorf("%s: %w", f.out, err)
		}
	default:
		return fmt.Errorf("--out %s: write a name that ends in .png or .svg", f.out)
	}
	return writeFile(f.out, b.Bytes(), f.force)
}

func writeShotText(w io.Writer, r frameJSON, s *frame.Shot, q frame.Request, sys unit.System) {
	way := "through hole " + r.Hole
	if r.Pane != nil {
		way = "through the pane at " + r.Hole
	}
	fmt.Fprintf(w, "%s %s of %s\n\n", q.Lens.Name, way, s.Arena.Name)
	fmt.Fprintf(w, "setting    %s, f/%.3g, %s\n", s.Focal.Format(unit.Metric), r.Stop, s.Shutter.Format())
	fmt.Fprintf(w, "aim        pan %.1f deg, tilt %.1f deg, %s away\n", r.PanDeg, r.TiltDeg, s.Aim.Distance.Format(sys))
	fmt.Fprintf(w, "subject    %.0f px tall\n", r.SubjectPx)
	fmt.Fprintf(w, "blur       %.1f px of a skater who crosses the view at %s\n", r.BlurPx, s.Speed.Format(sys))
	fmt.Fprintf(w, "light      %.0f %% passes to the centre, %.0f %% to the worst corner\n", 100*r.Transmission, 100*min(r.Corners[0], r.Corners[1], r.Corners[2], r.Corners[3]))
	if r.Served < 1 {
		fmt.Fprintf(w, "pose       for the middle %.0f %% of the frame: no pose lights every corner of it\n", 100*r.Served)
	}
	if p := r.Pane; p != nil {
		fmt.Fprintf(w, "pane       leaves %.0f %% of a dark jersey's contrast; scatters %.1f %%, second image %.0f px off\n", 100*p.Contrast, 100*p.Haze, p.GhostPx)
	}
	if r.File != "" {
		fmt.Fprintf(w, "picture    %s\n", r.File)
	}
	if len(s.Assumed) > 0 {
		fmt.Fprintln(w)
		writeAssumed(w, s.Assumed, sys)
	}
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
