package puck

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// Without drag a throw is a parabola: z = x tan e - g x^2 / (2 v^2 cos^2 e).
func TestNoDragIsAParabola(t *testing.T) {
	cases := 0
	for _, v := range []float64{15, 25, 33.3, 45} {
		for _, deg := range []float64{-2, 0, 3, 12, 30} {
			for _, x := range []float64{0.5, 7.3, 20, 48} {
				e := deg * math.Pi / 180
				m, ok := Body{}.Fly(Struck(1, unit.Speed(v), unit.Angle(e)), unit.Length(x))
				if !ok {
					t.Fatalf("no flight at %g m/s, %g deg, %g m", v, deg, x)
				}
				want := 1 + x*math.Tan(e) - Gravity*x*x/(2*v*v*math.Cos(e)*math.Cos(e))
				if math.Abs(m.Height.Metres()-want) > 1e-9 {
					t.Errorf("%g m/s %g deg at %g m: height %.9f, parabola %.9f", v, deg, x, m.Height.Metres(), want)
				}
				cases++
			}
		}
	}
	if cases != 80 {
		t.Fatalf("%d cases", cases)
	}
}

// A level flight so fast that gravity hardly counts slows as v = v0 exp(-k x)
// (closed form of dv/dt = -k v^2).
func TestDragAloneIsExponential(t *testing.T) {
	b := FlatBody()
	m, ok := b.Fly(Struck(0, 1e4, 0), 60)
	want := 1e4 * math.Exp(-b.perMetre()*60)
	if !ok || math.Abs(float64(m.Level)-want) > 1e-4 {
		t.Errorf("speed %.6f m/s, closed form %.6f", float64(m.Level), want)
	}
}

// overTime is the independent integrator: the midpoint rule over time with
// tiny steps dt, stopped at the distance by a straight line.
func overTime(b Body, v, up, x, dt float64) (z, speed float64) {
	k := 0.5 * AirDensity * b.Drag * b.AreaM2 / MassKG
	px, pz, vx, vz := 0.0, 0.0, v*math.Cos(up), v*math.Sin(up)
	for {
		s := math.Hypot(vx, vz)
		ax, az := -k*s*vx, -Gravity-k*s*vz
		nx, nz := px+vx*dt+ax*dt*dt/2, pz+vz*dt+az*dt*dt/2
		hx, hz := vx+ax*dt/2, vz+az*dt/2 // half a step on, where the next drag is taken
		hs := math.Hypot(hx, hz)
		nvx, nvz := vx+(-k*hs*hx)*dt, vz+(-Gravity-k*hs*hz)*dt
		if nx >= x {
			f := (x - px) / (nx - px)
			return pz + f*(nz-pz), math.Hypot(vx+f*(nvx-vx), vz+f*(nvz-vz))
		}
		px, pz, vx, vz = nx, nz, nvx, nvz
	}
}

func TestFlightAgainstTimeIntegration(t *testing.T) {
	for name, b := range map[string]Body{"flat": FlatBody(), "tumbling": TumblingBody()} {
		for _, c := range []struct{ v, deg, x float64 }{{20, 5, 12}, {33.3, 3, 30}, {40, 10, 58}, {25, 25, 40}} {
			m, ok := b.Fly(Struck(0, unit.Speed(c.v), unit.Angle(c.deg)*unit.Degree), unit.Length(c.x))
			z, speed := overTime(b, c.v, c.deg*math.Pi/180, c.x, 2e-5)
			if !ok || math.Abs(m.Height.Metres()-z) > 1e-6 || math.Abs(float64(m.Speed())-speed) > 1e-6 {
				t.Errorf("%s %+v: height %.7f speed %.7f, over time %.7f %.7f", name, c, m.Height.Metres(), float64(m.Speed()), z, speed)
			}
		}
	}
}

// A level throw without drag from height z lands after v sqrt(2 z / g).
func TestLandingWithoutDrag(t *testing.T) {
	for _, v := range []float64{1, 5, 20, 40} {
		m := Body{}.Land(Struck(1.5, unit.Speed(v), 0), 0.2)
		want := v * math.Sqrt(2*1.3/Gravity)
		if math.Abs(m.Distance.Metres()-want) > 2e-3 {
			t.Errorf("%g m/s: lands at %.4f m, closed form %.4f", v, m.Distance.Metres(), want)
		}
	}
}

// The mean shadow of a tumbling puck, by averaging the shadow over directions.
func TestMeanShadow(t *testing.T) {
	sum, n := 0.0, 200000
	for i := range n {
		c := (float64(i) + 0.5) / float64(n) // cosine between axis and flight, even over the half sphere
		d, h := Diameter.Metres(), Thickness.Metres()
		sum += math.Pi*d*d/4*c + d*h*math.Sqrt(1-c*c)
	}
	if got, want := TumblingBody().AreaM2, sum/float64(n); math.Abs(got-want) > 1e-8 {
		t.Errorf("area %.8f m2, mean of the shadows %.8f", got, want)
	}
}

// Energies of a 0.170 kg puck at the published mean speeds of slap shots,
// 29.14 m/s and 33.3 m/s: 72.2 and 94.4 J (0.170 v^2 / 2 = 72.18, 94.26; the
// second is printed for 33.33 m/s).
func TestEnergy(t *testing.T) {
	for _, c := range []struct{ v, joule float64 }{{29.14, 72.2}, {33.33, 94.4}} {
		if got := Energy(unit.Speed(c.v)); math.Abs(got-c.joule) > 0.05 {
			t.Errorf("%g m/s: %.2f J, published %.1f", c.v, got, c.joule)
		}
	}
}

func TestLaunchHitsTheHeight(t *testing.T) {
	b, n := FlatBody(), 0
	for _, v := range []unit.Speed{12, 20, 33, 45} {
		for _, x := range []unit.Length{2, 9, 25, 50} {
			up, at, per, ok := b.launch(v, x, 1.5)
			if !ok {
				continue // too slow to get there; counted below
			}
			n++
			again, _ := b.Fly(Struck(0, v, up), x)
			higher, _ := b.Fly(Struck(0, v, up+0.001), x)
			if math.Abs(again.Height.Metres()-1.5) > 1e-3 || math.Abs(float64(at.Speed()-again.Speed())) > 1e-3 {
				t.Errorf("%g m/s %g m: height %.6f, speed %.6f, launched with %.6f", float64(v), x.Metres(), again.Height.Metres(), float64(again.Speed()), float64(at.Speed()))
			}
			if slope := (higher.Height - again.Height).Metres() / 0.001; math.Abs(slope-per) > 0.01*per+0.01 {
				t.Errorf("%g m/s %g m: slope %.4f, measured %.4f", float64(v), x.Metres(), per, slope)
			}
		}
	}
	if n < 13 {
		t.Fatalf("only %d launches found", n)
	}
}

// The start of the search is near the flight that was integrated, and is the
// parabola where there is no drag.
func TestFlatFireIsNear(t *testing.T) {
	for _, c := range []struct{ v, x, z float64 }{{12, 9, 1.5}, {20, 30, 2}, {25, 40, 3}, {33, 50, 1.3}, {36, 20, 2}} {
		tan, slope, ok := FlatBody().flatFire(c.v, c.x, c.z)
		m, flies := FlatBody().Fly(Struck(0, unit.Speed(c.v), unit.Angle(math.Atan(tan))), unit.Length(c.x))
		if !ok || !flies || math.Abs(m.Height.Metres()-c.z) > 0.2 {
			t.Errorf("%+v: misses by %.3f m", c, m.Height.Metres()-c.z)
		}
		if rise := FlatBody().rise(unit.Speed(c.v), math.Atan(tan), m); math.Abs(slope/rise-1) > 0.03 {
			t.Errorf("%+v: slope %.3f, of the flight %.3f", c, slope, rise)
		}
		e, _ := dragFree(c.v*c.v, c.x, c.z)
		if tan, _, ok := (Body{}).flatFire(c.v, c.x, c.z); !ok || math.Abs(math.Atan(tan)-e) > 1e-12 {
			t.Errorf("%+v without drag: %.9f, parabola %.9f", c, math.Atan(tan), e)
		}
	}
}
