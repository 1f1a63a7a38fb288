package puck

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/unit"
)

const mm = unit.Millimetre

// usual is the common hole, 5.5 in x 4.5 in, in a half-inch pane.
func usual(t testing.TB) Opening { return opening(t, 139.7, 114.3, 12.7) }

func opening(t testing.TB, w, h, thick float64) Opening {
	t.Helper()
	o, err := NewOpening(unit.Size{W: unit.Length(w) * mm, H: unit.Length(h) * mm}, unit.Length(thick)*mm)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// Hand-worked from W - t tan q - D / cos q with a pocket calculator.
func TestFlatByHand(t *testing.T) {
	o := usual(t)
	for _, c := range []struct{ deg, w, h float64 }{
		{0, 139.7 - 76.2, 114.3 - 25.4},
		{30, 139.7 - 12.7*0.577350269 - 76.2/0.866025404, 88.9},
		{45, 139.7 - 12.7 - 76.2*1.414213562, 88.9},
		{60, 0, 0},
		{-45, 139.7 - 12.7 - 76.2*1.414213562, 88.9},
		{90, 0, 0},
	} {
		got := o.Flat(unit.Angle(c.deg) * unit.Degree)
		if math.Abs(got.W.Millimetres()-c.w) > 1e-5 || math.Abs(got.H.Millimetres()-c.h) > 1e-9 {
			t.Errorf("at %g deg: %.6f x %.6f mm, by hand %.6f x %.6f", c.deg, got.W.Millimetres(), got.H.Millimetres(), c.w, c.h)
		}
	}
}

func TestFlatLimitIsWhereTheWindowCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(76.3, 400).Draw(t, "w")
		h := rapid.Float64Range(25.5, 400).Draw(t, "h")
		thick := rapid.Float64Range(0, 40).Draw(t, "thick")
		o, err := NewOpening(unit.Size{W: unit.Length(w) * mm, H: unit.Length(h) * mm}, unit.Length(thick)*mm)
		if err != nil {
			t.Fatal(err)
		}
		q, ok := o.FlatLimit().Get()
		if !ok {
			t.Fatal("a limit is due")
		}
		if in := o.Flat(q - 1e-6); in.W <= 0 {
			t.Fatalf("closed just inside the limit %g", q.Degrees())
		}
		if out := o.Flat(q + 1e-6); out.W != 0 || out.H != 0 {
			t.Fatalf("open just past the limit %g: %v", q.Degrees(), out)
		}
		anyQ, ok := o.AnyLimit().Get()
		if !ok || anyQ < q {
			t.Fatalf("limit of any orientation %g below the flat limit %g", anyQ.Degrees(), q.Degrees())
		}
	})
}

func TestNoFlatPuckPasses(t *testing.T) {
	for name, o := range map[string]Opening{
		"as wide as the puck":  opening(t, 76.2, 114.3, 12.7),
		"as high as the puck":  opening(t, 139.7, 25.4, 12.7),
		"lower than the puck":  opening(t, 139.7, 20, 12.7),
		"narrow and low":       opening(t, 20, 20, 12.7),
		"narrower than a puck": opening(t, 60, 114.3, 0),
	} {
		if q, ok := o.FlatLimit().Get(); ok {
			t.Errorf("%s: limit %g, want none", name, q.Degrees())
		}
		if got := o.Flat(0); got != (unit.Size{}) {
			t.Errorf("%s: window %v, want none", name, got)
		}
	}
}

func TestSizesAreChecked(t *testing.T) {
	for _, c := range [][3]float64{{0, 100, 10}, {100, -1, 10}, {100, 100, -1}, {math.NaN(), 100, 1}, {100, 1e9, 1}} {
		_, err := NewOpening(unit.Size{W: unit.Length(c[0]) * mm, H: unit.Length(c[1]) * mm}, unit.Length(c[2])*mm)
		if err == nil {
			t.Errorf("%v mm was taken", c)
		}
	}
}

func ExampleOpening_Flat() {
	o, _ := NewOpening(unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}, unit.Inch/2)
	w := o.Flat(30 * unit.Degree)
	q, _ := o.FlatLimit().Get()
	fmt.Printf("%.1f x %.1f mm, closes at %.1f deg\n", w.W.Millimetres(), w.H.Millimetres(), q.Degrees())
	// Output: 44.4 x 88.9 mm, closes at 51.9 deg
}

// A wheel of a puck (axis level, square to the flight) is 25.4 mm wide and
// 76.2 mm high: the closed form with 25.4 mm in place of the diameter.
func TestAnyLimitOfAHighOpening(t *testing.T) {
	q, ok := usual(t).AnyLimit().Get()
	want := math.Acos(25.4/math.Hypot(139.7, 12.7)) - math.Atan(12.7/139.7)
	if !ok || math.Abs(q.Radians()-want) > 1e-12 {
		t.Errorf("limit %.4f deg, want %.4f", q.Degrees(), want*180/math.Pi)
	}
}

// The limit of any orientation is where the best of many orientations stops.
func TestAnyLimitAgainstSearch(t *testing.T) {
	axes := NewOrientations(250000)
	for _, o := range []Opening{usual(t), opening(t, 139.7, 70, 12.7), opening(t, 100, 50, 20), opening(t, 90, 30, 6)} {
		q, ok := o.AnyLimit().Get()
		if !ok {
			t.Fatalf("%v: a limit is due", o)
		}
		if w := o.Tumbling(Flight{Along: q + 0.01*unit.Degree}, axes); w.Pass != 0 {
			t.Errorf("%v: %g of the orientations pass beyond the limit %.2f deg", o, w.Pass, q.Degrees())
		}
		if w := o.Tumbling(Flight{Along: q - 2*unit.Degree}, axes); w.Pass == 0 {
			t.Errorf("%v: none passes 2 deg inside the limit %.2f deg", o, q.Degrees())
		}
	}
}

// By hand, 40 deg along: (139.7 - 12.7 tan 40) x 114.3 = 14749.657 mm2.
func TestCentreAreaByHand(t *testing.T) {
	got := usual(t).centreArea(Flight{Along: -40 * unit.Degree})
	if math.Abs(got*1e6-14749.657) > 1e-2 {
		t.Errorf("%.4f mm2", got*1e6)
	}
	if past := usual(t).centreArea(Flight{Up: 84 * unit.Degree}); past != 0 {
		t.Errorf("%g m2 past the overlap of the faces", past)
	}
}

func TestTumblingLaws(t *testing.T) {
	axes := NewOrientations(400)
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(20, 300).Draw(t, "w")
		h := rapid.Float64Range(20, 300).Draw(t, "h")
		f := Flight{
			Along: unit.Angle(rapid.Float64Range(-85, 85).Draw(t, "along")) * unit.Degree,
			Up:    unit.Angle(rapid.Float64Range(-60, 60).Draw(t, "up")) * unit.Degree,
		}
		small, _ := NewOpening(unit.Size{W: unit.Length(w) * mm, H: unit.Length(h) * mm}, 12*mm)
		large, _ := NewOpening(unit.Size{W: unit.Length(w+5) * mm, H: unit.Length(h+5) * mm}, 12*mm)
		a, b := small.Tumbling(f, axes), large.Tumbling(f, axes)
		if b.AreaM2 < a.AreaM2 || b.Pass < a.Pass {
			t.Fatalf("a larger hole lets fewer through: %+v, %+v", a, b)
		}
		if a.Pass > 1 || a.AreaM2 > w*h*1e-6 {
			t.Fatalf("window larger than the hole: %+v", a)
		}
	})
}

func BenchmarkTumbling(b *testing.B) {
	o, axes := usual(b), NewOrientations(256)
	for b.Loop() {
		o.Tumbling(Flight{Along: 0.5, Up: 0.05}, axes)
	}
}
