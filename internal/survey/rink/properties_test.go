package rink

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

func draw(t *rapid.T) Rink {
	l := rapid.Float64Range(10, 100).Draw(t, "length")
	w := rapid.Float64Range(6, 60).Draw(t, "width")
	c := rapid.Float64Range(0, min(l, w)/2).Draw(t, "radius")
	r, err := New(Dimensions{Length: unit.Length(l), Width: unit.Length(w), CornerRadius: unit.Length(c),
		Markings: Markings{GoalLine: unit.Length(l / 15), BlueLine: unit.Length(l / 2.7),
			CircleRadius: unit.Length(min(l/30, w/4)), SpotFromGoal: unit.Length(l / 10), SpotFromAxis: unit.Length(w / 40)}})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestHalfTurnAndMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := draw(t)
		per := r.Perimeter()
		s := unit.Length(rapid.Float64Range(-1, 2).Draw(t, "s")) * per
		p := r.Point(s)
		if q := r.Point(s + per/2); q.Add(p).Len() > 1e-9 {
			t.Fatalf("half turn of %v is %v", p, q)
		}
		if q := r.Point(per/2 - s); math.Hypot(q.X-p.X, q.Y+p.Y) > 1e-9 {
			t.Fatalf("mirror of %v is %v", p, q)
		}
		n, tan := r.Normal(s), r.Tangent(s)
		if math.Abs(n.Len()-1) > 1e-12 || math.Abs(tan.Cross(n)-1) > 1e-12 {
			t.Fatalf("normal %v tangent %v", n, tan)
		}
		if !r.Contains(p.Add(n.Scale(1e-6))) || r.Contains(p.Sub(n.Scale(1e-6))) {
			t.Fatalf("normal %v at %v does not point into the rink", n, p)
		}
	})
}

func TestStationAndPointAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := draw(t)
		s := unit.Length(rapid.Float64Range(0, 1).Draw(t, "s")) * r.Perimeter()
		d := rapid.Float64Range(-0.4, 2).Draw(t, "behind") // within reach of the nearest boards
		p := r.Point(s).Sub(r.Normal(s).Scale(d * min(1, r.Dimensions().CornerRadius.Metres())))
		got := r.Station(p)
		if e := math.Abs(math.Remainder((got - s).Metres(), r.Perimeter().Metres())); e > 1e-7 {
			t.Fatalf("station of the point at %v is %v", s, got)
		}
		if got < 0 || got >= r.Perimeter() {
			t.Fatalf("station %v outside [0, %v)", got, r.Perimeter())
		}
	})
}

// The nearest boards' point by brute force is no nearer.
func TestStationIsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := draw(t)
		p := geom.Vec2{X: rapid.Float64Range(-60, 60).Draw(t, "x"), Y: rapid.Float64Range(-40, 40).Draw(t, "y")}
		best := r.Point(r.Station(p)).Sub(p).Len()
		for i := range 400 {
			s := r.Perimeter() * unit.Length(i) / 400
			if d := r.Point(s).Sub(p).Len(); d < best-1e-9 {
				t.Fatalf("%v: the boards at %v are nearer (%v) than %v", p, s, d, best)
			}
		}
	})
}

func TestOffsetSigns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := draw(t)
		c := rapid.SampledFrom([]Corner{BBench, BBox, ABox, ABench}).Draw(t, "corner")
		at, err := r.FromLandmark(c, CircleTop, 0)
		if err != nil {
			t.Fatal(err)
		}
		fore, err := r.FromLandmark(c, CircleTop, 0.1)
		if err != nil {
			t.Fatal(err)
		}
		back, err := r.FromLandmark(c, CircleTop, -0.1)
		if err != nil {
			t.Fatal(err)
		}
		x := func(s unit.Length) float64 { return math.Abs(r.Point(s).X) }
		if !(x(fore) < x(at)) || x(back) < x(at) {
			t.Fatalf("%s: |x| fore %v, at %v, back %v", c, x(fore), x(at), x(back))
		}
		if r.Corner(at) != c {
			t.Fatalf("%s landmark lies in %q", c, r.Corner(at))
		}
	})
}
