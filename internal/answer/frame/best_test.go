package frame

import (
	"bytes"
	"image/png"
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
)

// The best moment's subject stands in front of the hole, and the focal length that frames
// it makes it six tenths of the frame high, where the lens goes so far.
func TestBestMomentIsFramed(t *testing.T) {
	a := demo(t)
	set, err := play.Sample(t.Context(), a.Rink, a.Playing(), 1, 200)
	if err != nil {
		t.Fatal(err)
	}
	holes := a.Openings()
	if len(holes) < 8 {
		t.Fatalf("%d holes", len(holes))
	}
	for _, hole := range holes {
		m := set.At(BestMoment(a, set, hole, nil))
		q := request(t, a)
		q.Hole, q.Moment, q.Target = hole, &m, Chest(m)
		q.Use.Focal = FramedFocal(a, hole, m, q.Lens, q.Body, false)
		s, err := NewShot(a, q)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(s.Aim.Pan.Degrees()) > likedTurn || math.Abs(s.Aim.Distance.Metres()-likedAway) > 4 {
			t.Errorf("%s: subject at %.0f deg, %.1f m", hole, s.Aim.Pan.Degrees(), s.Aim.Distance.Metres())
		}
		px, err := s.SubjectPixels()
		fill := px / float64(s.Pixels[1])
		if err != nil || q.Use.Focal > q.Lens.FocalMin && q.Use.Focal < q.Lens.FocalMax && math.Abs(fill-likedFill) > 0.02 {
			t.Errorf("%s: the subject fills %.2f of the frame (%v)", hole, fill, err)
		}
		if err := s.Dark(); err != nil {
			t.Errorf("%s: %v", hole, err)
		}
	}
}

// A lens turned far aside sees the hole's wall only, one below the boards' top that only.
func TestDarkPictureSaysWhy(t *testing.T) {
	aside := shot(t, func(q *Request) { q.Turn = unit.Known(Aim{Pan: 85 * unit.Degree, Distance: 10}) })
	behindLedge := shot(t, nil)
	behindLedge.ledge = ledge{there: true, y: 5, z: 0.1}
	for why, s := range map[string]*Shot{"the hole lets 0.0 %": aside, "the boards' ledge covers": behindLedge} {
		if err := s.Dark(); err == nil || !strings.Contains(err.Error(), why) {
			t.Errorf("%v, want %q", err, why)
		}
	}
	if err := shot(t, nil).Dark(); err != nil {
		t.Errorf("a picture of the slot: %v", err)
	}
}

// A check lies where its place is projected, is numbered in order, and shows in the picture.
func TestCheckPointsLieWhereTheyProject(t *testing.T) {
	s := shot(t, func(q *Request) { q.Moment = nil })
	ahead := s.Camera.Eye.Add(s.Camera.ray(0.25, -0.5).Scale(9))
	s.Checks = []Check{{"behind", s.Camera.Eye.Sub(s.Camera.Forward)}, {"ahead", ahead}}
	got := s.CheckPoints(600, 400)
	if len(got) != 1 || got[0].Name != "ahead" || got[0].Number != 1 || got[0].Px.Sub(geom.Vec2{X: 375, Y: 300}).Len() > 1e-6 {
		t.Fatalf("%+v, by hand at 375, 300", got)
	}
	if c := s.Picture(600, 400).RGBAAt(375, 300); c.R < 150 || c.B > 100 {
		t.Errorf("no mark in the picture: %v", c)
	}
}

// The file is a whole PNG with the density and the settings in chunks of their own.
func TestPNGCarriesDensityAndSettings(t *testing.T) {
	s := shot(t, func(q *Request) { q.ISO = unit.Known(unit.ISO(3200)) })
	im := s.Picture(60, 40)
	var b bytes.Buffer
	if err := s.WritePNG(&b, im, png.BestSpeed); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"pHYs\x00\x00\x2e\x23\x00\x00\x2e\x23\x01", "iTXtDescription\x00", s.Setting(), ", ISO 3200; "} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("the file lacks %q", want)
		}
	}
	back, err := png.Decode(&b) // checks every chunk's sum
	if err != nil || back.Bounds() != im.Rect || back.At(30, 20) != im.At(30, 20) {
		t.Errorf("read back: %v, %v", back.Bounds(), err)
	}
}

// No two numbered places are so near one another that their marks lie on one another.
func TestCheckPointsDoNotCrowd(t *testing.T) {
	s := shot(t, func(q *Request) { q.Moment = nil })
	for i := range 40 {
		s.Checks = append(s.Checks, Check{"row", s.Camera.Eye.Add(s.Camera.ray(-0.8+0.04*float64(i), -0.5).Scale(9))})
	}
	got := s.CheckPoints(1200, 800)
	if len(got) < 10 || len(got) > 30 {
		t.Fatalf("%d of 40 places in a row are numbered", len(got))
	}
	for i, c := range got {
		if c.Number != i+1 {
			t.Errorf("place %d has the number %d", i, c.Number)
		}
		for _, o := range got[:i] {
			if d := c.Px.Sub(o.Px); math.Abs(d.X) < 30 && math.Abs(d.Y) < 20 {
				t.Errorf("%d and %d lie %v pixels apart", o.Number, c.Number, d)
			}
		}
	}
}
