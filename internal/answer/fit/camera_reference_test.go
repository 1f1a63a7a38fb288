package fit

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// fifty is a 50 mm f/1.8 of an old and short design on a full-frame body, in the
// common hole of a half-inch pane.
func fifty() Case {
	return Case{
		Width: 0.1397, Height: 0.1143, Corner: 0.0127, Thick: 0.0127,
		Nose: 0.068, Pupil: 0.0278, PupilDepth: 0.012, TanX: 0.36, TanY: 0.24,
		Camera: unit.Known(Camera{Length: 0.04, Width: 0.14, Height: 0.098}),
	}
}

// TestCameraLimitClosedForm: turned about the nose's foremost point on the rink
// face, the body's front edge meets the rear face where
// L cos q - (w/2 - D/2) sin q = t, so q = acos(t/A) - atan((w - D)/2L) with
// A = hypot(L, (w - D)/2). Own derivation in the plane.
func TestCameraLimitClosedForm(t *testing.T) {
	for _, length := range []float64{0.04, 0.06, 0.1, 0.21} {
		for _, upright := range []bool{false, true} {
			c := fifty()
			c.Camera = unit.Known(Camera{Length: length, Width: 0.14, Height: 0.098})
			if upright {
				c = c.turned()
			}
			l := c.Limits()
			for _, x := range []struct {
				what string
				side float64
				got  unit.Maybe[unit.Angle]
			}{{"pan", 0.14, l.Pan.Camera}, {"tilt", 0.098, l.Tilt.Camera}} {
				side := x.side
				if upright {
					side = 0.14 + 0.098 - side
				}
				half := (side - c.Nose) / 2
				want := math.Acos(c.Thick/math.Hypot(length, half)) - math.Atan(half/length)
				if got, ok := x.got.Get(); !ok || math.Abs(got.Radians()-want) > 1e-7 {
					t.Errorf("length %g, upright %v, %s: %.5f deg, closed form %.5f", length, upright, x.what, got.Degrees(), want*180/math.Pi)
				}
			}
		}
	}
}

// The usable angle ends where the nose must leave the hole for the camera, which
// this body does at 48 degrees, long before half of the light is gone: with the
// foremost point at the rear face L cos q = (w - D)/2 sin q.
func TestCameraEndsTheUsableAngle(t *testing.T) {
	c := fifty()
	free := c
	free.Camera = unit.Maybe[Camera]{}
	was, is := free.Limits().Pan, c.Limits().Pan
	want := math.Atan(0.04 / ((0.14 - 0.068) / 2))
	if math.Abs(is.Usable.Or(0).Radians()-want) > 1e-7 || was.Usable.Or(0) < 70*unit.Degree {
		t.Errorf("usable %.3f deg, want %.3f; without a camera %.3f", is.Usable.Or(0).Degrees(), want*180/math.Pi, was.Usable.Or(0).Degrees())
	}
	if is.Clear.Or(0) > is.Usable.Or(0) || !was.Camera.IsZero() {
		t.Errorf("clear to %.3f deg, camera unknown %v", is.Clear.Or(0).Degrees(), was.Camera.IsZero())
	}
	o := c.Trace()
	if end := unit.Angle(want); !o.Contains(end-1e-4, 0) || o.Contains(end+1e-4, 0) {
		t.Error("the outline ends elsewhere")
	}
}

// bodyAhead returns how far the foremost of the four corners of a body's front lies
// before the pane's rear face, in metres, by plain coordinates of the pose: it
// shares no code with the package.
func bodyAhead(c Case, p Pose) float64 {
	k, _ := c.Camera.Get()
	sp, cp := math.Sincos(p.Pan)
	st, ct := math.Sincos(p.Tilt)
	most := math.Inf(-1)
	for _, x := range []float64{-k.Width / 2, k.Width / 2} {
		for _, y := range []float64{-k.Height / 2, k.Height / 2} {
			for _, deep := range []float64{0, 0.08} { // the body's back too
				z := p.Nose.Z - (k.Length+deep)*cp*ct - x*sp - y*cp*st
				most = max(most, z+c.Thick)
			}
		}
	}
	return most
}

// TestNoPoseLetsTheCameraTouch: in every best pose, of loss tables and of aims
// off both axes, the body's corners stay behind the rear face; and where the
// camera holds the nose back nothing more is given away than that.
func TestNoPoseLetsTheCameraTouch(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	held, rows := 0, 0
	for range 60 {
		c := randomCase(r)
		c.Camera = unit.Known(Camera{Length: 0.03 + 0.15*r.Float64(), Width: 0.08 + 0.1*r.Float64(), Height: 0.06 + 0.1*r.Float64()})
		c.Pivot = Pivot(r.IntN(2))
		free := c
		free.Camera = unit.Maybe[Camera]{}
		check := func(v View) {
			rows++
			ahead := bodyAhead(c, v.Pose)
			if ahead > 1e-9 {
				t.Fatalf("%+v: the body stands %g m past the rear face at %+v", c, ahead, v.Pose)
			}
			was := free.At(unit.Angle(v.Pose.Pan), unit.Angle(v.Pose.Tilt))
			got, want := min(v.Centre, v.WorstCorner()), min(was.Centre, was.WorstCorner())
			if got > want+2*tie {
				t.Fatalf("%+v: T %g with a camera, %g without", c, got, want)
			}
			if bodyAhead(c, was.Pose) > 1e-9 {
				held++
			} else if math.Abs(got-want) > 2*tie {
				t.Fatalf("%+v: T %g with a camera that is not in the way, %g without", c, got, want)
			}
		}
		for _, row := range c.Loss(15 * unit.Degree).Pan {
			check(c.At(row.Angle, 0))
		}
		check(c.At(unit.Angle(2*r.Float64()-1), unit.Angle(r.Float64()-0.5)))
	}
	if rows < 200 || held < 20 {
		t.Errorf("%d poses, in %d of them the camera was in the way", rows, held)
	}
}

// Aims off both axes: the outline holds an aim exactly when half of the light
// comes through and the body's corners clear the rear face with the nose at it.
func TestOutlineMindsTheCamera(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	in, out := 0, 0
	for range 40 {
		c := fifty()
		c.Camera = unit.Known(Camera{Length: 0.04 + 0.1*r.Float64(), Width: 0.14, Height: 0.08 + 0.08*r.Float64()})
		o := c.Trace()
		for range 25 {
			pan, tilt := 1.5*(2*r.Float64()-1), 1.2*(2*r.Float64()-1)
			a := aimAt(pan, tilt)
			ahead := bodyAhead(c, Pose{Pan: pan, Tilt: tilt, Nose: a.axis.Scale(0).Sub(a.fore.Scale(c.Nose / 2))}) - c.Thick
			light := c.centre(&a) - 0.5
			if math.Abs(ahead) < 5e-4 || math.Abs(light) < 5e-3 {
				continue // on the limit, to what is interpolated between its rays
			}
			want := ahead < 0 && light > 0
			if o.Contains(unit.Angle(pan), unit.Angle(tilt)) != want {
				t.Errorf("%+v pan %.3f tilt %.3f: body %.4f m past the face, light %.3f over half, outline says %v", c.Camera, pan, tilt, ahead, light, !want)
			}
			if want {
				in++
			} else {
				out++
			}
		}
	}
	if in < 200 || out < 200 {
		t.Errorf("%d in, %d out", in, out)
	}
}
