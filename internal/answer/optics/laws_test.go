package optics

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/unit"
)

func lensOf(t *rapid.T) (f unit.Length, n unit.Stop, c, s unit.Length) {
	f = unit.Length(rapid.Float64Range(0.01, 0.8).Draw(t, "focal"))
	n = unit.Stop(rapid.Float64Range(1, 32).Draw(t, "stop"))
	c = unit.Length(rapid.Float64Range(5e-6, 5e-5).Draw(t, "coc"))
	s = f * unit.Length(1+rapid.Float64Range(0.5, 1000).Draw(t, "distance in f"))
	return
}

// A point at either limit is imaged as a disc of the circle of confusion: the
// cone of light from the pupil f/N, cut by the sensor.
func TestLimitsBlurToTheCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, n, c, s := lensOf(t)
		d, err := DepthOfField(f, n, c, s)
		if err != nil {
			t.Fatal(err)
		}
		image := func(s unit.Length) float64 { return float64(f * s / (s - f)) }
		disc := func(at unit.Length) float64 {
			v := image(at)
			return float64(f) / float64(n) * math.Abs(v-image(s)) / v
		}
		if got := disc(d.Near); math.Abs(got/float64(c)-1) > 1e-6 {
			t.Fatalf("disc at the near limit %v, want %v", got, c)
		}
		if !d.Infinite() && d.Far < 1e6 {
			if got := disc(d.Far); math.Abs(got/float64(c)-1) > 1e-6 {
				t.Fatalf("disc at the far limit %v, want %v", got, c)
			}
		}
		if d.Infinite() != (s >= d.Hyperfocal) || d.Near >= s || d.Far <= s {
			t.Fatalf("%+v about %v", d, s)
		}
	})
}

// Snell's law and Fresnel's energies: what is not reflected goes through, both
// ways through a face alike; a thicker plate shifts in proportion. Up to 86
// degrees: nearer to grazing the textbook form of the shift loses its digits.
func TestPlateLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Float64Range(1, 3).Draw(t, "index")
		i := unit.Angle(rapid.Float64Range(0, 1.5).Draw(t, "angle"))
		p, err := Plate{n, 0.01}.Pass(i)
		if err != nil {
			t.Fatal(err)
		}
		if e := math.Abs(n*math.Sin(float64(p.Refraction)) - math.Sin(float64(i))); e > 1e-14 {
			t.Fatalf("Snell off by %g", e)
		}
		textbook := 0.01 * math.Sin(float64(i-p.Refraction)) / math.Cos(float64(p.Refraction))
		if math.Abs(float64(p.Shift)-textbook) > 1e-15 {
			t.Fatalf("shift %v, textbook %v", p.Shift, textbook)
		}
		thick, err := Plate{n, 0.02}.Pass(i)
		if err != nil || math.Abs(float64(thick.Shift-2*p.Shift)) > 1e-17 {
			t.Fatalf("twice as thick shifts %v, not twice %v", thick.Shift, p.Shift)
		}
		// Where hardly anything is reflected the two are one, but for rounding.
		if p.Transmission < 0 || p.WithMultiples < p.Transmission-1e-15 || p.WithMultiples > 1 {
			t.Fatalf("%+v", p)
		}
	})
}

// The light on a plate from all sides of a hemisphere, gathered by gonum's
// quadrature with Fresnel's equations in their textbook form, agrees.
func TestTransmissionByQuadrature(t *testing.T) {
	const n = 1.491
	textbook := func(i float64) float64 {
		r := math.Asin(math.Sin(i) / n)
		rs := math.Pow(math.Sin(i-r)/math.Sin(i+r), 2)
		rp := math.Pow(math.Tan(i-r)/math.Tan(i+r), 2)
		return ((1-rs)*(1-rs) + (1-rp)*(1-rp)) / 2
	}
	ours := func(i float64) float64 {
		p, err := Plate{n, 0.01}.Pass(unit.Angle(i))
		if err != nil {
			t.Fatal(err)
		}
		return p.Transmission
	}
	weighted := func(f func(float64) float64) float64 {
		return quad.Fixed(func(i float64) float64 { return f(i) * math.Sin(2*i) }, 1e-6, math.Pi/2-1e-6, 200, nil, 0)
	}
	near(t, "hemisphere", weighted(ours), weighted(textbook), 1e-10)
}

// Exposure laws: twice the light is one stop of EV and half the ISO; units of
// time and stop trade one for one in APEX.
func TestExposureLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Calibration(rapid.Float64Range(240, 400).Draw(t, "C"))
		e := unit.Illuminance(rapid.Float64Range(1, 1e5).Draw(t, "lux"))
		s := unit.Shutter(rapid.Float64Range(1e-4, 1).Draw(t, "shutter"))
		n := unit.Stop(rapid.Float64Range(1, 32).Draw(t, "stop"))
		if d := c.EV100(2*e) - c.EV100(e); math.Abs(d-1) > 1e-12 {
			t.Fatalf("twice the light is %v stops", d)
		}
		iso := c.ISO(e, s, n)
		if d := Av(n) + Tv(s) - math.Log2(float64(iso)/100) - c.EV100(e); math.Abs(d) > 1e-9 {
			t.Fatalf("EV of the setting misses the light's by %v stops", d)
		}
		m := NearestISO(iso)
		if off := math.Abs(math.Log2(float64(iso) / m.Exact)); off > 1.0/6+1e-12 {
			t.Fatalf("mark %s lies %v stops from ISO %v", m.Text, off, iso)
		}
	})
}

func TestMotion(t *testing.T) {
	// 8.2 m/s at 1/1000 s moves 8.2 mm in the scene (peak skating speed of a
	// game: IJSPP 2024); at m = 0.01 on 6 um pixels that is 13.7 px.
	k := Motion{Speed: 8.2, Shutter: 0.001, Magnification: 0.01, Pitch: 6e-6}
	near(t, "still", k.Blur(), 8.2e-3*0.01/6e-6, 1e-9)
	k.Follow = 0.9
	near(t, "followed", k.Blur(), 0.1*8.2e-3*0.01/6e-6, 1e-9)
	near(t, "background", k.Background(), 0.9*8.2e-3*0.01/6e-6, 1e-9)
	k.Across = unit.Known(30 * unit.Degree)
	near(t, "half across", k.Blur(), 0.05*8.2e-3*0.01/6e-6, 1e-9)
}

func TestTooNear(t *testing.T) {
	for _, s := range []unit.Length{0.2, 0.1, 0, -1, unit.Length(math.NaN()), unit.Length(math.Inf(1))} {
		if _, err := DepthOfField(0.2, 2.8, 3e-5, s); !errors.Is(err, ErrTooNear) {
			t.Errorf("depth at %v: %v", s, err)
		}
		if _, err := Magnification(0.2, s); !errors.Is(err, ErrTooNear) {
			t.Errorf("magnification at %v: %v", s, err)
		}
	}
}
