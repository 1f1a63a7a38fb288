package resect_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
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

// picture is a shot of the empty rink through a hole: where the answer must come out,
// and what can be marked in it.
type picture struct {
	hole  string
	shot  *frame.Shot
	place resect.Site
	marks []resect.Pin // all landmarks in the picture, exactly
}

func take(t testing.TB, a arena.Arena, hole string, focal unit.Length, target geom.Vec3) picture {
	t.Helper()
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	l, _ := k.Lens("70-200")
	s, err := frame.NewShot(a, frame.Request{Hole: hole, Lens: l, Body: k.Bodies[0], Use: fit.Setting{Focal: focal, Stop: l.Stop},
		Target: target, Shutter: 0.001})
	if err != nil {
		t.Fatal(err)
	}
	way := s.Mount.Origin.Sub(s.Camera.Eye).Dot(s.Mount.In) / s.Camera.Forward.Dot(s.Mount.In)
	return picture{hole: hole, shot: s}.back(a, way)
}

// back is the picture with its eye so many metres behind the glass's rink face, on the
// same axis; before it with less than none.
func (p picture) back(a arena.Arena, metres float64) picture {
	s := *p.shot
	c, m := s.Camera, s.Mount
	way := m.Origin.Sub(c.Eye).Dot(m.In) / c.Forward.Dot(m.In)
	on := c.Eye.Add(c.Forward.Scale(way))
	c.Eye = on.Sub(c.Forward.Scale(metres))
	s.Camera = c
	if metres < 0 { // a camera on the rink's side stands where it stands
		on = c.Eye
	}
	h, _ := a.Hole(p.hole)
	p = picture{hole: p.hole, shot: &s, place: resect.Site{Station: h.Station + unit.Length(on.Sub(m.Origin).Dot(m.Along)), Height: unit.Length(on.Z)}}
	px, py := float64(s.Pixels[0]), float64(s.Pixels[1])
	for _, l := range resect.Landmarks(a) {
		if x, y, _, ok := c.Project(l.At); ok && math.Abs(x) < 1 && math.Abs(y) < 1 {
			p.marks = append(p.marks, resect.Pin{Landmark: l.Name, X: (1 + x) * px / 2, Y: (1 - y) * py / 2})
		}
	}
	return p
}

func (p picture) frame(focal resect.Focal, marks []resect.Pin) resect.Frame {
	return resect.Frame{Pixels: p.shot.Pixels, Sensor: p.shot.Sensor, Focal: focal, Marks: marks}
}

// some returns so many marks of the picture by chance, each off by a normal error.
func (p picture) some(r *rand.Rand, n int, px float64) []resect.Pin {
	var out []resect.Pin
	for _, i := range r.Perm(len(p.marks))[:min(n, len(p.marks))] {
		m := p.marks[i]
		out = append(out, resect.Pin{Landmark: m.Landmark, X: m.X + px*r.NormFloat64(), Y: m.Y + px*r.NormFloat64()})
	}
	return out
}

func off(a arena.Arena, got, want resect.Site) resect.Site {
	return resect.Site{Station: a.Rink.Apart(want.Station, got.Station), Height: got.Height - want.Height}
}

func TestExactMarksTellTheHoleExactly(t *testing.T) {
	a := demo(t)
	r := rand.New(rand.NewPCG(1, 1))
	tried := 0
	for _, h := range a.Working() {
		for _, focal := range []float64{70, 135, 200} {
			end := math.Copysign(a.Rink.GoalX(), a.Rink.Point(h.Station).X)
			for _, x := range []float64{end, end - math.Copysign(6, end), 0} {
				p := take(t, a, h.ID, unit.Length(focal)*unit.Millimetre, geom.Vec3{X: x, Z: 0.5})
				if len(p.marks) < 6 {
					continue
				}
				tried++
				for _, f := range []resect.Focal{resect.FocalExactly(p.shot.Focal), {}} {
					got, err := resect.Solve(context.Background(), a, []resect.Frame{p.frame(f, p.some(r, 99, 0))})
					if err != nil {
						t.Errorf("%s %g mm toward x=%.1f, %d marks: %v", h.ID, focal, x, len(p.marks), err)
						continue
					}
					d := off(a, got.Site, p.place)
					if math.Hypot(d.Station.Metres(), d.Height.Metres()) > 0.001 || math.Abs((got.Frames[0].Focal-p.shot.Focal).Millimetres()) > 0.1 {
						t.Errorf("%s %g mm toward x=%.1f, known %v: off by %.4f, %.4f m; focal %.3f mm; marks %d noise %g dof %g", h.ID, focal, x, f, d.Station, d.Height, got.Frames[0].Focal.Millimetres(), len(p.marks), got.Noise, got.FreedomDegrees)
					}
					v := got.Frames[0]
					if math.Abs((v.Pan-p.shot.Aim.Pan).Degrees()) > 0.3 || math.Abs((v.Tilt-p.shot.Aim.Tilt).Degrees()) > 0.3 || math.Abs(v.Roll.Degrees()) > 0.01 {
						t.Errorf("%s: pan %.2f tilt %.2f roll %.3f, want %.2f %.2f 0", h.ID, v.Pan.Degrees(), v.Tilt.Degrees(), v.Roll.Degrees(), p.shot.Aim.Pan.Degrees(), p.shot.Aim.Tilt.Degrees())
					}
				}
			}
		}
	}
	if tried < 20 {
		t.Fatalf("%d pictures tried", tried)
	}
}
