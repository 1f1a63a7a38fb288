package fit

import (
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// A 5.5 in x 4.5 in hole in 1/2 in acrylic with a 70-200 mm f/2.8 zoom at its
// long end, and a 24-70 mm f/2.8 zoom at its short end: invented but usual.
func longCase() Case {
	return Case{
		Width: 0.1397, Height: 0.1143, Corner: 0.012, Thick: 0.0127,
		Nose: 0.089, Pupil: 0.0714, PupilDepth: 0.05, TanX: 36.0 / 400, TanY: 24.0 / 400,
	}
}

func shortCase() Case {
	return Case{
		Width: 0.1397, Height: 0.1143, Corner: 0.012, Thick: 0.0127,
		Nose: 0.082, Pupil: 0.00857, PupilDepth: 0.036, TanX: 36.0 / 48, TanY: 24.0 / 48,
	}
}

func BenchmarkTransmission(b *testing.B) {
	c := longCase()
	for _, at := range []struct {
		name string
		pan  float64
		x    float64
	}{{"open", 0.1, 0}, {"walls", 1.0, -0.07}, {"corners", 0.9, -0.045}} {
		v := c.At(unit.Angle(at.pan), 0)
		v.Pose.Nose.X = at.x
		v.Pose.Nose.Y = 0.01
		a := aimAt(at.pan, 0)
		u := a.toward(c.TanX, c.TanY)
		b.Run(at.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sink = c.Transmission(v.Pose, u)
			}
		})
	}
}

// BenchmarkPass is T(u) where the pose search asks for it: the ray made ready.
func BenchmarkPass(b *testing.B) {
	c := longCase()
	var s stance
	c.newStance(&s, 1.0, 0, true)
	for _, x := range []float64{-0.03, -0.06, -0.09} {
		p := s.pupil(geom.Vec2{X: x}, 0)
		t, _ := s.rays[2].pass(&s.c, &s.aim, p)
		b.Run(map[bool]string{true: "open", false: "shaded"}[t == 1], func(b *testing.B) {
			for b.Loop() {
				sink, _ = s.rays[2].pass(&s.c, &s.aim, p)
			}
		})
	}
}

var sink float64

// BenchmarkFit is the fit of one lens in one hole: the six limits and the loss
// tables in steps of 1 deg.
func BenchmarkFit(b *testing.B) {
	for name, c := range map[string]Case{"long": longCase(), "short": shortCase()} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				c.Limits()
				rows := c.Loss(unit.Degree)
				sink = rows.Pan[0].Centre
			}
		})
	}
}

func BenchmarkTrace(b *testing.B) {
	c := longCase()
	for b.Loop() {
		o := c.Trace()
		sink = o.inverse[0]
	}
}

func BenchmarkContains(b *testing.B) {
	c := longCase()
	o := c.Trace()
	u := geom.Vec3{X: 3, Y: -1, Z: 2}
	for b.Loop() {
		o.ContainsDirection(u)
	}
}

func BenchmarkAt(b *testing.B) {
	c := longCase()
	for _, pan := range []unit.Angle{20, 65} {
		b.Run(map[bool]string{true: "free", false: "bounded"}[pan < 30], func(b *testing.B) {
			for b.Loop() {
				sink = c.At(pan*unit.Degree, 10*unit.Degree).Centre
			}
		})
	}
}
