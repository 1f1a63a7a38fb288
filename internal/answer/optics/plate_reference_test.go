package optics

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

func pass(t *testing.T, n float64, thick unit.Length, deg float64) Passage {
	t.Helper()
	p, err := Plate{n, thick}.Pass(unit.Angle(deg) * unit.Degree)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Shift of a plane-parallel plate. The first two are textbook exercises (printed
// 3.3 cm and 1.02 cm); the others are computed from d = t sin(i-r)/cos r.
func TestShiftOfTextbooks(t *testing.T) {
	cases := []struct{ n, mm, deg, want float64 }{
		{1.5, 100, 45, 32.914}, {1.5, 20, 60, 10.249},
		{1.491, 12, 30, 2.3008}, {1.491, 12, 45, 3.9144}, {1.491, 12, 60, 6.1111},
		{1.491, 15, 45, 4.8930}, {1.52, 12.7, 45, 4.2609},
	}
	for _, c := range cases {
		p := pass(t, c.n, unit.Length(c.mm)*unit.Millimetre, c.deg)
		tol := 5.0001e-5
		if c.mm == 100 || c.mm == 20 {
			tol = 5e-4
		}
		near(t, "shift", p.Shift.Millimetres(), c.want, tol)
	}
}

// Two faces at normal incidence, first pass and with the light thrown to and
// fro inside (computed from Fresnel's equations).
func TestTwoFacesAtNormalIncidence(t *testing.T) {
	for _, c := range [][3]float64{
		{1.491, .92381, .92520}, {1.50, .92160, .92308}, {1.52, .91665, .91832}, {1.586, .89994, .90232},
	} {
		p := pass(t, c[0], unit.Millimetre, 0)
		near(t, "first pass", p.Transmission, c[1], 5.0001e-6)
		near(t, "with multiples", p.WithMultiples, c[2], 5.0001e-6)
	}
}

// The same at an angle, n = 1.491, unpolarised, with multiples (computed).
func TestTwoFacesAtAnAngle(t *testing.T) {
	for deg, want := range map[float64]float64{30: .92287, 45: .90951, 60: .85026, 70: .73059, 80: .45966} {
		near(t, "with multiples", pass(t, 1.491, unit.Millimetre, deg).WithMultiples, want, 5.0001e-6)
	}
}

// Brewster's angle of acrylic, n = 1.491 (computed).
func TestAnglesOfAcrylic(t *testing.T) {
	b, err := Brewster(1.491)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "Brewster", b.Degrees(), 56.1506, 5e-5)
	near(t, "Rp at Brewster's angle", fresnel(float64(b), 1.491).P, 0, 1e-30)
}

// Infinitely many passes inside add up to the closed form (1-R)/(1+R).
func TestMultiplesAreASum(t *testing.T) {
	for _, deg := range []float64{0, 30, 60, 85} {
		p := pass(t, 1.52, unit.Millimetre, deg)
		sum := func(r float64) float64 {
			total, term := 0.0, (1-r)*(1-r)
			for range 2000 {
				total += term
				term *= r * r
			}
			return total
		}
		near(t, "sum", (sum(p.Reflectance.S)+sum(p.Reflectance.P))/2, p.WithMultiples, 1e-12)
	}
}

func TestIndexOneDoesNothing(t *testing.T) {
	for _, deg := range []float64{0, 1, 45, 89, 89.999} {
		p := pass(t, 1, unit.Millimetre, deg)
		if p.Shift != 0 || p.Transmission != 1 || p.WithMultiples != 1 {
			t.Errorf("%v deg: %+v", deg, p)
		}
		near(t, "refraction", p.Refraction.Degrees(), deg, 1e-10)
	}
}

func TestPlateRefuses(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct{ n, t, deg float64 }{
		{0.99, 1, 0}, {nan, 1, 0}, {11, 1, 0}, {1.5, 0, 0}, {1.5, -1, 0}, {1.5, nan, 0}, {1.5, 1, 90}, {1.5, 1, -1}, {1.5, 1, nan}, {1.5, math.Inf(1), 0},
	} {
		if p, err := (Plate{c.n, unit.Length(c.t)}).Pass(unit.Angle(c.deg) * unit.Degree); err == nil {
			t.Errorf("%+v gave %+v", c, p)
		}
	}
}
