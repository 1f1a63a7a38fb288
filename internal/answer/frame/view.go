package frame

import (
	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/geom"
)

// A corner that no pose lights makes all poses equal to fit's rule, and its
// pose says nothing of what a photographer would do. The picture then takes the
// pose for the largest part of the frame, about its centre, whose corners can
// keep halfLit of their light, to a share of 1/2^narrowings.
const (
	darkShare  = 1e-6 // T that counts as none, as in fit
	halfLit    = 0.5
	narrowings = 4
)

// bestView returns the lens in the pose that the picture is drawn from, and the
// share of the frame that the pose is for.
func bestView(c fit.Case, at Aim) (fit.View, float64) {
	whole := c.At(at.Pan, at.Tilt)
	if min(whole.Centre, whole.WorstCorner()) > darkShare {
		return whole, 1
	}
	pose, served, step := whole.Pose, 0.0, 0.5
	for share := step; step > 1.0/(1<<(narrowings+1)); {
		part := c
		part.TanX, part.TanY = c.TanX*share, c.TanY*share
		v := part.At(at.Pan, at.Tilt)
		step /= 2
		lit := min(v.Centre, v.WorstCorner()) >= halfLit
		if lit || served == 0 {
			pose, served = v.Pose, share
		}
		if lit {
			share += step
		} else {
			share -= step
		}
	}
	v := fit.View{Pose: pose, Centre: c.Transmission(pose, toward(pose, 0, 0))}
	for i, s := range cornerSigns {
		v.Corners[i] = c.Transmission(pose, toward(pose, s[0]*c.TanX, s[1]*c.TanY))
	}
	return v, served
}

// cornerSigns are the frame's corners in the order of [fit.View].
var cornerSigns = [4][2]float64{{-1, -1}, {-1, 1}, {1, -1}, {1, 1}}

// toward returns the direction, in the hole frame, to a place of the frame given
// in tangents from the axis.
func toward(p fit.Pose, x, y float64) geom.Vec3 {
	r, u, f := Axes(p.Pan, p.Tilt)
	return f.Add(r.Scale(x)).Add(u.Scale(y))
}
