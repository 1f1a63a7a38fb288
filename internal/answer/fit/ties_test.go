package fit

import (
	"math/rand/v2"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
)

// TestTies looks about the best pose for an equal one nearer the rink face, or
// as near and nearer the hole's centre.
func TestTies(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	nearer, wide := 0, 0
	for i := range 60 {
		c := randomCase(r)
		pan, tilt := 1.2*r.Float64(), 0.0
		if i%2 == 0 {
			tilt = 0.8 * r.Float64()
		}
		v := c.quadrant(pan, tilt)
		best := min(v.Centre, v.WorstCorner())
		b := newBlind(c, pan, tilt)
		at := v.Pose.Foremost(c.Nose)
		for range 3000 {
			scale := []float64{1e-6, 1e-5, 1e-4, 1e-3, 1e-2}[r.IntN(5)]
			d := geom.Vec3{X: scale * r.NormFloat64(), Y: scale * r.NormFloat64()}
			// Poses that are only as deep or nearer the face, and if as deep
			// nearer the centre.
			if r.IntN(2) == 0 {
				d.Z = min(-at.Z, scale*r.Float64())
			}
			to := at.Add(d)
			if d.Z < 1e-7 && to.XY().Len() > at.XY().Len()-1e-6 {
				continue
			}
			nearer++
			p := v.Pose
			p.Nose = p.Nose.Add(d)
			// Equal to the true best, which may be a tie above the pose's own T.
			if w := b.worth(p); w >= best+1e-7 {
				t.Fatalf("%+v at %g, %g: pose %+v has T %.9f, but %+v nearer has %.9f", c, pan, tilt, v.Pose, best, p, w)
			}
			if w := b.worth(p); best >= 1-tie && w >= 1-tie/2 {
				t.Fatalf("%+v at %g, %g: pose %+v loses nothing, nor does the nearer %+v", c, pan, tilt, v.Pose, p)
			}
		}
		if best >= 1-2*tie {
			wide++
		}
	}
	if nearer < 10000 || wide < 5 {
		t.Errorf("only %d nearer poses looked at, %d cases without loss", nearer, wide)
	}
}
