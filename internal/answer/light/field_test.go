package light

import (
	"errors"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// drawPoints draws readings on a grid of 1 m: a survey is paced out.
func drawPoints(t *rapid.T, lux func(geom.Vec2) float64) []Point {
	n := rapid.IntRange(3, 30).Draw(t, "readings")
	out := make([]Point, n)
	for i := range out {
		at := geom.Vec2{X: float64(rapid.IntRange(-30, 30).Draw(t, "x")), Y: float64(rapid.IntRange(-13, 13).Draw(t, "y"))}
		out[i] = Point{at, unit.Illuminance(lux(at))}
	}
	return out
}

func fieldOf(t interface{ Fatal(...any) }, points []Point) *Field {
	f, err := NewField(points)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// An even slope of light comes back exactly between the readings.
func TestSlopeIsExact(t *testing.T) {
	met := 0
	rapid.Check(t, func(t *rapid.T) {
		slope := func(p geom.Vec2) float64 { return 1000 + 7*p.X - 11*p.Y }
		f := fieldOf(t, drawPoints(t, slope))
		for range 20 {
			q := geom.Vec2{X: rapid.Float64Range(-30, 30).Draw(t, "qx"), Y: rapid.Float64Range(-13, 13).Draw(t, "qy")}
			lux, outside := f.At(q)
			if outside {
				continue
			}
			met++
			if math.Abs(lux.Lux()-slope(q)) > 1e-4 {
				t.Fatalf("%v: %v lx, want %v", q, lux, slope(q))
			}
		}
	})
	if met < 200 {
		t.Errorf("only %d places lay between the readings", met)
	}
}

// The field returns each reading at its place, and never leaves their range.
func TestReadingsComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lux := func(geom.Vec2) float64 { return rapid.Float64Range(100, 2000).Draw(t, "lux") }
		points := drawPoints(t, lux)
		f := fieldOf(t, points)
		lo, hi := math.Inf(1), 0.0
		for _, p := range f.points {
			lo, hi = min(lo, p.Lux.Lux()), max(hi, p.Lux.Lux())
			if got, outside := f.At(p.At); outside || math.Abs(got.Lux()-p.Lux.Lux()) > 1e-3 {
				t.Fatalf("at reading %v: %v lx, outside %v", p, got, outside)
			}
		}
		q := geom.Vec2{X: rapid.Float64Range(-40, 40).Draw(t, "qx"), Y: rapid.Float64Range(-20, 20).Draw(t, "qy")}
		if got, _ := f.At(q); got.Lux() < lo-1e-6 || got.Lux() > hi+1e-6 {
			t.Fatalf("%v: %v lx outside %v to %v", q, got, lo, hi)
		}
	})
}

// The order in which the light was measured does not matter.
func TestOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := drawPoints(t, func(geom.Vec2) float64 { return rapid.Float64Range(100, 2000).Draw(t, "lux") })
		f, g := fieldOf(t, points), fieldOf(t, rapid.Permutation(points).Draw(t, "order"))
		for range 10 {
			q := geom.Vec2{X: rapid.Float64Range(-35, 35).Draw(t, "qx"), Y: rapid.Float64Range(-15, 15).Draw(t, "qy")}
			a, outA := f.At(q)
			b, outB := g.At(q)
			if outA != outB || math.Abs(a.Lux()-b.Lux()) > 1e-4 {
				t.Fatalf("%v: %v lx, outside %v; in another order %v lx, outside %v", q, a, outA, b, outB)
			}
		}
	})
}

// Short sides of a cell come out as well as long ones: cut from a far box, they
// moved the light at this place by 1e-4 lx with the order of the readings.
func TestCellsAreCutNearBy(t *testing.T) {
	var points []Point
	for _, p := range [][3]float64{{-8, -2, 100}, {-1, 2, 100}, {30, 0, 100}, {-1, 0, 100}, {0, 4, 100}, {-1, 1, 2000}, {0, 13, 100}, {3, 0, 100}, {0, -1, 100}} {
		points = append(points, Point{geom.Vec2{X: p[0], Y: p[1]}, unit.Illuminance(p[2])})
	}
	q := geom.Vec2{X: -0.34661865234375, Y: 0.02352793514728546}
	want, _ := fieldOf(t, points).At(q)
	for k := range points {
		turned := slices.Concat(points[k:], points[:k])
		for range 2 {
			if got, outside := fieldOf(t, turned).At(q); outside || math.Abs(got.Lux()-want.Lux()) > 1e-9 {
				t.Errorf("%v lx, in another order %v lx, outside %v", want, got, outside)
			}
			slices.Reverse(turned)
		}
	}
}

// Laplace weights by hand: between four readings on a square of side 2, at
// (0.5, 0), the cell's sides toward the near pair, at distance sqrt(1.25), and
// the far pair, at sqrt(3.25), give weights in the ratio found by geometry.
func TestWeightsByHand(t *testing.T) {
	square := []Point{{geom.Vec2{X: 1, Y: 1}, 1000}, {geom.Vec2{X: 1, Y: -1}, 1000}, {geom.Vec2{X: -1, Y: 1}, 200}, {geom.Vec2{X: -1, Y: -1}, 200}}
	f := fieldOf(t, square)
	// The four are alike across the axis, so even slope in x: 600 + 400 x.
	if got, _ := f.At(geom.Vec2{X: 0.5}); math.Abs(got.Lux()-800) > 1e-9 {
		t.Errorf("%v lx, want 800", got)
	}
	// A fifth reading at the middle, 0 off in the slope, pulls the light there.
	f = fieldOf(t, append(square, Point{geom.Vec2{}, 100}))
	// At (0.5, 0): the cell of the place is bounded by x >= 0.25 (middle), and
	// by the bisectors with (1, +-1): (x-0.5)/2 + y = 0.625 and its mirror, which
	// meet at x = 1.75. Side toward the middle: y = +-0.75 at x = 0.25, length
	// 1.5, distance 0.5: weight 3. Sides toward (1, +-1): from (0.25, 0.75) to
	// (1.75, 0), length sqrt(2.8125), distance sqrt(1.25): weight 1.5 each.
	want := (3*100 + 1.5*1000 + 1.5*1000) / 6.0
	if got, _ := f.At(geom.Vec2{X: 0.5}); math.Abs(got.Lux()-want) > 1e-9 {
		t.Errorf("%v lx, want %v", got, want)
	}
}

// One, two and several readings in a line: along the line between, off it the
// nearest point's light, said to be extrapolated.
func TestFewReadings(t *testing.T) {
	one := fieldOf(t, []Point{{geom.Vec2{X: 1}, 700}})
	if lux, outside := one.At(geom.Vec2{X: 1}); lux != 700 || outside {
		t.Error(lux, outside)
	}
	if lux, outside := one.At(geom.Vec2{X: 9}); lux != 700 || !outside {
		t.Error(lux, outside)
	}
	line := []Point{{geom.Vec2{X: -10}, 500}, {geom.Vec2{}, 1000}, {geom.Vec2{X: 10}, 700}}
	for _, points := range [][]Point{line, line[:2]} {
		f := fieldOf(t, points)
		if lux, outside := f.At(geom.Vec2{X: -5}); lux != 750 || outside {
			t.Error(len(points), lux, outside)
		}
		if lux, outside := f.At(geom.Vec2{X: -5, Y: 3}); lux != 750 || !outside {
			t.Error(len(points), lux, outside)
		}
	}
	if lux, outside := Uniform(640).At(geom.Vec2{X: 40}); lux != 640 || outside {
		t.Error(lux, outside)
	}
}

func TestReadingsAtOnePlaceAreAveraged(t *testing.T) {
	f := fieldOf(t, []Point{{geom.Vec2{}, 900}, {geom.Vec2{X: 5}, 300}, {geom.Vec2{}, 1200}, {geom.Vec2{}, 1500}})
	if lux, _ := f.At(geom.Vec2{}); lux != 1200 {
		t.Error(lux)
	}
}

func TestFieldRefuses(t *testing.T) {
	if _, err := NewField(nil); !errors.Is(err, ErrNoReadings) {
		t.Error(err)
	}
	for _, p := range []Point{{Lux: 0}, {Lux: -1}, {Lux: unit.Illuminance(math.NaN())}, {Lux: unit.Illuminance(math.Inf(1))}, {geom.Vec2{X: math.NaN()}, 5}} {
		if _, err := NewField([]Point{p}); err == nil {
			t.Errorf("%v taken", p)
		}
	}
}

// The light has no jump at the readings' border.
func TestNoJumpAtTheBorder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := fieldOf(t, drawPoints(t, func(geom.Vec2) float64 { return rapid.Float64Range(500, 1500).Draw(t, "lux") }))
		i := rapid.IntRange(0, len(f.hull)-1).Draw(t, "edge")
		a, b := f.hull[i].At, f.hull[(i+1)%len(f.hull)].At
		edge := b.Sub(a)
		if edge.Len() < 1 {
			return
		}
		k := rapid.Float64Range(0.2, 0.8).Draw(t, "k")
		on := a.Add(edge.Scale(k))
		in := geom.Vec2{X: -edge.Y, Y: edge.X}.Unit().Scale(3e-6)
		inside, _ := f.At(on.Add(in))
		outside, _ := f.At(on.Sub(in))
		if d := math.Abs(inside.Lux() - outside.Lux()); d > 1 {
			t.Fatalf("jump of %v lx at %v", d, on)
		}
	})
}

func BenchmarkFieldOverIce(b *testing.B) {
	points := []Point{}
	for x := -28.0; x <= 28; x += 7 {
		for y := -12.0; y <= 12; y += 6 {
			points = append(points, Point{geom.Vec2{X: x, Y: y}, unit.Illuminance(900 + 5*x + y*y)})
		}
	}
	f := fieldOf(b, points)
	r := northAmerican(b)
	for b.Loop() {
		if _, ok := f.OverIce(r); !ok {
			b.Fatal("no ice")
		}
	}
}

// Readings found by nearness give the light that all of them give: the same
// survey in a single square is asked in full.
func TestNearReadingsAreEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := drawPoints(t, func(geom.Vec2) float64 { return rapid.Float64Range(100, 2000).Draw(t, "lux") })
		f := fieldOf(t, points)
		if f.spread == 0 {
			return
		}
		whole := *f
		whole.near.side, whole.near.columns, whole.near.rows = 1000, 1, 1
		whole.near.in = [][]int{slices.Concat(f.near.in...)}
		q := geom.Vec2{X: rapid.Float64Range(-30, 30).Draw(t, "qx"), Y: rapid.Float64Range(-13, 13).Draw(t, "qy")}
		got, outside := f.At(q)
		want, beyond := whole.At(q)
		if outside != beyond || math.Abs(float64(got-want)) > 1e-6*float64(want) {
			t.Fatalf("%v: %v lx, of all readings %v", q, got, want)
		}
	})
}

// TestFewReadingsAreAsked counts how many of 5,000 readings a place is held
// against: those about it.
func TestFewReadingsAreAsked(t *testing.T) {
	points := make([]Point, 5000)
	for i := range points {
		points[i] = Point{At: geom.Vec2{X: float64(i%100) * 0.5, Y: float64(i/100) * 0.5}, Lux: 1000}
	}
	f := fieldOf(t, points)
	if len(f.near.in) < 1000 {
		t.Fatalf("%d squares for %d readings", len(f.near.in), len(points))
	}
	for _, in := range f.near.in {
		if len(in) > 9 {
			t.Errorf("%d readings in one square", len(in))
		}
	}
	var c cell
	f.around(geom.Vec2{X: 20.1, Y: 10.2}, near*f.spread, &c)
	if asked := 2*c.reach/f.near.side + 2; asked > 5 {
		t.Errorf("a place asks %.0f rings of squares", asked)
	}
}
