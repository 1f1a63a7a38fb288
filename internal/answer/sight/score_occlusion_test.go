package sight

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/play"
)

// An independent look at the same scene: rays from the eye to random points of
// the subject's head and trunk, cut by solid cylinders, posts, crossbar and
// layers of net, one ray at a time. Nothing of the kernel is used but the
// stated sizes of bodies.

// hitsCylinder reports whether the segment from a to b meets an upright
// cylinder about (x, y) of radius r, from the ice to top.
func hitsCylinder(a, b geom.Vec3, x, y, r, top float64) bool {
	dx, dy := b.X-a.X, b.Y-a.Y
	ox, oy := a.X-x, a.Y-y
	qa, qb, qc := dx*dx+dy*dy, ox*dx+oy*dy, ox*ox+oy*oy-r*r
	root := qb*qb - qa*qc
	if root <= 0 {
		return false
	}
	t0, t1 := (-qb-math.Sqrt(root))/qa, (-qb+math.Sqrt(root))/qa
	t0, t1 = math.Max(t0, 0), math.Min(t1, 1)
	if t0 >= t1 {
		return false
	}
	// Some part of the chord lies below the top when its lower end does.
	return math.Min(a.Z+t0*(b.Z-a.Z), a.Z+t1*(b.Z-a.Z)) < top
}

// nearBar reports whether the segment passes the crossbar within its radius.
func nearBar(a, b geom.Vec3, x, half, z float64) bool {
	t := (x - a.X) / (b.X - a.X)
	if t <= 0 || t >= 1 {
		return false
	}
	y := a.Y + t*(b.Y-a.Y)
	if math.Abs(y) > half {
		return false
	}
	// Distance to the bar's axis in the plane square to it.
	dx, dz := b.X-a.X, b.Z-a.Z
	off := math.Abs((a.Z+t*dz)-z) * math.Abs(dx) / math.Hypot(dx, dz)
	return off < barRadius
}

// netLayers counts the layers of net that the segment crosses: the back, the
// two sides and the top of the box behind the goal line.
func netLayers(a, b geom.Vec3, side float64, l play.Layout) int {
	n := 0
	at := func(t float64) geom.Vec3 { return a.Add(b.Sub(a).Scale(t)) }
	cross := func(t float64, on func(p geom.Vec3) bool) {
		if t > 0 && t < 1 && on(at(t)) {
			n++
		}
	}
	depth := func(p geom.Vec3) float64 { return side*p.X - l.GoalX }
	cross((side*(l.GoalX+l.GoalDepth)-a.X)/(b.X-a.X), func(p geom.Vec3) bool {
		return math.Abs(p.Y) < l.GoalHalf && p.Z < l.GoalHeight
	})
	for _, y := range []float64{-l.GoalHalf, l.GoalHalf} {
		cross((y-a.Y)/(b.Y-a.Y), func(p geom.Vec3) bool {
			return depth(p) > 0 && depth(p) < l.GoalDepth && p.Z < l.GoalHeight
		})
	}
	cross((l.GoalHeight-a.Z)/(b.Z-a.Z), func(p geom.Vec3) bool {
		return depth(p) > 0 && depth(p) < l.GoalDepth && math.Abs(p.Y) < l.GoalHalf
	})
	return n
}

// sampledOpen is the share of the subject seen, by rays.
func sampledOpen(e Eye, m play.Moment, l play.Layout, top, pass float64, walls walls, rng *rand.Rand, rays int) float64 {
	s := m.People[m.Subject]
	d := math.Hypot(s.X-e.At.X, s.Y-e.At.Y)
	ux, uy := (s.X-e.At.X)/d, (s.Y-e.At.Y)/d
	eye := geom.Vec3{X: e.At.X, Y: e.At.Y, Z: e.Z}
	part := func(half, low, high float64) float64 {
		var sum float64
		for range rays {
			u, v := half*(2*rng.Float64()-1), low+(high-low)*rng.Float64()
			to := geom.Vec3{X: s.X - u*uy, Y: s.Y + u*ux, Z: v}
			sum += rayPasses(eye, to, m, l, top, pass, walls)
		}
		return sum / float64(rays)
	}
	neck := s.Height - headHigh
	return (part(headHalf, neck, s.Height) + part(trunkHalf, trunkLow*s.Height, neck)) / 2
}

func rayPasses(eye, to geom.Vec3, m play.Moment, l play.Layout, top, pass float64, walls walls) float64 {
	for i, p := range m.People {
		// Those before the subject's plane, as the model has it.
		if i == m.Subject || (p.X-eye.X)*(to.X-eye.X)+(p.Y-eye.Y)*(to.Y-eye.Y) >= (to.X-eye.X)*(to.X-eye.X)+(to.Y-eye.Y)*(to.Y-eye.Y) {
			continue
		}
		if hitsCylinder(eye, to, p.X, p.Y, play.Radius(i), shoulder*p.Height) || hitsCylinder(eye, to, p.X, p.Y, headRadius, p.Height) {
			return 0
		}
	}
	through := 1.0
	for _, side := range []float64{1, -1} {
		for _, y := range []float64{l.GoalHalf, -l.GoalHalf} {
			if hitsCylinder(eye, to, side*l.GoalX, y, barRadius, l.GoalHeight) {
				return 0
			}
		}
		if nearBar(eye, to, side*l.GoalX, l.GoalHalf, l.GoalHeight) {
			return 0
		}
		through *= math.Pow(pass, float64(netLayers(eye, to, side, l)))
	}
	// The boards: where the ray enters the ice it must pass above their top.
	lo, hi := 0.0, 1.0
	for range 60 {
		mid := (lo + hi) / 2
		p := eye.Add(to.Sub(eye).Scale(mid))
		if l.Clearance(p.X, p.Y) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	if eye.Z+hi*(to.Z-eye.Z) < top-1e-9 {
		return 0
	}
	return through
}

func TestOcclusionMatchesRays(t *testing.T) {
	a, k, holes := ring(t, 24)
	set := momentsOf(t, a, 5, 4_000)
	s := scorer(t, a, k)
	b := newBlock(s, set)
	rng := rand.New(rand.NewPCG(1, 2))
	const rays = 200
	var sum, worst, hidden float64
	n := 0
	for m := 0; m < set.Len(); m += 16 {
		b.load(m, m+1)
		for h := m % 3; h < len(holes); h += 3 {
			o, err := a.OpeningOf(holes[h])
			if err != nil {
				t.Fatal(err)
			}
			v := view{eye: EyeOf(a, o)}
			sub := b.subject[0]
			d := math.Hypot(sub.x-v.eye.At.X, sub.y-v.eye.At.Y)
			if d < 1 {
				continue
			}
			got := b.open(&v, 0, (sub.x-v.eye.At.X)/d, (sub.y-v.eye.At.Y)/d, d)
			want := sampledOpen(v.eye, set.At(m), set.Layout, a.Boards.Height.Metres(), s.judge.NetPass, wallsOf(a.Rink), rng, rays)
			diff := math.Abs(got - want)
			sum, worst, n = sum+diff, math.Max(worst, diff), n+1
			if want < 0.99 {
				hidden++
			}
		}
	}
	// The rays themselves err by up to 0.025 (one deviation of a share at 200
	// rays, two parts of equal weight); the model's flat tops, its net at two heights and its
	// product rule for the crossbar add the rest.
	if mean := sum / float64(n); mean > 0.01 {
		t.Errorf("mean difference %.4f over %d views", mean, n)
	}
	if worst > 0.25 {
		t.Errorf("largest difference %.3f", worst)
	}
	if n < 1_500 || hidden < 500 {
		t.Errorf("%d views, %d of them partly hidden: too few", n, int(hidden))
	}
}
