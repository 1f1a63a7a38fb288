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

// A lens maker's 70-200 mm manual, depth-of-field table at 200 mm, c = 1/30 mm,
// near and far limits in metres. The lens focuses inside and is shorter than
// 200 mm when near, so the magnification form is compared: m = 1/24.3 at 5 m,
// 1/14.0 at 3 m, within 3 cm.
func TestDepthOfALensTable(t *testing.T) {
	const c = unit.Millimetre / 30
	tables := []struct {
		m    float64
		rows [][3]float64 // stop, near, far
	}{
		{1 / 24.3, [][3]float64{{4, 4.92, 5.09}, {5.6, 4.89, 5.12}, {8, 4.84, 5.17}, {11, 4.78, 5.24}, {16, 4.69, 5.35}, {22, 4.59, 5.50}, {32, 4.43, 5.77}}},
		{1 / 14.0, [][3]float64{{4, 2.97, 3.03}, {8, 2.95, 3.06}, {16, 2.89, 3.12}, {32, 2.79, 3.24}}},
	}
	rows := 0
	for _, table := range tables {
		for _, r := range table.rows {
			rows++
			got, err := DepthAtMagnification(unit.Stop(r[0]), c, table.m)
			if err != nil {
				t.Fatal(err)
			}
			tol := 0.03
			if r[0] >= 22 { // the printed stop is rounded: f/22 is f/22.6
				tol = 0.05
			}
			near(t, "depth", got.Metres(), r[2]-r[1], tol)
		}
	}
	if rows < 11 {
		t.Fatalf("%d rows of 11", rows)
	}
}

// NAVEDTRA 14209: the distance to focus at for limits D and d is 2Dd/(D+d).
func TestFocusBetween(t *testing.T) {
	got, err := FocusBetween(2, 6)
	if err != nil || got != 3 {
		t.Errorf("%v %v", got, err)
	}
	if got, err := FocusBetween(5, unit.Length(math.Inf(1))); err != nil || got != 10 {
		t.Errorf("to infinity %v %v", got, err)
	}
}

// cos^4 at 10, 20, 30 and 40 degrees (computed).
func TestFalloff(t *testing.T) {
	for deg, want := range map[unit.Angle]float64{10: .9406, 20: .7797, 30: .5625, 40: .3444} {
		near(t, "cos^4", Falloff(deg*unit.Degree), want, 5e-5)
	}
}
