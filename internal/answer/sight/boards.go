package sight

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/rink"
)

// walls is the boards' rink face as a rounded rectangle about the origin, in
// plain metres: half length and half width, and the corners' radius.
type walls struct{ x, y, r float64 }

func wallsOf(r rink.Rink) walls {
	d := r.Dimensions()
	return walls{d.Length.Metres() / 2, d.Width.Metres() / 2, d.CornerRadius.Metres()}
}

// half returns the half length of the ice at a given y, negative off the ice.
func (w walls) half(y float64) float64 {
	over := math.Abs(y) - (w.y - w.r)
	switch {
	case over <= 0:
		return w.x
	case over > w.r:
		return -1
	}
	return w.x - w.r + math.Sqrt(w.r*w.r-over*over)
}

// entry returns how far along the way from a point outside to one inside the
// boards' rink face is crossed, as a share of the way from 0 to 1; 0 when the
// start is inside already.
//
// The line enters the bounding box first; where it enters in a corner's square,
// outside the arc, it must cross that arc (the square touches the ice nowhere
// else), which is the smaller root of |o + t d - c|^2 = r^2.
func (w walls) entry(from, to geom.Vec2) float64 {
	d := to.Sub(from)
	t := math.Max(slabEntry(from.X, d.X, w.x), slabEntry(from.Y, d.Y, w.y))
	at := from.Add(d.Scale(t))
	c := geom.Vec2{X: math.Copysign(w.x-w.r, at.X), Y: math.Copysign(w.y-w.r, at.Y)}
	o := at.Sub(c)
	if math.Abs(at.X) <= w.x-w.r || math.Abs(at.Y) <= w.y-w.r || o.Dot(o) <= w.r*w.r {
		return t
	}
	a, b, k := d.Dot(d), o.Dot(d), o.Dot(o)-w.r*w.r
	root := b*b - a*k
	if root < 0 || a == 0 {
		return 1 // the way's end is not on the ice
	}
	return math.Min(1, t+(-b-math.Sqrt(root))/a)
}

// slabEntry returns the share of the way at which |x0 + t d| falls to half; 0
// when it starts within.
func slabEntry(x0, d, half float64) float64 {
	out := math.Abs(x0) - half
	if out <= 0 || d == 0 {
		return 0
	}
	return math.Min(1, out/math.Abs(d))
}

// ledge is what the top of the boards hides from an eye.
type ledge struct {
	walls walls
	top   float64 // height of the boards, metres
}

// cuts reports whether the boards' top edge cuts the sight line from the eye to
// a point at height z that crosses the boards' rink face at a share of its way
// (see [walls.entry]): there it passes at height e + share (z - e).
func (l ledge) cuts(e Eye, share, z float64) bool {
	return e.Z+share*(z-e.Z) < l.top-1e-12
}

// hides is cuts for a point of the ice.
func (l ledge) hides(e Eye, p geom.Vec2, z float64) bool {
	return l.cuts(e, l.walls.entry(e.At, p), z)
}
