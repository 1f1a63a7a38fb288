package frame

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// TestProjectionAgainstMatrices projects points by the textbook's pinhole camera
// matrix K [R | -R e] (Hartley and Zisserman, Multiple View Geometry, 2nd
// edition, chapter 6), multiplied out by gonum: equal to 0.1 px of 1200 x 800.
func TestProjectionAgainstMatrices(t *testing.T) {
	s := shot(t, nil)
	const w, h = 1200, 800
	c := s.Camera
	k := mat.NewDense(3, 3, []float64{w / 2 / c.TanX, 0, w / 2, 0, h / 2 / c.TanY, h / 2, 0, 0, 1})
	// Image axes: right, down, forward.
	r := mat.NewDense(3, 3, []float64{c.Right.X, c.Right.Y, c.Right.Z, -c.Up.X, -c.Up.Y, -c.Up.Z, c.Forward.X, c.Forward.Y, c.Forward.Z})
	var kr mat.Dense
	kr.Mul(k, r)
	rapid.Check(t, func(t *rapid.T) {
		p := geom.Vec3{X: rapid.Float64Range(-30, 30).Draw(t, "x"), Y: rapid.Float64Range(-13, 13).Draw(t, "y"), Z: rapid.Float64Range(0, 3).Draw(t, "z")}
		var q mat.VecDense
		e := p.Sub(c.Eye)
		q.MulVec(&kr, mat.NewVecDense(3, []float64{e.X, e.Y, e.Z}))
		x, y, depth, ok := c.Project(p)
		if ok != (q.AtVec(2) > 0) {
			t.Fatalf("in front: %v, matrices say depth %g", ok, q.AtVec(2))
		}
		if !ok || depth < 0.5 {
			return
		}
		at := screen{w, h}.place(x, y)
		dx, dy := at.X-q.AtVec(0)/q.AtVec(2), at.Y-q.AtVec(1)/q.AtVec(2)
		if math.Hypot(dx, dy) > 0.1 {
			t.Fatalf("%v at %v, off by %g, %g px", p, at, dx, dy)
		}
	})
}

// TestViewAgainstTheHandbook holds the frame's edges against the handbook's
// angle of view, 2 atan(side / 2f): 24 mm on 36 x 24 mm sees 73.740 deg across
// and 53.130 deg down (worked out from the formula).
func TestViewAgainstTheHandbook(t *testing.T) {
	s := shot(t, func(q *Request) { q.Use.Focal, q.Lens.FocalMin = 24*unit.Millimetre, 24*unit.Millimetre })
	for _, c := range []struct {
		tan, want float64
		x, y      float64
	}{{s.Camera.TanX, 73.7398, 1, 0}, {s.Camera.TanY, 53.1301, 0, 1}} {
		got := 2 * math.Atan(c.tan) * 180 / math.Pi
		book, err := optics.ViewAngle(unit.Length(2*0.024*c.tan), 24*unit.Millimetre)
		if err != nil || math.Abs(got-c.want) > 1e-3 || math.Abs(got-book.Degrees()) > 1e-9 {
			t.Errorf("view %g deg, want %g (%v)", got, c.want, err)
		}
		// A point half the view off the axis falls on the frame's edge.
		p := s.Camera.Eye.Add(s.Camera.ray(c.x, c.y).Scale(7))
		if x, y, _, _ := s.Camera.Project(p); math.Abs(x-c.x) > 1e-9 || math.Abs(y-c.y) > 1e-9 {
			t.Errorf("edge point at %g, %g, want %g, %g", x, y, c.x, c.y)
		}
	}
}

// TestShadowIsTheFit holds the picture's darkening against package fit at the
// frame's centre and corners.
func TestShadowIsTheFit(t *testing.T) {
	s := shot(t, nil)
	view := s.Case.At(s.Aim.Pan, s.Aim.Tilt)
	corner := [4][2]float64{{-1, -1}, {-1, 1}, {1, -1}, {1, 1}}
	for i, c := range corner {
		if got := s.Transmission(c[0], c[1]); math.Abs(got-view.Corners[i]) > 1e-9 {
			t.Errorf("corner %v: %g in the picture, %g in fit", c, got, view.Corners[i])
		}
	}
	if got := s.Transmission(0, 0); math.Abs(got-view.Centre) > 1e-9 {
		t.Errorf("centre: %g in the picture, %g in fit", got, view.Centre)
	}
}

// TestLedgeAgainstQuadrature integrates the pupil's chords that see over the
// ledge (gonum, fixed Legendre points) and compares with the closed form.
func TestLedgeAgainstQuadrature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := fit.Case{Pupil: rapid.Float64Range(0.005, 0.1).Draw(t, "pupil"), PupilDepth: rapid.Float64Range(0, 0.1).Draw(t, "depth")}
		p := fit.Pose{Nose: geom.Vec3{Z: rapid.Float64Range(-0.2, 0).Draw(t, "z")},
			Pan: rapid.Float64Range(-1, 1).Draw(t, "pan"), Tilt: rapid.Float64Range(-0.6, 0.3).Draw(t, "tilt")}
		l := ledge{true, rapid.Float64Range(-0.3, -0.02).Draw(t, "below"), rapid.Float64Range(0, 0.2).Draw(t, "before")}
		r, up, d := Axes(p.Pan, p.Tilt)
		u := d.Add(r.Scale(rapid.Float64Range(-0.3, 0.3).Draw(t, "right"))).Add(up.Scale(rapid.Float64Range(-0.3, 0.3).Draw(t, "up")))
		if u.Z < 0.1 {
			return
		}
		centre := p.Nose.Sub(d.Scale(c.PupilDepth))
		over := func(a, b float64) bool { // a right, b up on the pupil
			q := centre.Add(r.Scale(a)).Add(up.Scale(b))
			return q.Y+(l.z-q.Z)*u.Y/u.Z > l.y
		}
		radius := c.Pupil / 2
		chord := func(a float64) float64 { // length of the chord at a that is free, by bisection of its one crossing
			b := math.Sqrt(max(0, radius*radius-a*a))
			low, high := over(a, -b), over(a, b)
			if low == high {
				if high {
					return 2 * b
				}
				return 0
			}
			lo, hi := -b, b
			for range 50 {
				if m := (lo + hi) / 2; over(a, m) == low {
					lo = m
				} else {
					hi = m
				}
			}
			if high {
				return b - lo
			}
			return lo + b
		}
		want := quad.Fixed(chord, -radius, radius, 400, quad.Legendre{}, 0) / (math.Pi * radius * radius)
		if got := l.free(c, p, u); math.Abs(got-want) > 2e-3 {
			t.Fatalf("free share %g, quadrature %g", got, want)
		}
	})
}

// TestDiscOfConfusionAgainstTheHandbook: the disc reaches the circle of
// confusion just at the limits of depth of field. US Army course SS0507 works
// 3 in, f/8, c 0.002 in, 15 ft: sharp from 11.3 ft to 22 ft. (The course leaves
// the focal length beside the distances out: hence 0.2 ft.)
func TestDiscOfConfusionAgainstTheHandbook(t *testing.T) {
	s := &Shot{Focal: 3 * unit.Inch, Stop: 8, Focus: 15 * unit.Foot, Sensor: 36 * unit.Millimetre}
	d, err := optics.DepthOfField(s.Focal, s.Stop, 0.002*unit.Inch, s.Focus)
	if err != nil {
		t.Fatal(err)
	}
	if near, far := d.Near.Feet(), d.Far.Feet(); math.Abs(near-11.3) > 0.2 || math.Abs(far-22) > 0.2 {
		t.Errorf("limits %.2f and %.2f ft, the course has 11.3 and 22", near, far)
	}
	for _, depth := range []unit.Length{d.Near, d.Far} {
		disc := s.Blur(depth.Metres(), 36000) / 1000 // thousandths of a millimetre on 36 mm
		if math.Abs(disc/0.0508-1) > 1e-9 {
			t.Errorf("at %.2f ft the disc is %.4f mm, want 0.0508", depth.Feet(), disc)
		}
	}
}

// TestRodAgainstItsBalls: every point of the surface of both balls projects
// into the outline, and the outline is no larger than needed.
func TestRodAgainstItsBalls(t *testing.T) {
	c := Camera{Right: geom.Vec3{X: 1}, Up: geom.Vec3{Z: 1}, Forward: geom.Vec3{Y: 1}, TanX: 0.75, TanY: 0.5}
	scr := screen{1200, 800}
	rapid.Check(t, func(t *rapid.T) {
		at := func(label string) geom.Vec3 {
			return geom.Vec3{X: rapid.Float64Range(-2, 2).Draw(t, label+".x"), Y: rapid.Float64Range(2, 9).Draw(t, label+".y"),
				Z: rapid.Float64Range(-1, 1).Draw(t, label+".z")}
		}
		r := rod{a: at("a"), b: at("b"), ra: rapid.Float64Range(0.02, 0.4).Draw(t, "ra"), rb: rapid.Float64Range(0.02, 0.4).Draw(t, "rb")}
		outline := scr.rod(c, r)
		lat, lon := rapid.Float64Range(-1.5, 1.5).Draw(t, "lat"), rapid.Float64Range(0, 6.28).Draw(t, "lon")
		n := geom.Vec3{X: math.Cos(lat) * math.Cos(lon), Y: math.Cos(lat) * math.Sin(lon), Z: math.Sin(lat)}
		for _, b := range []ball{{r.a, r.ra}, {r.b, r.rb}} {
			x, y, _, _ := c.Project(b.at.Add(n.Scale(b.radius)))
			if p := scr.place(x, y); !within(outline, p, 0.6) {
				t.Fatalf("surface point %v lies outside the outline", p)
			}
		}
	})
}

// within reports whether p lies in a convex outline, or not farther than slack outside.
func within(outline []geom.Vec2, p geom.Vec2, slack float64) bool {
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if e := b.Sub(a); e.Cross(p.Sub(a))/e.Len() < -slack {
			return false
		}
	}
	return len(outline) > 2
}
