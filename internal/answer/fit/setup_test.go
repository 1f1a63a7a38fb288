package fit

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

const mm = unit.Millimetre

func usualSetup() Setup {
	return Setup{
		Hole: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}, Corner: 12 * mm, Thick: unit.Inch / 2,
		Nose: 90 * mm, Focal: 50 * mm, Stop: 2, Sensor: unit.Size{W: 36 * mm, H: 24 * mm},
	}
}

// TestSetupPupilDepth: front 81 mm (0.9 x 90), pupil 25 mm, half the diagonal
// view has the tangent hypot(36, 24)/100: (81 - 25)/(2 x 0.432666) = 64.7151 mm.
func TestSetupPupilDepth(t *testing.T) {
	tan := math.Hypot(36, 24) / 100
	for _, v := range []struct {
		name   string
		change func(*Setup)
		want   float64 // mm
	}{
		{"default front", func(*Setup) {}, (81 - 25) / (2 * tan)},
		{"front stated", func(s *Setup) { s.Front = unit.Known(60 * mm) }, (60 - 25) / (2 * tan)},
		{"pupil stated", func(s *Setup) { s.Pupil = unit.Known(30 * mm) }, (81 - 30) / (2 * tan)},
		{"front smaller than the pupil", func(s *Setup) { s.Front = unit.Known(20 * mm) }, 0},
		{"depth stated", func(s *Setup) { s.PupilDepth = unit.Known(33 * mm); s.Front = unit.Known(60 * mm) }, 33},
		{"upright, the same diagonal", func(s *Setup) { s.Portrait = true }, (81 - 25) / (2 * tan)},
	} {
		s := usualSetup()
		v.change(&s)
		c, err := s.Case()
		if err != nil || math.Abs(c.PupilDepth*1e3-v.want) > 1e-9 {
			t.Errorf("%s: pupil depth %.6f mm, want %.6f (%v)", v.name, c.PupilDepth*1e3, v.want, err)
		}
	}
	s := usualSetup()
	s.Portrait = true
	if c, _ := s.Case(); math.Abs(c.TanX-0.24) > 1e-12 || math.Abs(c.TanY-0.36) > 1e-12 {
		t.Errorf("portrait tangents %g, %g; want 0.24, 0.36", c.TanX, c.TanY)
	}
}

func TestSetupRefuses(t *testing.T) {
	nan := unit.Length(math.NaN())
	for _, v := range []struct {
		says   string
		change func(*Setup)
	}{
		{"focal length", func(s *Setup) { s.Focal = 0 }},
		{"focal length", func(s *Setup) { s.Focal = nan }},
		{"stop", func(s *Setup) { s.Stop = 0 }},
		{"stop", func(s *Setup) { s.Stop = unit.Stop(math.Inf(1)) }},
		{"sensor", func(s *Setup) { s.Sensor.H = 0 }},
		{"frame", func(s *Setup) { s.Sensor.H = 1e4 }},
		{"hole width", func(s *Setup) { s.Hole.W = 0 }},
		{"hole height", func(s *Setup) { s.Hole.H = nan }},
		{"pane thickness", func(s *Setup) { s.Thick = -1 }},
		{"pane thickness", func(s *Setup) { s.Thick = 2e4 }},
		{"nose diameter", func(s *Setup) { s.Nose = 0 }},
		{"corner radius", func(s *Setup) { s.Corner = 60 * mm }},
		{"corner radius", func(s *Setup) { s.Corner = -1 * mm }},
		{"wider than the nose", func(s *Setup) { s.Pupil = unit.Known(91 * mm) }},
		{"pupil depth", func(s *Setup) { s.PupilDepth = unit.Known(-1 * mm) }},
		{"pupil depth", func(s *Setup) { s.PupilDepth = unit.Known(nan) }},
		{"back", func(s *Setup) { s.Back = unit.Known(-1 * mm) }},
	} {
		s := usualSetup()
		v.change(&s)
		if _, err := s.Case(); err == nil || !strings.Contains(err.Error(), v.says) {
			t.Errorf("want a refusal that names %q, got %v", v.says, err)
		}
	}
}

// TestFromKit: the hood makes the nose wider and the pupil lie deeper.
func TestFromKit(t *testing.T) {
	body := kit.Body{ID: "b", Sensor: unit.Size{W: 36 * mm, H: 24 * mm}}
	lens := kit.Lens{ID: "l", FocalMin: 50 * mm, FocalMax: 50 * mm, Stop: 2, StopLong: 2, Nose: 70 * mm, NoseHood: 85 * mm, HoodLength: 30 * mm}
	hole := arena.Opening{Hole: glass.Hole{ID: "h", Size: unit.Size{W: 140 * mm, H: 114 * mm}}, Thick: arena.Fact{Value: 12 * mm}}
	bare, err := FromKit(hole, lens, body, Setting{Focal: 50 * mm, Stop: 2})
	if err != nil {
		t.Fatal(err)
	}
	hooded, err := FromKit(hole, lens, body, Setting{Focal: 50 * mm, Stop: 2, Hood: true})
	if err != nil {
		t.Fatal(err)
	}
	if bare.Nose != 0.07 || hooded.Nose != 0.085 || math.Abs(hooded.PupilDepth-bare.PupilDepth-0.03) > 1e-12 {
		t.Errorf("bare %+v, with hood %+v", bare, hooded)
	}
	lens.Nose = 20 * mm
	if _, err := FromKit(hole, lens, body, Setting{Focal: 50 * mm, Stop: 2}); err == nil || !strings.Contains(err.Error(), "lens l in hole h: pupil 25 mm is wider than the nose 20 mm") {
		t.Errorf("a pupil wider than the nose: %v", err)
	}
}

func TestParsePivot(t *testing.T) {
	for _, p := range []Pivot{Free, Centre} {
		if got, err := ParsePivot(p.String()); got != p || err != nil {
			t.Errorf("%v reads back as %v, %v", p, got, err)
		}
	}
	if _, err := ParsePivot("middle"); err == nil {
		t.Error("a third pivot passes")
	}
}

func TestStops(t *testing.T) {
	if s, ok := Stops(0.25); s != 2 || !ok {
		t.Errorf("a quarter is %g stops, %v", s, ok)
	}
	if s, ok := Stops(1); s != 0 || math.Signbit(s) || !ok {
		t.Errorf("all of it is %g stops, %v", s, ok)
	}
	if _, ok := Stops(0); ok {
		t.Error("no light has a loss in stops")
	}
}
