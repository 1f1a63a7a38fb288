package rink

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// The table of area, perimeter and half-width at the goal line is computed from
// A = LW-(4-pi)r^2 and P = 2(L+W)-8r+2 pi r to four decimals, in feet for the
// North American rinks and metres for the international ones.
func TestDerivedTable(t *testing.T) {
	cases := []struct {
		l, w, r, goal, unit     float64
		area, perimeter, halfAt float64
	}{
		{200, 85, 28, 11, 0.3048, 16327.0086, 521.9292, 36.7486},
		{200, 85, 20, 11, 0.3048, 16656.6371, 535.6637, 40.3606},
		{60, 30, 8.5, 4, 1, 1737.9801, 165.4071, 13.7111},
		{60, 26, 8.5, 4, 1, 1497.9801, 157.4071, 11.7111},
		{60, 30, 7, 4, 1, 1757.9380, 167.9823, 14.3246},
	}
	for _, c := range cases {
		u := unit.Length(c.unit)
		r, err := New(Dimensions{Length: u * unit.Length(c.l), Width: u * unit.Length(c.w), CornerRadius: u * unit.Length(c.r),
			Markings: Markings{GoalLine: u * unit.Length(c.goal)}})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "area", r.Area()/(c.unit*c.unit), c.area, 5e-5)
		near(t, "perimeter", r.Perimeter().Metres()/c.unit, c.perimeter, 5.0001e-5)
		near(t, "half-width at the goal line", r.HalfWidth(r.GoalX())/c.unit, c.halfAt, 5e-5)
	}
}

// Landmarks of both books: distances from the end boards 11 and 75 ft, 4 and
// 22.86 m; circles 15 ft about 31 ft, 4.5 m about 10 m from the end boards.
func TestLandmarksOfTheBooks(t *testing.T) {
	cases := []struct {
		standard string
		unit     float64
		x        [4]float64 // goal-line, circle-bottom, circle-top, blue-line from centre ice
	}{
		{NorthAmerican, 0.3048, [4]float64{89, 84, 54, 25}},
		{International, 1, [4]float64{26, 24.5, 15.5, 7.14}},
	}
	for _, c := range cases {
		r, err := Standard(c.standard)
		if err != nil {
			t.Fatal(err)
		}
		for i, l := range Landmarks() {
			for _, corner := range Corners() {
				s, ok := r.Landmark(corner, l)
				if !ok {
					t.Fatalf("%s %s %s missing", c.standard, corner, l)
				}
				p, x := r.Point(s), c.x[i]*c.unit
				wantX, wantY := x, r.HalfWidth(x)
				if corner.End() == "A" {
					wantX = -wantX
				}
				if corner == ABench || corner == BBench {
					wantY = -wantY
				}
				near(t, corner.String()+" "+string(l)+" x", p.X, wantX, 1e-12)
				near(t, corner.String()+" "+string(l)+" y", p.Y, wantY, 1e-12)
			}
		}
	}
}

// Face-offs in public event data fall at (0,0), (+-69,+-22) and (+-20,+-22) ft.
func TestSpotsOfEventData(t *testing.T) {
	r, err := Standard(NorthAmerican)
	if err != nil {
		t.Fatal(err)
	}
	spots := r.Spots()
	circles := 0
	for _, s := range spots {
		if s.Circle > 0 {
			circles++
		}
		x, y := math.Abs(s.At.X)/0.3048, math.Abs(s.At.Y)/0.3048
		switch {
		case s.Centre:
			near(t, "centre", x+y, 0, 0)
		case s.Circle > 0:
			near(t, "end spot x", x, 69, 1e-12)
			near(t, "end spot y", y, 22, 1e-12)
		default:
			near(t, "neutral spot x", x, 20, 1e-12)
			near(t, "neutral spot y", y, 22, 1e-12)
		}
	}
	if len(spots) != 9 || circles != 5 {
		t.Errorf("%d spots, %d circles", len(spots), circles)
	}
	neutral, end := r.BlueX()
	near(t, "neutral edge", neutral/0.3048, 25, 1e-12)
	near(t, "end-zone edge", end/0.3048, 26, 1e-12)
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g within %g", what, got, want, tol)
	}
}
