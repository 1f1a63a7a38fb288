package fit

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// TestBestPoseAgainstSearch pits the pose search against a blind one, random
// and then step by step, over poses that the blind check finds clear.
func TestBestPoseAgainstSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	told := 0
	for i := range 120 {
		c := randomCase(r)
		pan, tilt := 1.35*r.Float64(), 0.0
		if i%2 == 0 {
			tilt = 1.2 * r.Float64()
		}
		switch i % 5 {
		case 3:
			c.Pivot = Centre
		case 4:
			c.Back = unit.Known(0.05 * r.Float64())
		}
		v := c.quadrant(pan, tilt)
		ours := min(v.Centre, v.WorstCorner())
		if zf := v.Pose.Foremost(c.Nose).Z; zf > 1e-12 {
			t.Errorf("%+v at %g, %g: the pose passes the rink face by %g m", c, pan, tilt, zf)
		} else if d := bruteClears(c, v.Pose, 720); zf > 1e-12-c.Thick && d > 1e-8 {
			t.Errorf("%+v at %g, %g: the pose cuts %g m into the pane", c, pan, tilt, d)
		}
		theirs, at := newBlind(c, pan, tilt).search(r)
		if ours > 0.01 && ours < 0.99 {
			told++
		}
		if theirs > ours+2*tie {
			t.Errorf("%+v at %g, %g: T %.7f at %+v, but %.7f at %+v", c, pan, tilt, ours, v.Pose, theirs, at)
		}
	}
	if told < 30 {
		t.Errorf("only %d of the cases told anything", told)
	}
}

// TestHardPoses are cases in which an earlier search stopped short; the values
// are those that a blind search reached.
func TestHardPoses(t *testing.T) {
	for _, h := range []struct {
		c                Case
		pan, tilt, least float64
	}{
		{Case{Width: 0.19672095, Height: 0.17914427, Corner: 0.05408116, Thick: 0.02664671, Nose: 0.12377237, Pupil: 0.05651186, PupilDepth: 0.00306757, TanX: 0.65215099, TanY: 0.43476733}, 0.61709605, 0.41426013, 0.09386},
		{Case{Width: 0.19654216, Height: 0.09823654, Corner: 0.00482087, Thick: 0.00520842, Nose: 0.10717074, Pupil: 0.09830462, PupilDepth: 0.01157663, TanX: 0.3523096, TanY: 0.5284644}, 0.04442903, 0.06524872, 0.93451},
		{Case{Width: 0.17624898, Height: 0.17593884, Corner: 0.04873219, Thick: 0.02315638, Nose: 0.05393429, Pupil: 0.00597314, TanX: 0.30455981, TanY: 0.20303988}, 0.93946965, 0.57505962, 0.999998},
		{Case{Width: 0.08718749, Height: 0.174215, Thick: 0.02571816, Nose: 0.09276391, Pupil: 0.05742135, PupilDepth: 0.04305321, TanX: 0.38143528, TanY: 0.25429019}, 0.19980857, 0.49851579, 0.47393},
		{Case{Width: 0.15882997, Height: 0.13335151, Corner: 0.02081718, Thick: 0.01485573, Nose: 0.12717396, Pupil: 0.05035968, PupilDepth: 0.05619371, TanX: 0.39953085, TanY: 0.5992963}, 0.31943586, 0.18619386, 0.45235},
		{Case{Width: 0.08708903, Height: 0.19207216, Corner: 0.01166472, Thick: 0.01105542, Nose: 0.08892388, Pupil: 0.04576112, PupilDepth: 0.05009972, TanX: 0.5670901, TanY: 0.37806009}, 0.01915449, 0.30675169, 0.52007},
		{Case{Width: 0.14429831, Height: 0.10797445, Corner: 0.01365427, Thick: 0.0113633, Nose: 0.05815814, Pupil: 0.0078685, PupilDepth: 0.02372559, TanX: 0.36481738, TanY: 0.24321159}, 0.34122799, 0.87393453, 0.03972},
	} {
		v := h.c.quadrant(h.pan, h.tilt)
		if got := min(v.Centre, v.WorstCorner()); got < h.least {
			t.Errorf("%+v at %g, %g: T %.6f, a blind search reached %.6f", h.c, h.pan, h.tilt, got, h.least)
		}
	}
}

// blind searches poses without any of the package's structure but T itself,
// which other tests check by points.
type blind struct {
	c         Case
	pan, tilt float64
	axis      geom.Vec3
	sin       float64 // how far the foremost point lies before the nose's centre
	us        []geom.Vec3
}

func newBlind(c Case, pan, tilt float64) *blind {
	sp, cp := math.Sincos(pan)
	st, ct := math.Sincos(tilt)
	b := &blind{c: c, pan: pan, tilt: tilt, axis: geom.Vec3{X: sp * ct, Y: st, Z: cp * ct}}
	b.sin = c.Nose / 2 * math.Hypot(b.axis.X, b.axis.Y)
	right, up := geom.Vec3{X: cp, Z: -sp}, geom.Vec3{X: -sp * st, Y: ct, Z: -cp * st}
	b.us = []geom.Vec3{b.axis}
	for _, x := range []float64{-c.TanX, c.TanX} {
		for _, y := range []float64{-c.TanY, c.TanY} {
			b.us = append(b.us, b.axis.Add(right.Scale(x)).Add(up.Scale(y)))
		}
	}
	return b
}

// blindRim is how many points of the rim a blind check looks at.
const blindRim = 240

// pose returns the pose for a shift and a depth of the foremost point, held to
// the camera's rules.
func (b *blind) pose(x, y, zf float64) Pose {
	if back, ok := b.c.Back.Get(); ok {
		zf = -b.c.Thick - back
	}
	p := Pose{Nose: geom.Vec3{X: x, Y: y, Z: zf - b.sin}, Pan: b.pan, Tilt: b.tilt}
	if b.c.Pivot == Centre {
		p.Nose = b.axis.Scale(p.Nose.Z / b.axis.Z)
	}
	return p
}

// worth returns the worst T, or -1 for a pose that is not allowed.
func (b *blind) worth(p Pose) float64 {
	zf := p.Nose.Z + b.sin
	if zf > 0 {
		return -1
	}
	// What the ellipse on the rear face bulges between two points.
	margin := b.c.Nose / 2 / b.axis.Z * (1 - math.Cos(math.Pi/blindRim))
	if zf > -b.c.Thick && bruteClears(b.c, p, blindRim) > -margin {
		return -1
	}
	w := 1.0
	for _, u := range b.us {
		w = min(w, b.c.Transmission(p, u))
	}
	return w
}

func (b *blind) search(r *rand.Rand) (float64, Pose) {
	best, at := -1.0, [3]float64{}
	try := func(q [3]float64) {
		q[2] = min(0, q[2])
		if w := b.worth(b.pose(q[0], q[1], q[2])); w > best {
			best, at = w, q
		}
	}
	back := b.sin + b.c.PupilDepth
	reach := 1.5
	if b.c.Pivot == Centre {
		reach = 8 // a fixed camera may do better from farther back
	}
	for range 4000 {
		zf := -b.c.Thick * reach * r.Float64()
		x := -b.axis.X/b.axis.Z*(back-zf)*(0.5+r.Float64()) + 0.08*(r.Float64()-0.5)
		y := -b.axis.Y/b.axis.Z*(back-zf)*(0.5+r.Float64()) + 0.08*(r.Float64()-0.5)
		try([3]float64{x, y, zf})
	}
	for step := 0.01; step > 1e-7; step *= 0.7 {
		for range 30 {
			q := at
			for k := range q {
				q[k] += step * r.NormFloat64()
			}
			if r.IntN(3) == 0 {
				q[2] = at[2]
			}
			try(q)
		}
	}
	return best, b.pose(at[0], at[1], at[2])
}
