package rink

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

func standard(t interface{ Fatal(...any) }, name string) Rink {
	r, err := Standard(name)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Area and perimeter by gonum's quadrature, from the outline alone: area as the
// integral of x dy along the boards, perimeter as that of the speed.
func TestAreaAndPerimeterByQuadrature(t *testing.T) {
	for _, name := range Standards() {
		r := standard(t, name)
		f := r.frame()
		area, length := 0.0, 0.0
		// Pieces between the joints, so that each integrand is smooth.
		joints := []float64{0, f.a, f.a + f.arc(), f.a + f.arc() + 2*f.b, f.a + 2*f.arc() + 2*f.b}
		for half := range 2 {
			for i := range joints {
				from, to := joints[i], f.half()
				if i+1 < len(joints) {
					to = joints[i+1]
				}
				shift := float64(half) * f.half()
				at := func(s float64) (p, v geom.Vec2) {
					s = min(max(s, from), to-1e-12)
					p, n := r.at(unit.Length(s + shift))
					return p, geom.Vec2{X: n.Y, Y: -n.X}
				}
				area += quad.Fixed(func(s float64) float64 { p, v := at(s); return p.X * v.Y }, from, to, 40, nil, 0)
				length += quad.Fixed(func(s float64) float64 {
					const h = 1e-6
					m := (from + to) / 2 // keep the difference inside the piece
					s += h * (m - s) / (to - from)
					a, _ := at(s - h/4)
					b, _ := at(s + h/4)
					return b.Sub(a).Len() / (h / 2)
				}, from, to, 40, nil, 0)
			}
		}
		near(t, name+" area", area, r.Area(), 1e-9)
		near(t, name+" perimeter", length, r.Perimeter().Metres(), 1e-6)
		across := quad.Fixed(func(x float64) float64 { return 2 * r.HalfWidth(x) }, -f.a, f.a, 10, nil, 0)
		ends := quad.Fixed(func(a float64) float64 { // x = a + r sin a smooths the corner's edge
			return 2 * r.HalfWidth(f.a+f.r*math.Sin(a)) * f.r * math.Cos(a)
		}, 0, math.Pi/2, 60, nil, 0)
		near(t, name+" area by half-width", across+2*ends, r.Area(), 1e-6)
	}
}

// A walk along the boards has no jump: neighbours are as far apart as their stations.
func TestBoardsHaveNoJump(t *testing.T) {
	r := standard(t, NorthAmerican)
	const steps = 20000
	step := r.Perimeter() / steps
	for i := range steps {
		s := step * unit.Length(i)
		d := r.Point(s + step).Sub(r.Point(s)).Len()
		if math.Abs(d-step.Metres()) > 1e-6 {
			t.Fatalf("at %v: %v m apart for a step of %v", s, d, step)
		}
		if turn := math.Abs(r.Normal(s).Cross(r.Normal(s + step))); turn > 1.01*step.Metres()/8.5344 {
			t.Fatalf("at %v: the normal jumps by %v", s, turn)
		}
	}
}

func TestStationsOfPlaces(t *testing.T) {
	r := standard(t, International)
	per := r.Perimeter().Metres()
	for _, c := range []struct {
		at   geom.Vec2
		want float64
	}{
		{geom.Vec2{Y: -15}, 0}, {geom.Vec2{X: 5, Y: -15}, 5}, {geom.Vec2{X: 30}, per / 4}, {geom.Vec2{Y: 15}, per / 2},
		{geom.Vec2{X: -30}, 3 * per / 4}, {geom.Vec2{X: -5, Y: -15}, per - 5}, {geom.Vec2{X: -5, Y: 15}, per/2 + 5}, {geom.Vec2{X: 60, Y: 1}, per/4 + 1},
	} {
		near(t, "station", r.Station(c.at).Metres(), c.want, 1e-9)
	}
}

func TestWrap(t *testing.T) {
	r := standard(t, International)
	per := r.Perimeter()
	for _, c := range []struct{ in, want unit.Length }{{0, 0}, {per, 0}, {-1, per - 1}, {per + 1, 1}, {-per, 0}, {-1e-20, 0}, {5 * per, 0}} {
		if got := r.Wrap(c.in); math.Abs(math.Remainder(float64(got-c.want), float64(per))) > 1e-9 || got < 0 || got >= per {
			t.Errorf("%v wraps to %v, want %v", c.in, got, c.want)
		}
	}
}

func TestContains(t *testing.T) {
	r := standard(t, International)
	for p, want := range map[geom.Vec2]bool{
		{}: true, {X: 30}: true, {X: 30.001}: false, {Y: -15}: true, {Y: 15.001}: false, {X: 29, Y: 14}: false, {X: 21.5, Y: 15}: true,
		{X: 21.5 + 8.5*math.Sqrt2/2 - 1e-9, Y: 6.5 + 8.5*math.Sqrt2/2 - 1e-9}: true, {X: math.NaN()}: false,
	} {
		if got := r.Contains(p); got != want {
			t.Errorf("%v: %v", p, got)
		}
	}
}

func BenchmarkPoint(b *testing.B) {
	r := standard(b, NorthAmerican)
	s := unit.Length(0)
	for b.Loop() {
		if s += 0.37; s > 160 {
			s = 0
		}
		r.Point(s)
	}
}
