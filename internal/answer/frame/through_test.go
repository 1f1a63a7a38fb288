package frame

import (
	"image"
	"image/color"
	"math"
	"testing"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
)

func byPane(haze, mirror float64) func(*Request) {
	return func(q *Request) { q.Through, q.Haze, q.Mirror = ByPane, unit.Known(haze), unit.Known(mirror) }
}

// Through the pane the frame loses the plate's share at each place, and none to
// the hole's edges.
func TestThroughThePaneLightIsThePlates(t *testing.T) {
	s := shot(t, byPane(0.05, 0.1))
	for _, at := range [][2]float64{{0, 0}, {-1, 0.5}, {1, -1}} {
		u := s.ray(at[0], at[1])
		pass, err := s.panel.Pass(incidence(u))
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Transmission(at[0], at[1]); got != pass.Transmission {
			t.Errorf("%v: %v, the plate passes %v", at, got, pass.Transmission)
		}
	}
	if s.View.Centre != s.Transmission(0, 0) || s.Served != 1 {
		t.Errorf("centre %v of %v, served %v", s.View.Centre, s.Transmission(0, 0), s.Served)
	}
}

// The lens stays behind the rear face, touching it, and looks where it was told.
func TestThroughThePaneTheLensStaysBehind(t *testing.T) {
	for pan := -70.0; pan <= 70; pan += 35 {
		s := shot(t, func(q *Request) {
			byPane(0.05, 0)(q)
			q.Turn = unit.Known(Aim{Pan: unit.Angle(pan * math.Pi / 180), Tilt: 0.1, Distance: 12})
		})
		if z := s.View.Pose.Foremost(s.Case.Nose).Z; math.Abs(z+s.Case.Thick) > 1e-9 {
			t.Errorf("pan %g: foremost point at %v m, the rear face at %v", pan, z, -s.Case.Thick)
		}
		if s.View.Pose.Pan != s.Aim.Pan.Radians() || s.View.Pose.Tilt != s.Aim.Tilt.Radians() {
			t.Errorf("pan %g: looks to %+v", pan, s.View.Pose)
		}
	}
}

// What the pixels keep of a dark patch's contrast is what [optics.Pane.See]
// says: measured in light on a picture of known mean, without a ghost.
func TestPixelsKeepTheContrastTold(t *testing.T) {
	s := shot(t, func(q *Request) {
		byPane(0.10, 0.1)(q)
		q.Turn = unit.Known(Aim{Distance: 12}) // square on: the ghost lies on the image
	})
	im := image.NewRGBA(image.Rect(0, 0, 360, 240))
	for k := range im.Pix {
		im.Pix[k] = 200
	}
	dark, black := image.Pt(180, 120), image.Pt(176, 120)
	im.Set(dark.X, dark.Y, color.RGBA{100, 100, 100, 255})
	im.Set(black.X, black.Y, color.RGBA{0, 0, 0, 255})
	sc := s.scatter(im)
	sc.drop(im)
	light := func(v uint8) float64 { return lightOf(float64(v) / 255) }
	at := func(p image.Point) float64 { return light(im.RGBAAt(p.X, p.Y).G) }
	seen, err := s.pane.See(0, optics.Surround{Detail: light(100) / float64(sc.mean[1]), Mirror: 0.1})
	if err != nil {
		t.Fatal(err)
	}
	g := seen.Ghost.Strength
	want := seen.Contrast * (1 + g) / (1 - g)
	if got := (at(dark) - at(black)) / at(dark); math.Abs(got-want) > 0.02 {
		t.Errorf("the picture keeps %.3f, told %.3f", got, want)
	}
}

// The whole picture through a worn pane is flatter than through a new one, and
// a new pane's nearly that of the same camera without scatter.
func TestWornPaneIsFlatter(t *testing.T) {
	spread := func(haze, mirror float64) float64 {
		im := shot(t, byPane(haze, mirror)).Picture(180, 120)
		var sum, squares, n float64
		for k := 0; k < len(im.Pix); k += 4 {
			v := float64(im.Pix[k+1])
			sum, squares, n = sum+v, squares+v*v, n+1
		}
		return math.Sqrt(squares/n - sum*sum/n/n)
	}
	clean, fresh, worn := spread(0, 0), spread(0.005, 0), spread(0.10, 0.1)
	if !(worn < 0.97*fresh && fresh < clean && fresh > 0.97*clean) {
		t.Errorf("spread %.1f clean, %.1f new, %.1f worn", clean, fresh, worn)
	}
}

func TestPictureThroughThePaneIsRefused(t *testing.T) {
	a := demo(t)
	q := request(t, a)
	q.Through, q.Haze = ByPane, unit.Known(1.5)
	if _, err := NewShot(a, q); err == nil {
		t.Error("a haze of 150 % is taken")
	}
	if err := shot(t, byPane(0.1, 0)).WriteSVG(nil, 300, 200); err == nil {
		t.Error("an SVG through the pane is drawn without what the pane does")
	}
	if _, err := ParseThrough("window"); err == nil {
		t.Error("any word is taken")
	}
}
