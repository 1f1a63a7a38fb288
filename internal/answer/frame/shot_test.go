package frame

import (
	"bytes"
	"encoding/xml"
	"image"
	"io"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

func demo(t testing.TB) arena.Arena {
	t.Helper()
	d, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := d.Check()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// request is a net-front moment from the demo arena's first hole through the
// kit's 70-200 mm zoom.
func request(t testing.TB, a arena.Arena) Request {
	t.Helper()
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	l, ok := k.Lens("70-200")
	if !ok {
		t.Fatal("the built-in kit has no 70-200")
	}
	set, err := play.Sample(t.Context(), a.Rink, play.DefaultAssumptions(), 7, 40)
	if err != nil {
		t.Fatal(err)
	}
	m := set.At(3)
	sub := m.People[m.Subject]
	return Request{Hole: a.Working()[0].ID, Lens: l, Body: k.Bodies[0],
		Use:    fit.Setting{Focal: l.FocalMin, Stop: l.Stop},
		Target: geom.Vec3{X: sub.X, Y: sub.Y, Z: 1.2}, Shutter: 0.001, Speed: 5, Moment: &m}
}

func shot(t testing.TB, change func(*Request)) *Shot {
	t.Helper()
	a := demo(t)
	q := request(t, a)
	if change != nil {
		change(&q)
	}
	s, err := NewShot(a, q)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestTargetLiesInTheMiddleOfTheFrame(t *testing.T) {
	s := shot(t, nil)
	q := request(t, s.Arena)
	x, y, depth, ok := s.Camera.Project(q.Target)
	// The lens stands beside the hole's centre, from which the aim is taken:
	// at this distance the two differ by less than 1 % of the frame.
	if !ok || math.Abs(x) > 0.01 || math.Abs(y) > 0.01 || math.Abs(depth-s.Aim.Distance.Metres()) > 0.2 {
		t.Errorf("target at %.4f, %.4f, depth %.2f m of %.2f m", x, y, depth, s.Aim.Distance.Metres())
	}
}

func TestAimKeepsTheSigns(t *testing.T) {
	m := Mount{Origin: geom.Vec3{X: 1, Y: 2, Z: 1.5}, Along: geom.Vec3{X: 1}, In: geom.Vec3{Y: 1}}
	for _, c := range []struct {
		at         geom.Vec3
		pan, tilt  float64
		distance   float64
		whatsWrong string
	}{
		{geom.Vec3{X: 1, Y: 12, Z: 1.5}, 0, 0, 10, "straight ahead"},
		{geom.Vec3{X: 11, Y: 12, Z: 1.5}, 45, 0, math.Sqrt(200), "pan is positive toward rising station"},
		{geom.Vec3{X: 1, Y: 3, Z: 2.5}, 0, 45, math.Sqrt2, "tilt is positive upward"},
	} {
		got := m.AimAt(c.at)
		if math.Abs(got.Pan.Degrees()-c.pan) > 1e-9 || math.Abs(got.Tilt.Degrees()-c.tilt) > 1e-9 ||
			math.Abs(got.Distance.Metres()-c.distance) > 1e-9 {
			t.Errorf("%s: got pan %g, tilt %g, %g m", c.whatsWrong, got.Pan.Degrees(), got.Tilt.Degrees(), got.Distance.Metres())
		}
		_, _, forward := Axes(got.Pan.Radians(), got.Tilt.Radians())
		if back := m.Point(forward.Scale(c.distance)); back.Sub(c.at).Len() > 1e-9 {
			t.Errorf("%s: the aim leads to %v", c.whatsWrong, back)
		}
	}
}

func TestPictureDoesNotDependOnCores(t *testing.T) {
	for name, change := range map[string]func(*Request){
		"as it is":         nil,
		"blurred strongly": func(q *Request) { q.Use.Focal, q.Focus = 135*unit.Millimetre, unit.Known(3*unit.Metre) },
	} {
		s := shot(t, change)
		many := s.Picture(150, 100)
		was := runtime.GOMAXPROCS(1)
		one := s.Picture(150, 100)
		runtime.GOMAXPROCS(was)
		if !bytes.Equal(many.Pix, one.Pix) {
			t.Errorf("%s: one core draws another picture", name)
		}
	}
}

func TestPictureShowsIceBelowAndRoofAbove(t *testing.T) {
	im := shot(t, func(q *Request) { q.Moment = nil; q.Use.Focal = 24 * unit.Millimetre; q.Lens.FocalMin = q.Use.Focal }).Picture(150, 100)
	if low, high := lightness(im, 75, 92), lightness(im, 75, 4); low < 150 || high > 80 {
		t.Errorf("lightness %d near the lower edge, %d near the upper", low, high)
	}
}

func lightness(im *image.RGBA, x, y int) int {
	c := im.RGBAAt(x, y)
	return (int(c.R) + int(c.G) + int(c.B)) / 3
}

func TestPortraitSwapsTheFrame(t *testing.T) {
	flat, tall := shot(t, nil), shot(t, func(q *Request) { q.Use.Portrait = true })
	if tall.Camera.TanX != flat.Camera.TanY || tall.Camera.TanY != flat.Camera.TanX {
		t.Errorf("portrait frame %g x %g, landscape %g x %g", tall.Camera.TanX, tall.Camera.TanY, flat.Camera.TanX, flat.Camera.TanY)
	}
	a, err1 := flat.SubjectPixels()
	b, err2 := tall.SubjectPixels()
	if err1 != nil || err2 != nil || math.Abs(a/b-1) > 1e-3 {
		t.Errorf("the subject is %g px tall in landscape, %g px in portrait (%v, %v)", a, b, err1, err2)
	}
}

func TestMotionBlurFollowsTheShutter(t *testing.T) {
	length := func(shutter unit.Shutter) float64 {
		s := shot(t, func(q *Request) { q.Shutter = shutter })
		most := 0.0
		for _, l := range newStage(s.Camera, 1200, 800).figures(s) {
			most = max(most, l.way.Len())
		}
		return most
	}
	short, long := length(0.001), length(0.01)
	if short <= 0 || math.Abs(long/short-10) > 0.5 {
		t.Errorf("longest way %g px at 1/1000 s and %g px at 1/100 s: want ten times", short, long)
	}
}

func TestSVGIsWellFormedAndTheSameEveryTime(t *testing.T) {
	s := shot(t, nil)
	var one, two bytes.Buffer
	if err := s.WriteSVG(&one, 600, 400); err != nil {
		t.Fatal(err)
	}
	if err := s.WriteSVG(&two, 600, 400); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(one.Bytes(), two.Bytes()) {
		t.Error("two drawings of one shot differ")
	}
	d := xml.NewDecoder(&one)
	paths := 0
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if e, ok := tok.(xml.StartElement); ok && e.Name.Local == "path" {
			paths++
		}
	}
	if paths < 300 {
		t.Errorf("only %d shapes drawn", paths)
	}
}

func TestRequestsThatCannotBeDrawn(t *testing.T) {
	a := demo(t)
	for _, c := range []struct {
		name, says string
		change     func(*Request)
	}{
		{"unknown hole", "no working hole or low window", func(q *Request) { q.Hole = "nowhere" }},
		{"target behind the glass", "behind", func(q *Request) { q.Target = geom.Vec3{X: 500, Y: -500} }},
		{"focus inside the lens", "focal length", func(q *Request) { q.Focus = unit.Known(0.05 * unit.Metre) }},
		{"no stop", "stop", func(q *Request) { q.Use.Stop = 0 }},
	} {
		q := request(t, a)
		c.change(&q)
		if _, err := NewShot(a, q); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: got %v, want a word about %q", c.name, err, c.says)
		}
	}
}

// Through a hole that is turned off there is nothing to see.
func TestNoPictureThroughAHoleTurnedOff(t *testing.T) {
	a := demo(t)
	q := request(t, a)
	a.Holes = slices.Clone(a.Holes)
	a.Holes[0].State = glass.Off
	q.Hole = a.Holes[0].ID
	if _, err := NewShot(a, q); err == nil || !strings.Contains(err.Error(), "turned off in the arena file") {
		t.Errorf("got %v, want it told that it is turned off", err)
	}
}

// A picture says that it took a setback nobody measured, through a hole and through a
// low window, which stands in the boards but sees other panes.
func TestAssumedSetbackIsSaid(t *testing.T) {
	a := demo(t)
	a.Boards.Setback = unit.Maybe[unit.Length]{}
	for _, id := range []string{a.Working()[0].ID, a.Windows[0].ID} {
		q := request(t, a)
		q.Hole = id
		s, err := NewShot(a, q)
		if err != nil {
			t.Fatal(err)
		}
		if all := strings.Join(arena.Reasons(s.Assumed, unit.Metric), "; "); !strings.Contains(all, "setback of the glass") {
			t.Errorf("%s: assumed are %q", id, all)
		}
	}
}
