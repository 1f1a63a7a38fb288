package frame

import (
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/geom"
)

// nearest is the least depth at which anything is drawn, in metres.
const nearest = 0.05

// margin is how far beyond the frame's edge outlines are kept, as a factor, so
// that blur finds what lies just outside.
const margin = 1.3

// A side of the view is a plane through the eye or across the axis: what lies
// at a point with right, up and forward of it above 0 is inside.
type viewSide struct{ right, up, forward, off float64 }

func (s viewSide) depth(v geom.Vec3) float64 {
	return s.right*v.X + s.up*v.Y + s.forward*v.Z + s.off
}

// sides returns the planes that bound what is drawn: in front of the eye and
// not far outside the frame.
func (c Camera) sides() [5]viewSide {
	wide, high := margin*c.TanX, margin*c.TanY
	return [5]viewSide{{forward: 1, off: -nearest}, {right: 1, forward: wide}, {right: -1, forward: wide}, {up: 1, forward: high}, {up: -1, forward: high}}
}

// misses reports whether a ball in the rink's frame lies wholly outside what is
// drawn.
func (c Camera) misses(centre geom.Vec3, radius float64) bool {
	v := c.View(centre)
	for _, s := range c.sides() {
		long := math.Sqrt(s.right*s.right + s.up*s.up + s.forward*s.forward)
		if s.depth(v) < -radius*long {
			return true
		}
	}
	return false
}

// clipView cuts a polygon of the camera's own frame to what is drawn
// (Sutherland and Hodgman, 1974). It may use the polygon's own room and spare's; what it
// returns has one of the two, and spare the other.
func clipView(c Camera, poly []geom.Vec3, spare *[]geom.Vec3) []geom.Vec3 {
	for _, s := range c.sides() {
		in := 0
		for _, p := range poly {
			if s.depth(p) >= 0 {
				in++
			}
		}
		if in == 0 {
			return poly[:0]
		}
		if in < len(poly) {
			cut := clipPlane((*spare)[:0], poly, s)
			poly, *spare = cut, poly
		}
	}
	return poly
}

func clipPlane(out, poly []geom.Vec3, s viewSide) []geom.Vec3 {
	p := poly[len(poly)-1]
	dp := s.depth(p)
	for _, q := range poly {
		dq := s.depth(q)
		if (dp >= 0) != (dq >= 0) {
			out = append(out, p.Add(q.Sub(p).Scale(dp/(dp-dq))))
		}
		if dq >= 0 {
			out = append(out, q)
		}
		p, dp = q, dq
	}
	return out
}

// screen is the picture's size in pixels.
type screen struct{ w, h float64 }

// place turns a place of the frame (-1..1, y up) into pixels (y down).
func (s screen) place(x, y float64) geom.Vec2 {
	return geom.Vec2{X: (x + 1) / 2 * s.w, Y: (1 - y) / 2 * s.h}
}

// A ball's outline is drawn with so many points that its polygon is right to a
// quarter of a pixel, within these bounds.
const (
	leastPoints = 6
	mostPoints  = 64
)

// steps returns how many points a ball's outline needs: a chord of a circle of
// radius r leaves it by r (1-cos(pi/n)), about r pi^2 / (2 n^2).
func (s screen) steps(c Camera, v geom.Vec3, radius float64) int {
	r := radius / v.Z / c.TanX * s.w / 2
	return int(min(mostPoints, max(leastPoints, math.Pi*math.Sqrt(2*r))))
}

// rod projects a rounded rod (two balls and what lies between them) onto the
// screen: the convex hull of both balls' silhouettes, exact but for the
// polygon. Nil when either ball reaches the eye's plane.
func (s screen) rod(c Camera, r rod) []geom.Vec2 {
	var pts []geom.Vec2
	balls := [2]ball{{r.a, r.ra}, {r.b, r.rb}}
	for i, b := range balls {
		if i == 1 && balls[0] == balls[1] {
			break
		}
		v := c.View(b.at)
		if v.Z-b.radius < nearest {
			return nil
		}
		n := s.steps(c, v, b.radius)
		pts = slices.Grow(pts, 2*n)
		around := newSilhouette(v, b.radius)
		for k := range n {
			q := around.at(k, n)
			pts = append(pts, s.place(q.X/q.Z/c.TanX, q.Y/q.Z/c.TanY))
		}
	}
	return hull(pts)
}

// A silhouette is the circle in which the cone from the eye touches a ball, in
// the camera's frame: its centre lies r^2/d before the ball's centre, its
// radius is r sqrt(1-(r/d)^2). e and f are its radii square to each other.
type silhouette struct{ centre, e, f geom.Vec3 }

func newSilhouette(v geom.Vec3, r float64) silhouette {
	d := v.Len()
	n := v.Scale(1 / d)
	e := geom.Vec3{X: n.Z, Z: -n.X}.Unit()
	if math.Abs(n.Y) > 0.9 {
		e = geom.Vec3{Y: n.Z, Z: -n.Y}.Unit()
	}
	f := geom.Vec3{X: n.Y*e.Z - n.Z*e.Y, Y: n.Z*e.X - n.X*e.Z, Z: n.X*e.Y - n.Y*e.X}
	rc := r * math.Sqrt(max(0, 1-r*r/(d*d)))
	return silhouette{v.Sub(n.Scale(r * r / d)), e.Scale(rc), f.Scale(rc)}
}

// at returns point k of n on the circle.
func (s silhouette) at(k, n int) geom.Vec3 {
	sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(n))
	return s.centre.Add(s.e.Scale(cos)).Add(s.f.Scale(sin))
}

// hull returns the convex hull of points (Andrew's monotone chain, 1979).
func hull(pts []geom.Vec2) []geom.Vec2 {
	slices.SortFunc(pts, func(a, b geom.Vec2) int {
		if a.X != b.X {
			return sign(a.X - b.X)
		}
		return sign(a.Y - b.Y)
	})
	out := make([]geom.Vec2, 0, len(pts)+1)
	half := func(p geom.Vec2, least int) {
		for len(out) >= least+2 && out[len(out)-1].Sub(out[len(out)-2]).Cross(p.Sub(out[len(out)-2])) <= 0 {
			out = out[:len(out)-1]
		}
		out = append(out, p)
	}
	for _, p := range pts {
		half(p, 0)
	}
	lower := len(out) - 1
	for i := len(pts) - 2; i >= 0; i-- {
		half(pts[i], lower)
	}
	return out[:len(out)-1]
}

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}
