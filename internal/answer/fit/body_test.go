package fit

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
)

// bruteBodyLimit finds the first pan in steps of 1 deg, then halved, at which
// no shift along X keeps rim and cylinder points inside the hole.
func bruteBodyLimit(c Case, points int) float64 {
	clears := func(q float64) bool {
		depth := func(x float64) float64 {
			p := Pose{Nose: geom.Vec3{X: x, Z: -c.Nose / 2 * math.Sin(q)}, Pan: q}
			return bruteClears(c, p, points)
		}
		lo, hi := -c.Width, c.Width
		for range 40 { // the deepest cut is convex in the shift
			a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
			if depth(a) < depth(b) {
				hi = b
			} else {
				lo = a
			}
		}
		return depth((lo+hi)/2) <= 0
	}
	const step = math.Pi / 180
	q := 0.0
	for q < 89*math.Pi/180 && clears(q+step) {
		q += step
	}
	lo, hi := q, q+step
	for range 16 {
		if mid := (lo + hi) / 2; clears(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// TestBodyLimitInCorners: a nose nearly as tall as the hole meets its rounded
// corners before its side walls.
func TestBodyLimitInCorners(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	sooner := 0
	for range 10 {
		c := randomCase(r)
		c.Height = c.Width * (0.75 + 0.2*r.Float64())
		c.Nose = c.Height * (0.85 + 0.14*r.Float64())
		c.Pupil = c.Nose / 2
		c.Corner = c.Height / 2 * (0.3 + 0.7*r.Float64())
		got, ok := c.Limits().Pan.Body.Get()
		want := bruteBodyLimit(c, 240)
		if !ok || math.Abs(got.Radians()-want) > 3e-4 {
			t.Errorf("%+v: body limit %.4f deg, by points %.4f", c, got.Degrees(), want*180/math.Pi)
		}
		square := c
		square.Corner = 0
		if s, _ := square.Limits().Pan.Body.Get(); got < s-1e-3 {
			sooner++
		}
	}
	if sooner < 5 {
		t.Errorf("corners told in only %d cases", sooner)
	}
}

// TestReachIsTheShadow: the closed reach is that of rim and cylinder points.
func TestReachIsTheShadow(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 300 {
		c := randomCase(r)
		pan, tilt := 1.4*(2*r.Float64()-1), 1.3*(2*r.Float64()-1)
		s := stance{c: c, aim: aimAt(pan, tilt), rect: c.rect()}
		b := s.body(-c.Thick * r.Float64())
		q := 2 * math.Pi * r.Float64()
		n := geom.Vec2{X: math.Cos(q), Y: math.Sin(q)}
		want := math.Inf(-1)
		const points = 4000
		for i := range points {
			v := 2 * math.Pi * float64(i) / points
			rim := s.aim.right.Scale(math.Cos(v)).Add(s.aim.up.Scale(math.Sin(v))).Scale(c.Nose / 2)
			if z := rim.Z + b.noseZ; z > -c.Thick {
				rear := rim.Sub(s.aim.axis.Scale((z + c.Thick) / s.aim.cos))
				want = max(want, n.Dot(rim.XY()), n.Dot(rear.XY()))
			}
		}
		got := b.reach(n)
		// The points miss the tip of a slim ellipse, and end short of the rear face.
		if got < want-1e-12 || got > want+2e-3*c.Nose/s.aim.cos {
			t.Errorf("%+v at %g, %g toward %v: reach %.9f, by points %.9f", c, pan, tilt, n, got, want)
		}
	}
}
