package optics

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g within %g", what, got, want, tol)
	}
}

func depth(t *testing.T, f unit.Length, n unit.Stop, c, s unit.Length) Depth {
	t.Helper()
	d, err := DepthOfField(f, n, c, s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// US Army course SS0507, exercise: 3 in lens (the text says 75 mm and computes
// with 3.00 in), f/8, c 0.002 in, 15 ft: H 46.8 ft, 11.3 to 22 ft. The book takes
// s(H)/(H+-s) without the focal length: at 3 in that moves the far limit by 0.17 ft.
func TestDepthOfArmyCourse(t *testing.T) {
	d := depth(t, 3*unit.Inch, 8, 0.002*unit.Inch, 15*unit.Foot)
	near(t, "H - f", (d.Hyperfocal - 3*unit.Inch).Feet(), 46.875, 1e-9)
	near(t, "near", d.Near.Feet(), 11.36, 0.06) // printed 11.3, cut off
	near(t, "far", d.Far.Feet(), 22, 0.15)
}

// US Navy course NAVEDTRA 14209: 155 mm (6.1 in), f/2.8, c 0.002 in, 10 ft: H 554 ft, 9.8 to 10.2 ft.
func TestDepthOfNavyCourse(t *testing.T) {
	d := depth(t, 6.1*unit.Inch, 2.8, 0.002*unit.Inch, 10*unit.Foot)
	near(t, "H", d.Hyperfocal.Feet(), 554, 0.6)
	near(t, "near", d.Near.Feet(), 9.8, 0.05)
	near(t, "far", d.Far.Feet(), 10.2, 0.05)
}

// A photographer's table: 50 mm, f/8, c 0.033 mm: H 9.47 m (without "+ f"; 9.52 with it).
func TestHyperfocalOfATable(t *testing.T) {
	h, err := Hyperfocal(50*unit.Millimetre, 8, 0.033*unit.Millimetre)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "H - f", h.Metres()-0.05, 9.47, 0.005)
}
