package chart

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
	"pgregory.net/rapid"
)

func drawRink(t *rapid.T) rink.Rink {
	w := rapid.Float64Range(20, 34).Draw(t, "width")
	r, err := rink.New(rink.Dimensions{
		Length:       unit.Length(rapid.Float64Range(40, 65).Draw(t, "length")),
		Width:        unit.Length(w),
		CornerRadius: unit.Length(rapid.Float64Range(3, w/2-0.1).Draw(t, "radius")),
	})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// length measures a polyline with true arcs: chord c and bulge b have the arc
// c (1 + b^2) atan(b) / b.
func length(l sheet.Polyline) float64 {
	total := 0.0
	for i, v := range l.Vertices {
		if i+1 == len(l.Vertices) && !l.Closed {
			break
		}
		c, b := v.Dist(l.Vertices[(i+1)%len(l.Vertices)].Point), v.Bulge
		if b != 0 {
			c *= (1 + b*b) * math.Atan(b) / b
		}
		total += c
	}
	return total
}

// Along the boards, the drawn length is the difference of stations at scale,
// and every corner of the line lies on the rink.
func TestRingMeasuresStations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawRink(t)
		g := newGround(r, sheet.Pt(100, 80), rapid.Float64Range(1, 12).Draw(t, "scale"))
		from := unit.Length(rapid.Float64Range(0, r.Perimeter().Metres()).Draw(t, "from"))
		to := from + unit.Length(rapid.Float64Range(0.01, r.Perimeter().Metres()-0.01).Draw(t, "length"))
		l := g.ring(from, to, 0)
		if got, want := length(l), g.Len((to - from).Metres()); math.Abs(got-want) > 1e-6*want+1e-6 {
			t.Fatalf("drew %.6f mm for %.6f", got, want)
		}
		// 3 mm outside: an arc of the boards grows by 3 mm for each radian it turns.
		turned := 0.0
		for _, v := range l.Vertices {
			turned += 4 * math.Atan(v.Bulge)
		}
		if got, want := length(g.ring(from, to, 3)), length(l)+3*turned; math.Abs(got-want) > 1e-6*want+1e-6 {
			t.Fatalf("3 mm outside: %.6f mm, want %.6f", got, want)
		}
	})
}

func TestRingGoesRound(t *testing.T) {
	r, err := rink.Standard("north-american")
	if err != nil {
		t.Fatal(err)
	}
	g := newGround(r, sheet.Pt(0, 0), 1)
	// Perimeter of 200 x 85 ft with corners of 28 ft: 521.9292 ft (P = 2(L+W) - 8r + 2 pi r).
	if got, want := length(g.around(0)), 521.9292*0.3048; math.Abs(got-want) > 1e-4 {
		t.Errorf("round the boards %.5f m, want %.5f", got, want)
	}
	if got := g.ring(0, r.Perimeter(), 0); len(got.Vertices) != 10 {
		t.Errorf("%d vertices round the boards, want 8 breaks and both ends", len(got.Vertices))
	}
}

// The sheet's x and y of a station are the rink's, at scale, y turned over.
func TestStationsStandWhereTheRinkSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawRink(t)
		g := newGround(r, sheet.Pt(100, 80), 4)
		s := unit.Length(rapid.Float64Range(0, r.Perimeter().Metres()).Draw(t, "s"))
		p := r.Point(s)
		if got := g.off(s, 0); math.Abs(got.X-100-4*p.X) > 1e-9 || math.Abs(80-got.Y-4*p.Y) > 1e-9 {
			t.Fatalf("station %g at %v, rink says %v", s, got, p)
		}
		if d := g.off(s, 5).Dist(g.off(s, 0)); math.Abs(d-5) > 1e-9 {
			t.Fatalf("5 mm outside is %g mm away", d)
		}
		if r.Contains(p.Sub(r.Normal(s).Scale(0.01))) {
			t.Fatalf("outside lies inside at station %g", s)
		}
	})
}

// A ray from the boards meets the outline where bisection on
// rink.Contains finds it.
func TestRaysMeetTheBoards(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawRink(t)
		s := unit.Length(rapid.Float64Range(0, r.Perimeter().Metres()).Draw(t, "s"))
		a := rapid.Float64Range(-1.2, 1.2).Draw(t, "pan")
		n, u := r.Normal(s), r.Tangent(s)
		dir := n.Scale(math.Cos(a)).Add(u.Scale(math.Sin(a)))
		p := r.Point(s).Add(n.Scale(0.01))
		got := rayLength(p, dir, r.Outline(200))
		lo, hi := 0.0, 100.0
		for range 60 {
			if mid := (lo + hi) / 2; r.Contains(p.Add(dir.Scale(mid))) {
				lo = mid
			} else {
				hi = mid
			}
		}
		// Chords of 200 steps leave the arc by r (1 - cos(pi/800)); a grazing ray
		// meets it by so much over the sine of the angle, some 0.1 m at worst here.
		if math.Abs(got-lo) > 0.1 {
			t.Fatalf("ray of %g m, boards after %g", got, lo)
		}
	})
}

func TestRayOutsideIsNothing(t *testing.T) {
	square := []geom.Vec2{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: 1}, {X: 0, Y: 1}}
	if got := rayLength(geom.Vec2{X: 0.5, Y: 2}, geom.Vec2{Y: 1}, square); got != 0 {
		t.Errorf("%g", got)
	}
	if got := rayLength(geom.Vec2{X: 0.5, Y: 0}, geom.Vec2{Y: 1}, square); got != 1 {
		t.Errorf("%g, want 1", got)
	}
}

// The heat map's lightness falls steadily, so that it reads in grey.
func TestHeatFallsInGrey(t *testing.T) {
	before := 256.0
	for i := range 101 {
		c := heatColour(float64(i) / 100)
		y := 0.2126*float64(c.R) + 0.7152*float64(c.G) + 0.0722*float64(c.B)
		if y >= before {
			t.Fatalf("at %d %% the map is %g, no darker than %g before", i, y, before)
		}
		before = y
	}
}
