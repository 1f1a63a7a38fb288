package fit

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
)

// brutePass is T(u) by its definition, point by point over the pupil: n rings
// of equal area, as many points on each. It shares no code with the package.
func brutePass(c Case, p Pose, u geom.Vec3, n int) float64 {
	sp, cp := math.Sincos(p.Pan)
	st, ct := math.Sincos(p.Tilt)
	inside := func(x, y float64) bool {
		x, y = math.Abs(x), math.Abs(y)
		if x > c.Width/2 || y > c.Height/2 {
			return false
		}
		dx, dy := x-(c.Width/2-c.Corner), y-(c.Height/2-c.Corner)
		return dx <= 0 || dy <= 0 || dx*dx+dy*dy <= c.Corner*c.Corner
	}
	hits := 0
	for i := range n {
		r := c.Pupil / 2 * math.Sqrt((float64(i)+0.5)/float64(n))
		for j := range n {
			q := 2 * math.Pi * (float64(j) + 0.5*float64(i%2)) / float64(n)
			a, b := r*math.Cos(q), r*math.Sin(q) // along the camera's right and up
			x := p.Nose.X - c.PupilDepth*sp*ct + a*cp - b*sp*st
			y := p.Nose.Y - c.PupilDepth*st + b*ct
			z := p.Nose.Z - c.PupilDepth*cp*ct - a*sp - b*cp*st
			ok := u.Z > 0
			for _, face := range []float64{0, -c.Thick} {
				if k := (face - z) / u.Z; z < face && ok {
					ok = inside(x+k*u.X, y+k*u.Y)
				}
			}
			if ok {
				hits++
			}
		}
	}
	return float64(hits) / float64(n*n)
}

// bruteClears checks rim and cylinder points of the lens against the pane: it
// returns the largest depth, in metres, at which one of them cuts it.
func bruteClears(c Case, p Pose, n int) float64 {
	sp, cp := math.Sincos(p.Pan)
	st, ct := math.Sincos(p.Tilt)
	worst := math.Inf(-1)
	cut := func(x, y float64) {
		x, y = math.Abs(x), math.Abs(y)
		dx, dy := x-(c.Width/2-c.Corner), y-(c.Height/2-c.Corner)
		d := max(dx, dy) - c.Corner
		if dx > 0 && dy > 0 {
			d = math.Hypot(dx, dy) - c.Corner
		}
		worst = max(worst, d)
	}
	rim := func(q float64) {
		a, b := c.Nose/2*math.Cos(q), c.Nose/2*math.Sin(q)
		x := p.Nose.X + a*cp - b*sp*st
		y := p.Nose.Y + b*ct
		z := p.Nose.Z - a*sp - b*cp*st
		if z <= -c.Thick-1e-12 {
			return
		}
		cut(x, y)
		// From the rim straight back along the axis to the rear face.
		k := (z + c.Thick) / (cp * ct)
		cut(x-k*sp*ct, y-k*st)
	}
	for i := range n {
		rim(2 * math.Pi * float64(i) / float64(n))
	}
	// Where the rim crosses the rear face: z = nose z - R (sp cos q + cp st sin q).
	sin := math.Hypot(sp, cp*st)
	if k := (p.Nose.Z + c.Thick) / (c.Nose / 2 * sin); sin > 0 && math.Abs(k) <= 1 {
		mid := math.Atan2(cp*st, sp)
		rim(mid + math.Acos(k))
		rim(mid - math.Acos(k))
	}
	return worst
}

func randomCase(r *rand.Rand) Case {
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	c := Case{Width: between(0.08, 0.2), Height: between(0.08, 0.2), Thick: between(0.004, 0.03)}
	if r.IntN(6) > 0 {
		c.Corner = min(c.Width, c.Height) / 2 * r.Float64() * r.Float64()
	}
	c.Nose = between(0.03, 0.14)
	c.Pupil = c.Nose * between(0.1, 1)
	c.PupilDepth = between(0, 0.12)
	if r.IntN(4) == 0 {
		c.PupilDepth = 0
	}
	c.TanX = between(0.03, 0.8)
	c.TanY = c.TanX / 1.5
	if r.IntN(3) == 0 {
		c.TanX, c.TanY = c.TanY, c.TanX
	}
	return c
}

func TestTransmissionAgainstPoints(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	partial := 0
	for range 1500 {
		c := randomCase(r)
		p := Pose{Pan: 1.3 * (2*r.Float64() - 1), Tilt: 1.2 * (2*r.Float64() - 1)}
		a := aimAt(p.Pan, p.Tilt)
		p.Nose = geom.Vec3{X: 0.1 * (r.Float64() - 0.5), Y: 0.1 * (r.Float64() - 0.5), Z: -c.Nose/2*a.sin - 0.04*r.Float64()}
		u := a.toward((2*r.Float64()-1)*c.TanX, (2*r.Float64()-1)*c.TanY)
		got := c.Transmission(p, u)
		want := brutePass(c, p, u, 160)
		if got > 0.001 && got < 0.999 {
			partial++
		}
		if math.Abs(got-want) > 4e-3 {
			t.Errorf("%+v %+v toward %v: T %.6f, by points %.6f", c, p, u, got, want)
		}
	}
	if partial < 60 {
		t.Errorf("only %d of the cases were partly shaded", partial)
	}
}
