package frame

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// The area of the pupil's shape is the share of light that hole and ledge leave, all over the
// frame: a full disc where nothing cuts in, a cat's eye toward the edges.
func TestPupilShapeHasTheLightsShare(t *testing.T) {
	cut, whole := 0, 0
	for _, pan := range []float64{0, 25, 48} {
		s := shot(t, func(q *Request) {
			q.Turn = unit.Known(Aim{Pan: unit.Angle(pan * math.Pi / 180), Tilt: -0.03, Distance: 12})
		})
		for _, x := range []float64{-1, -0.5, 0, 0.6, 1} {
			for _, y := range []float64{-0.9, 0, 0.9} {
				edge := s.ledge.free(s.Case, s.View.Pose, s.ray(x, y))
				pass := s.Transmission(x, y)
				if edge < 1 && pass < 1 {
					continue // both cut: the shares do not just multiply
				}
				got := 0.0
				if shape := s.PupilShape(x, y); shape != nil {
					got = surface(shape) / math.Pi
				}
				if want := edge * pass; math.Abs(got-want) > 0.02 {
					t.Errorf("pan %g at %g, %g: shape's share %.3f, light's %.3f", pan, x, y, got, want)
				}
				if edge*pass < 0.9 {
					cut++
				} else {
					whole++
				}
			}
		}
	}
	if cut < 5 || whole < 5 {
		t.Errorf("%d shapes cut, %d whole: the test sees too little", cut, whole)
	}
}

// A point of light behind the focus is as wide as the optics room's disc of confusion.
func TestPointOfLightIsAsWideAsItsDisc(t *testing.T) {
	s := shot(t, func(q *Request) {
		q.Use.Focal, q.Focus = 200*unit.Millimetre, unit.Known(8*unit.Metre)
		q.Turn = unit.Known(Aim{Tilt: 0.06, Distance: 8})
	})
	const w, h = 1200, 800
	st := newStage(s.Camera, w, h)
	depth := 40.0
	at := s.Camera.Eye.Add(s.Camera.Forward.Scale(depth))
	const tiny = 0.001
	right, up := s.Camera.Right.Scale(tiny), s.Camera.Up.Scale(tiny)
	disc, ok := st.disc(s, glow{[]geom.Vec3{at, at.Add(right), at.Add(right).Add(up), at.Add(up)}, lampPaint, 1})
	if !ok {
		t.Fatal("the point is not drawn")
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range disc {
		lo, hi = min(lo, p.X), max(hi, p.X)
	}
	d, err := optics.DepthOfField(s.Focal, s.Stop, 0.03*unit.Millimetre, s.Focus)
	if err != nil {
		t.Fatal(err)
	}
	// At the far limit the disc is 0.03 mm; discs go as (z-s)/z.
	far := d.Far.Metres()
	want := 0.03e-3 / s.Sensor.Metres() * w * (depth - 8) / depth / ((far - 8) / far)
	if got := hi - lo; math.Abs(got/want-1) > 0.01 {
		t.Errorf("the disc is %.2f px wide, want %.2f", got, want)
	}
}
