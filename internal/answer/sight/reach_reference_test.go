package sight_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/integrate"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/rink"
)

// TestBlindStripOfTheBoards is the closed form by similar triangles: behind the
// glass by d, over boards b high, from a hole h high, a puck at height z is hidden
// up to d (b - z) / (h - b) from straight boards.
func TestBlindStripOfTheBoards(t *testing.T) {
	for _, c := range []struct{ d, b, h float64 }{{0.05, 1.07, 1.47}, {0.12, 1.22, 1.4}, {0, 1.07, 1.5}, {0.3, 1.0, 1.16}} {
		a, k := bare(t, "international")
		a.Boards = glass.Boards{Height: unit.Length(c.b), Setback: unit.Known(unit.Length(c.d))}
		r := mapped(t, a, k, hole(&a, "h", 8, unit.Length(c.h)), 1)
		want := c.d * (c.b - sight.PuckHeight.Metres()) / (c.h - c.b)
		if math.Abs(r.Blind.Ledge-want) > 2e-4 {
			t.Errorf("%+v: the boards hide %v m, want %v", c, r.Blind.Ledge, want)
		}
		if r.Blind.Ahead < r.Blind.Ledge-2e-4 {
			t.Errorf("%+v: blind strip %v m, the boards alone hide %v", c, r.Blind.Ahead, r.Blind.Ledge)
		}
	}
	a, k := bare(t, "international")
	a.Boards.Height = 1.6
	if r := mapped(t, a, k, hole(&a, "low", 8, 1.5), 1); !math.IsInf(r.Blind.Ledge, 1) || r.Layers[0].Share != 0 {
		t.Errorf("a hole below the boards' top sees %v of the ice", r.Layers[0].Share)
	}
}

// TestBlindStripAheadIsTheTiltLimit: with the glass flush, only the lens's tilt
// limit cuts the near ice: (h - z) / tan(limit), the limit from the fit itself.
func TestBlindStripAheadIsTheTiltLimit(t *testing.T) {
	a, k := bare(t, "international")
	a.Boards.Setback = unit.Known[unit.Length](0)
	h := hole(&a, "h", 8, 1.5)
	r := mapped(t, a, k, h, 1)
	body := k.Bodies[0]
	for _, l := range r.Lenses {
		lens, _ := k.Lens(l.ID)
		c, err := fit.FromKit(opening(t, a, h), lens, body, fit.Setting{Focal: l.Focal, Stop: l.Stop})
		if err != nil {
			t.Fatal(err)
		}
		limit, ok := c.Limits().Tilt.Usable.Get()
		if !ok {
			t.Fatalf("%s has no tilt limit", l.ID)
		}
		want := (1.5 - sight.PuckHeight.Metres()) / math.Tan(limit.Radians())
		if math.Abs(l.Blind.Ahead-want) > 2e-3 {
			t.Errorf("%s at %v: blind strip %v m, want %v from the tilt limit %v deg", l.ID, l.Focal, l.Blind.Ahead, want, limit.Degrees())
		}
	}
}

// TestMeanBlindStripAlongStraightBoards integrates the strip in another way:
// abreast of the hole by x the first seen place is w from flush boards where the
// limit meets the direction (x, z - h, w); the mean over x by Simpson's rule.
func TestMeanBlindStripAlongStraightBoards(t *testing.T) {
	a, k := bare(t, "international")
	a.Boards.Setback = unit.Known[unit.Length](0)
	a.Lenses = []string{"85-1.8", "400-2.8"}
	h := hole(&a, "h", 0, 1.5)
	r := mapped(t, a, k, h, 1)
	for _, l := range r.Lenses {
		lens, _ := k.Lens(l.ID)
		c, err := fit.FromKit(opening(t, a, h), lens, k.Bodies[0], fit.Setting{Focal: l.Focal, Stop: l.Stop})
		if err != nil {
			t.Fatal(err)
		}
		limit := c.Trace()
		width := func(x float64) float64 {
			low, high := 0.0, sight.StripMost.Metres()
			for high-low > 1e-6 {
				mid := (low + high) / 2
				if limit.ContainsDirection(geom.Vec3{X: x, Y: sight.PuckHeight.Metres() - 1.5, Z: mid}) {
					high = mid
				} else {
					low = mid
				}
			}
			return high
		}
		side := sight.StripSide.Metres()
		xs := make([]float64, 1001)
		ys := make([]float64, len(xs))
		for i := range xs {
			xs[i] = side * (2*float64(i)/float64(len(xs)-1) - 1)
			ys[i] = width(xs[i])
		}
		want := integrate.Simpsons(xs, ys) / (2 * side)
		if math.Abs(l.Blind.Mean-want) > 0.02*want {
			t.Errorf("%s: mean blind strip %v m, want %v", l.ID, l.Blind.Mean, want)
		}
	}
}

// TestReachBySampling estimates each lens's reach by another way: random points
// on the ice, the aim from the hole asked of the fit's T itself (not of its
// traced limit), the boards by walking the sight line in small steps.
func TestReachBySampling(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for name, station := range map[string]unit.Length{"straight": 16, "corner": 27} {
		a, k := bare(t, "north-american")
		a.Lenses = []string{"70-200", "400-2.8"}
		a.Boards.Setback = unit.Known[unit.Length](0.3)
		h := hole(&a, "h", station, 1.2)
		r := mapped(t, a, k, h, 0.1)
		for _, l := range r.Lenses {
			compareReach(t, name, a, k, h, l, rng)
		}
	}
}

// compareReach holds one lens's reach against draws on the ice.
func compareReach(t *testing.T, name string, a arena.Arena, k kit.Kit, h glass.Hole, l sight.LensReach, rng *rand.Rand) {
	const draws = 4000
	lens, _ := k.Lens(l.ID)
	c, err := fit.FromKit(opening(t, a, h), lens, k.Bodies[0], fit.Setting{Focal: l.Focal, Stop: l.Stop})
	if err != nil {
		t.Fatal(err)
	}
	for layer, z := range []float64{sight.PuckHeight.Metres(), sight.FaceHeight.Metres()} {
		hits := 0
		for range draws {
			if seenBySampling(a, h, c, drawOnIce(rng, a.Rink), z) {
				hits++
			}
		}
		got, want := l.Share[layer], float64(hits)/draws
		if sigma := math.Sqrt(want*(1-want)/draws) + 1e-3; math.Abs(got-want) > 4*sigma {
			t.Errorf("%s, %s at %v, layer %d: reach %v, sampling %v +- %v", name, l.ID, l.Focal, layer, got, want, sigma)
		}
	}
}

func drawOnIce(rng *rand.Rand, r rink.Rink) geom.Vec2 {
	d := r.Dimensions()
	for {
		p := geom.Vec2{X: (rng.Float64() - 0.5) * d.Length.Metres(), Y: (rng.Float64() - 0.5) * d.Width.Metres()}
		if r.Contains(p) {
			return p
		}
	}
}

// seenBySampling asks the pupil point by point: a lens drawn back along its
// axis, which runs through the middle of the hole's prism (best by symmetry),
// sees with the pupil's points whose lines along the aim pass both outlines.
func seenBySampling(a arena.Arena, h glass.Hole, c fit.Case, p geom.Vec2, z float64) bool {
	in, along := a.Rink.Normal(h.Station), a.Rink.Tangent(h.Station)
	eye := a.Rink.Point(h.Station).Sub(in.Scale(a.Boards.Setback.Or(0).Metres()))
	d := p.Sub(eye)
	u := geom.Vec3{X: d.Dot(along), Y: z - h.Height.Metres(), Z: d.Dot(in)}.Unit()
	if u.Z <= 0 || openShare(c, u) < 0.5 {
		return false
	}
	const steps = 5000
	for i := range steps {
		s := float64(i) / steps
		if a.Rink.Contains(eye.Add(d.Scale(s))) {
			return h.Height.Metres()+s*(z-h.Height.Metres()) >= a.Boards.Height.Metres()
		}
	}
	return false
}

// openShare is T by a sunflower of points on the pupil.
func openShare(c fit.Case, u geom.Vec3) float64 {
	const points = 600
	golden := math.Pi * (3 - math.Sqrt(5))
	right := geom.Vec3{X: u.Z, Z: -u.X}.Unit()
	up := geom.Vec3{X: u.Y * right.Z, Y: u.Z*right.X - u.X*right.Z, Z: -u.Y * right.X}
	open := 0
	for i := range points {
		r, turn := c.Pupil/2*math.Sqrt((float64(i)+0.5)/points), golden*float64(i)
		at := right.Scale(r * math.Cos(turn)).Add(up.Scale(r * math.Sin(turn))).Add(geom.Vec3{Z: -c.Thick / 2})
		if within(c, at, u, 0) && within(c, at, u, -c.Thick) {
			open++
		}
	}
	return float64(open) / points
}

// within reports whether a line passes the hole's outline at a depth.
func within(c fit.Case, at, u geom.Vec3, depth float64) bool {
	q := at.Add(u.Scale((depth - at.Z) / u.Z))
	x, y := math.Abs(q.X)-(c.Width/2-c.Corner), math.Abs(q.Y)-(c.Height/2-c.Corner)
	if x > 0 && y > 0 {
		return math.Hypot(x, y) <= c.Corner
	}
	return x <= c.Corner && y <= c.Corner
}
