package optics

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// lux = 2.5 x 2^EV at ISO 100 and C 250 (ISO 2720:1974; public EV tables), and
// EV100 of usual rink lights, log2(E S/C).
func TestEVAndLux(t *testing.T) {
	c := DefaultCalibration
	for ev, lux := range map[float64]unit.Illuminance{0: 2.5, 8: 640, 9: 1280, 10: 2560, 15: 81920} {
		near(t, "EV", c.EV100(lux), ev, 1e-12)
	}
	for lux, ev := range map[unit.Illuminance]float64{500: 7.644, 750: 8.229, 1000: 8.644, 1500: 9.229, 1600: 9.322} {
		near(t, "EV100", c.EV100(lux), ev, 5e-4)
	}
}

// APEX: CIPA DC-008-2016, Annex C. Av 0 to 10 and Tv -5 to 11 with the marks
// that a camera shows for them; a mark is within a sixth of a stop of its value.
func TestApexScales(t *testing.T) {
	av := []unit.Stop{1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32}
	for i, n := range av {
		near(t, "Av", Av(n), float64(i), 1.0/6)
		if got := NearestStop(unit.Stop(math.Exp2(float64(i) / 2))); got.Nominal != float64(n) {
			t.Errorf("Av %d is %s, want f/%v", i, got.Text, float64(n))
		}
	}
	tv := []string{"30", "15", "8", "4", "2", "1", "0.5", "1/4", "1/8", "1/15", "1/30", "1/60", "1/125", "1/250", "1/500", "1/1000", "1/2000"}
	for i, text := range tv {
		if got := NearestShutter(unit.Shutter(math.Exp2(float64(5 - i)))); got.Text != text {
			t.Errorf("Tv %d is %s, want %s", i-5, got.Text, text)
		}
	}
	near(t, "Av + Tv of f/8 at 1/125", Av(8)+Tv(1.0/128), 13, 1e-12)
}

// Third stops: the exact power of two beside the engraved mark (computed).
func TestThirdStopsExact(t *testing.T) {
	for nominal, exact := range map[float64]float64{
		1.8: 1.7818, 2.2: 2.2449, 2.5: 2.5198, 3.2: 3.1748, 3.5: 3.5636, 4.5: 4.4898, 5.6: 5.6569, 6.3: 6.3496, 7.1: 7.1272, 11: 11.3137, 13: 12.6992,
	} {
		m := NearestStop(unit.Stop(nominal))
		near(t, m.Text, m.Exact, exact, 5e-5)
		near(t, "nominal", m.Nominal, nominal, 0)
	}
	for nominal, exact := range map[float64]float64{640: 645.08, 800: 812.75, 1250: 1290.16, 1600: 1625.50} {
		m := NearestShutter(unit.Shutter(1 / nominal))
		near(t, m.Text, 1/m.Exact, exact, 5e-3)
		near(t, "nominal", 1/m.Nominal, nominal, 1e-9)
	}
	for nominal, exact := range map[float64]float64{1250: 1269.92, 2500: 2539.84} {
		m := NearestISO(unit.ISO(nominal))
		near(t, m.Text, m.Exact, exact, 5e-3)
		near(t, "nominal", m.Nominal, nominal, 0)
	}
}

// The engraved ISO scale from 3 to 409600, as ISO 12232's rounded values run on cameras (from memory).
func TestISOScale(t *testing.T) {
	const want = "3 4 5 6 8 10 12 16 20 25 32 40 50 64 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500 " +
		"3200 4000 5000 6400 8000 10000 12800 16000 20000 25600 32000 40000 51200 64000 80000 102400 128000 160000 204800 256000 320000 409600"
	got := []string{}
	for i := -15; i <= 36; i++ {
		got = append(got, NearestISO(unit.ISO(100*math.Exp2(float64(i)/3))).Text)
	}
	if s := strings.Join(got, " "); s != want {
		t.Errorf("ISO scale\n%s\nwant\n%s", s, want)
	}
}

// The trade's example: 1000 lx, 1/1000 s at f/2.8 asks for 2.8^2 x 250 = ISO 1960.
func TestSolveEachOfThree(t *testing.T) {
	c := DefaultCalibration
	x, err := c.Solve(1000, Wanted{Shutter: unit.Known(unit.Shutter(0.001)), Stop: unit.Known(unit.Stop(2.8))})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ISO", float64(x.ISO), 1960, 1e-9)
	if m := NearestISO(x.ISO); m.Text != "2000" {
		t.Errorf("nearest mark %s", m.Text)
	}
	y, err := c.Solve(1000, Wanted{Shutter: unit.Known(unit.Shutter(0.001)), ISO: unit.Known(x.ISO)})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stop", float64(y.Stop), 2.8, 1e-12)
	z, err := c.Solve(1000, Wanted{Stop: unit.Known(unit.Stop(2.8)), ISO: unit.Known(x.ISO)})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shutter", float64(z.Shutter), 0.001, 1e-15)
	near(t, "light back", c.Lux(0.001, 2.8, x.ISO).Lux(), 1000, 1e-9)
	if x.Solved != "iso" || y.Solved != "stop" || z.Solved != "shutter" {
		t.Errorf("solved %q %q %q", x.Solved, y.Solved, z.Solved)
	}
}

func TestSolveRefuses(t *testing.T) {
	two := Wanted{Shutter: unit.Known(unit.Shutter(0.001)), Stop: unit.Known(unit.Stop(2.8))}
	three := two
	three.ISO = unit.Known(unit.ISO(100))
	cases := []struct {
		c Calibration
		e unit.Illuminance
		w Wanted
	}{
		{250, 1000, three}, {250, 1000, Wanted{}}, {250, 1000, Wanted{Stop: two.Stop}}, {239, 1000, two}, {401, 1000, two},
		{250, 0, two}, {250, -1, two}, {Calibration(math.NaN()), 1000, two}, {250, unit.Illuminance(math.Inf(1)), two},
	}
	for _, k := range cases {
		if x, err := k.c.Solve(k.e, k.w); err == nil {
			t.Errorf("%+v gave %+v", k, x)
		}
	}
}
