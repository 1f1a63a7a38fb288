package optics

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// traced follows one ray through a plate between z = 0 and z = t by vector
// Snell and mirror laws, face by face, and returns where the first image and
// the ghost leave it.
func traced(n, t, i float64) (first, ghost geom.Vec3) {
	u := geom.Vec3{X: math.Sin(i), Z: math.Cos(i)}
	eta := 1 / n
	cosIn := u.Z
	root := math.Sqrt(1 - eta*eta*(1-cosIn*cosIn))
	in := geom.Vec3{X: eta * u.X, Z: eta*u.Z + (root - eta*cosIn)} // toward +z
	to := func(from geom.Vec3, d geom.Vec3, z float64) geom.Vec3 {
		return from.Add(d.Scale((z - from.Z) / d.Z))
	}
	back := geom.Vec3{X: in.X, Z: -in.Z}
	first = to(geom.Vec3{}, in, t)
	ghost = to(to(first, back, 0), in, t)
	return first, ghost
}

// The ghost's place against a ray followed face by face, and against the
// closed form at 45 degrees: t / sqrt(n^2 - 1/2).
func TestGhostStandsWhereTheRayLeaves(t *testing.T) {
	for _, n := range []float64{1.4906, 1.5234, 1.5848} {
		for _, deg := range []float64{0, 10, 30, 45, 60, 80} {
			i := deg * math.Pi / 180
			first, ghost := traced(n, 12.7, i)
			want := math.Abs(ghost.X-first.X) * math.Cos(i) // square to the parallel rays
			g, err := Plate{n, 12.7 * unit.Millimetre}.Ghost(unit.Angle(i))
			if err != nil {
				t.Fatal(err)
			}
			near(t, "apart", g.Apart.Millimetres(), want, 1e-9)
		}
		g, _ := Plate{n, 12.7 * unit.Millimetre}.Ghost(45 * unit.Degree)
		near(t, "45 deg", g.Apart.Millimetres(), 12.7/math.Sqrt(n*n-0.5), 1e-9)
	}
}

// At normal incidence all is in closed form: R = ((n-1)/(n+1))^2, the ghost R^2,
// both faces mirror 2R/(1+R), haze is as measured.
func TestPaneSquareOn(t *testing.T) {
	n := 1.491
	r := (n - 1) * (n - 1) / ((n + 1) * (n + 1))
	pane := Pane{Plate{n, 12.7 * unit.Millimetre}, 0.08}
	s, err := pane.See(0, Surround{Detail: 0.25, Mirror: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ghost", s.Ghost.Strength, r*r, 1e-12)
	near(t, "apart", s.Ghost.Apart.Millimetres(), 0, 1e-12)
	near(t, "mirrored", s.Mirrored(), 2*r/(1+r), 1e-12)
	near(t, "scattered", s.Scattered, 0.08, 1e-12)
	pass := (1 - r) * (1 - r)
	direct, veil := pass*0.92*0.25, pass*0.08+2*r/(1+r)*0.3
	near(t, "contrast", s.Contrast, direct/(direct+veil)*(1-r*r)/(1+r*r), 1e-12)
}

// The reflected share of both faces at an angle, n = 1.491: one minus the
// tabled transmission with multiples.
func TestPaneMirrorsWhatDoesNotPass(t *testing.T) {
	for deg, want := range map[float64]float64{30: 1 - .92287, 45: 1 - .90951, 60: 1 - .85026, 70: 1 - .73059, 80: 1 - .45966} {
		near(t, "mirrored", pass(t, 1.491, unit.Millimetre, deg).Mirrored(), want, 5.0001e-6)
	}
}

// A clean thin pane of index near that of air takes nothing; more haze, more
// lit stands and a darker detail each leave less contrast.
func TestContrastFalls(t *testing.T) {
	see := func(haze, mirror, detail float64) float64 {
		s, err := Pane{Plate{1.49, 12 * unit.Millimetre}, haze}.See(40*unit.Degree, Surround{Detail: detail, Mirror: mirror})
		if err != nil {
			t.Fatal(err)
		}
		return s.Contrast
	}
	base := see(0.02, 0.1, 0.5)
	for name, worse := range map[string]float64{"haze": see(0.1, 0.1, 0.5), "lit stands": see(0.02, 0.5, 0.5), "dark detail": see(0.02, 0.1, 0.1)} {
		if !(worse < base) {
			t.Errorf("%s: %v, before %v", name, worse, base)
		}
	}
	s, err := Pane{Plate{1, unit.Millimetre}, 0}.See(30*unit.Degree, Surround{Detail: 1, Mirror: 1})
	if err != nil || s.Contrast != 1 {
		t.Errorf("air leaves %v, %v", s.Contrast, err)
	}
	for _, bad := range []Pane{{Plate{1.49, 1}, 1}, {Plate{1.49, 1}, -0.1}, {Plate{1.49, 1}, math.NaN()}} {
		if _, err := bad.See(0, Surround{Detail: 1}); err == nil {
			t.Errorf("haze %v is taken", bad.Haze)
		}
	}
}
