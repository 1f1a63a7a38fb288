package frame

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
)

// A traced scene is the same solids for both painters: flat paints of pure channels, so that a
// pixel's value is the share of it that is covered.
type traced struct {
	pov    strings.Builder
	shapes []shape
	st     stage
}

func (tr *traced) pigment(c color.NRGBA) string {
	return fmt.Sprintf("pigment{rgb<%d,%d,%d>}", c.R/255, c.G/255, c.B/255)
}

func povPoint(p geom.Vec3) string { return fmt.Sprintf("<%.6f,%.6f,%.6f>", p.X, p.Y, p.Z) }

func (tr *traced) rod(r rod, paint color.NRGBA) {
	if o := tr.st.screen.rod(tr.st.cam, r); o != nil {
		tr.shapes = append(tr.shapes, newShape(o, paint))
	}
	if r.a == r.b {
		fmt.Fprintf(&tr.pov, "sphere{%s,%.6f %s}\n", povPoint(r.a), r.ra, tr.pigment(paint))
		return
	}
	fmt.Fprintf(&tr.pov, "sphere_sweep{linear_spline 2,%s,%.6f,%s,%.6f %s}\n", povPoint(r.a), r.ra, povPoint(r.b), r.rb, tr.pigment(paint))
}

// flat adds an outline as it is to our painter and as triangles about its middle to the tracer,
// lower by so much, that what lies on it is seen.
func (tr *traced) flat(poly []geom.Vec3, paint color.NRGBA, below float64) {
	tr.st.add(&tr.shapes, paint, poly...)
	tr.pov.WriteString("mesh{\n")
	for i := range len(poly) - 2 {
		for _, p := range [3]geom.Vec3{poly[0], poly[i+1], poly[i+2]} {
			p.Z -= below
			fmt.Fprintf(&tr.pov, "%s%s", map[bool]string{true: "triangle{", false: ","}[p.X == poly[0].X && p.Y == poly[0].Y && p.Z == poly[0].Z-below], povPoint(p))
		}
		tr.pov.WriteString("}\n")
	}
	fmt.Fprintf(&tr.pov, "%s}\n", tr.pigment(paint))
}

// trace renders the scene with POV-Ray: the camera by its axes, no light but the paints' own,
// many samples a pixel, linear values.
func (tr *traced) trace(t *testing.T, c Camera, w, h int) image.Image {
	t.Helper()
	program, err := exec.LookPath("povray")
	if err != nil {
		t.Fatalf("%v: this test needs Debian's package povray; scripts/need installs it", err)
	}
	scene := fmt.Sprintf("#version 3.7;\nglobal_settings{assumed_gamma 1}\nbackground{rgb 0}\n#default{finish{ambient 1 diffuse 0}}\n"+
		"camera{location %s right %s up %s direction %s}\n%s", povPoint(c.Eye), povPoint(c.Right.Scale(2*c.TanX)), povPoint(c.Up.Scale(2*c.TanY)), povPoint(c.Forward), tr.pov.String())
	dir := t.TempDir()
	from, to := filepath.Join(dir, "scene.pov"), filepath.Join(dir, "scene.png")
	if err := os.WriteFile(from, []byte(scene), 0o600); err != nil {
		t.Fatal(err)
	}
	run := exec.Command(program, "+I"+from, "+O"+to, fmt.Sprintf("+W%d", w), fmt.Sprintf("+H%d", h), "-D", "+FN8", "+A0.0", "+AM1", "+R3", "-J", "File_Gamma=1.0", "+WT2", "-GA")
	run.Dir = dir
	if out, err := run.CombinedOutput(); err != nil {
		t.Fatalf("povray: %v\n%s", err, out)
	}
	f, err := os.Open(to)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	im, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return im
}

// TestGeometryAgainstPOVRay renders a game's moment by POV-Ray 3.7 (Debian's package povray), a
// ray tracer that knows nothing of our projection, hulls and clipping: people, goals, puck, the
// ice with its lines, the boards. Each channel of each pixel lies within what the tracer has
// one pixel about it, but for what its samples leave open.
func TestGeometryAgainstPOVRay(t *testing.T) {
	// Where two outlines share a pixel, each lets a part of what is behind through, a quarter
	// at most; the tracer's 9 samples leave a ninth open.
	const w, h, slack = 480, 320, 255/4 + 255/9
	for _, c := range []struct {
		name   string
		change func(*Request)
	}{
		{"close", nil},
		{"the hole's best, framed", func(q *Request) {
			a := demo(t)
			set, err := play.Sample(t.Context(), a.Rink, a.Playing(), 1, 60)
			if err != nil {
				t.Fatal(err)
			}
			m := set.At(BestMoment(a, set, q.Hole, nil))
			q.Moment, q.Target = &m, Chest(m)
			q.Use.Focal = FramedFocal(a, q.Hole, m, q.Lens, q.Body, false)
		}},
		{"wide, tilted", func(q *Request) {
			q.Use.Focal, q.Lens.FocalMin = 28*unit.Millimetre, 28*unit.Millimetre
			q.Turn = unit.Known(Aim{Pan: 0.3, Tilt: -0.08, Distance: 10})
		}},
	} {
		s := shot(t, c.change)
		tr := &traced{st: newStage(s.Camera, w, h)}
		s.solids(tr)
		ours := image.NewRGBA(image.Rect(0, 0, w, h))
		for k := 3; k < len(ours.Pix); k += 4 {
			ours.Pix[k] = 255
		}
		fillShapes(ours, tr.shapes)
		theirs := tr.trace(t, s.Camera, w, h)
		if off, first := outside(ours, theirs, slack); off > 0 {
			t.Errorf("%s: %d of %d pixels are off by more than one pixel, the first at %v", c.name, off, w*h, first)
		}
		if n := covered(theirs); n < w*h/80 {
			t.Errorf("%s: people and goals cover only %d pixels", c.name, n)
		}
	}
}

// solids adds the scene of a shot, painter's order.
func (s *Shot) solids(tr *traced) {
	red, green, blue := color.NRGBA{255, 0, 0, 255}, color.NRGBA{0, 255, 0, 255}, color.NRGBA{0, 0, 255, 255}
	yellow := color.NRGBA{255, 255, 0, 255}
	lift := func(flat []geom.Vec2) (out []geom.Vec3) {
		for _, p := range flat {
			out = append(out, geom.Vec3{X: p.X, Y: p.Y})
		}
		return out
	}
	hl := newHall(s.Arena.Rink, s.Camera.Eye.XY())
	for _, run := range hl.runs {
		for i := range len(run) - 1 {
			high := s.Arena.Boards.Height.Metres()
			a, b := run[i], run[i+1]
			b.at = b.at.Add(b.at.Sub(a.at).Scale(0.3)) // they lap, so that no seam shows between
			tr.flat([]geom.Vec3{railAt(a, 0, 0), railAt(b, 0, 0), railAt(b, 0, high), railAt(a, 0, high)}, yellow, 0)
		}
	}
	tr.flat(lift(s.Arena.Rink.Outline(24)), blue, 0.0005)
	for _, l := range s.Arena.Rink.Lines() {
		half := geom.Vec2{X: l.Width / 2}
		tr.flat(lift([]geom.Vec2{l.From.Sub(half), l.From.Add(half), l.To.Add(half), l.To.Sub(half)}), red, 0)
	}
	for _, g := range s.Arena.Goals() {
		for _, p := range g.PostMiddles() {
			foot := geom.Vec3{X: p.X, Y: p.Y}
			tr.rod(rod{a: foot, b: foot.Add(geom.Vec3{Z: g.Height}), ra: 0.03, rb: 0.03}, green)
		}
	}
	for i, p := range s.Moment.People {
		b := newBody(p)
		if i == play.AttackerGoalie || i == play.DefenderGoalie {
			b.goalkeeper(home, 1)
		} else {
			b.skater(home, 1, playing)
		}
		for _, r := range b.rods {
			tr.rod(r, green)
		}
	}
}

// outside counts the pixels of a picture with a channel beyond the other's about it, with some
// slack of 255.
func outside(a *image.RGBA, b image.Image, slack int) (n int, first image.Point) {
	value := func(x, y int) [3]int {
		r, g, bl, _ := b.At(x, y).RGBA()
		return [3]int{int(r >> 8), int(g >> 8), int(bl >> 8)}
	}
	for y := 1; y < a.Rect.Dy()-1; y++ {
		for x := 1; x < a.Rect.Dx()-1; x++ {
			lo, hi := [3]int{255, 255, 255}, [3]int{}
			for k := range 9 {
				for c, v := range value(x+k%3-1, y+k/3-1) {
					lo[c], hi[c] = min(lo[c], v), max(hi[c], v)
				}
			}
			for c := range 3 {
				if v := int(a.Pix[a.PixOffset(x, y)+c]); v < lo[c]-slack || v > hi[c]+slack {
					if n == 0 {
						first = image.Pt(x, y)
					}
					n++
					break
				}
			}
		}
	}
	return n, first
}

// covered counts the pixels of pure green.
func covered(im image.Image) (n int) {
	for y := range im.Bounds().Dy() {
		for x := range im.Bounds().Dx() {
			if r, g, b, _ := im.At(x, y).RGBA(); r == 0 && b == 0 && g > 0xf000 {
				n++
			}
		}
	}
	return n
}
