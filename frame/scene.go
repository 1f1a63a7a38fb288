package frame

import (
	"cmp"
	"image/color"
	"math"
	"slices"

	"example.org/rinkpane/geom"
	"example.org/rinkpane/play"
)

// A shape is one filled outline on the screen, pixels, y down.
type shape struct {
	outline []geom.Vec2
	paint   color.RGBA // straight alpha
}

// A layer is a group of shapes that share a distance and a motion.
type layer struct {
	name   string
	shapes []shape
	depth  float64   // along the axis, metres
	way    geom.Vec2 // pixels moved during the exposure
}

// stage collects a scene on one screen.
type stage struct {
	cam    Camera
	screen screen
}

func (st stage) add(to *[]shape, paint color.RGBA, poly ...geom.Vec3) {
	if out := st.screen.polygon(st.cam, poly...); len(out) > 2 {
		*to = append(*to, shape{out, paint})
	}
}

// figures returns the movable things, farthest first: goals, people, the puck.
func (st stage) figures(s *Shot) []layer {
	var out []layer
	for _, g := range s.Arena.Rink.Goals() {
		out = append(out, st.goal(g))
	}
	if s.Moment != nil {
		for i, p := range s.Moment.People {
			out = append(out, st.person(s, i, p))
		}
		k := s.Moment.Puck
		out = append(out, st.puck(geom.Vec3{X: k.X, Y: k.Y, Z: k.Z}))
	}
	out = slices.DeleteFunc(out, func(l layer) bool { return len(l.shapes) == 0 })
	slices.SortStableFunc(out, func(a, b layer) int { return cmp.Compare(b.depth, a.depth) })
	return out
}

// person draws one person, parts farthest first, the number last when the
// back is turned to the eye.
func (st stage) person(s *Shot, i int, p play.Person) layer {
	m := *s.Moment
	wear := wears(m, i)
	b := newBody(p)
	speed := s.Speed.MetresPerSecond()
	switch {
	case i == play.AttackerGoalie || i == play.DefenderGoalie:
		b.goalkeeper(wear)
		speed = 0
	default:
		b.skater(wear, i < play.Officials)
	}
	middle := geom.Vec3{X: p.X, Y: p.Y, Z: p.Height / 2}
	l := layer{name: "person", depth: st.cam.View(middle).Z, shapes: st.rods(b.rods)}
	if len(l.shapes) == 0 {
		return l
	}
	back := geom.Vec2{X: -b.fx, Y: -b.fy}
	if back.Dot(st.cam.Eye.XY().Sub(b.at).Unit()) > backShows {
		for _, pl := range b.number(shirt(m, i), wear.number) {
			st.add(&l.shapes, pl.paint, pl.corners[:]...)
		}
	}
	step := speed * float64(s.Shutter)
	l.way = st.way(middle, geom.Vec3{X: step * b.fx, Y: step * b.fy})
	return l
}

// backShows is the cosine of the angle between the back and the eye up to
// which the number is drawn.
const backShows = 0.4

// way returns how many pixels a point moves on the screen.
func (st stage) way(at, step geom.Vec3) geom.Vec2 {
	x0, y0, _, ok0 := st.cam.Project(at)
	x1, y1, _, ok1 := st.cam.Project(at.Add(step))
	if !ok0 || !ok1 {
		return geom.Vec2{}
	}
	return st.screen.place(x1, y1).Sub(st.screen.place(x0, y0))
}

// rods projects rods, farthest first; a touch of light on upper parts.
func (st stage) rods(rods []rod) []shape {
	slices.SortStableFunc(rods, func(a, b rod) int {
		return cmp.Compare(st.middle(b), st.middle(a))
	})
	var out []shape
	for _, r := range rods {
		rim := r
		rim.ra, rim.rb = r.ra*0.8, r.rb*0.8
		lift := geom.Vec3{Z: 0.12 * (r.ra + r.rb) / 2}
		rim.a, rim.b = r.a.Add(lift), r.b.Add(lift)
		if o := st.screen.rod(st.cam, r); o != nil {
			out = append(out, shape{o, scaled(r.paint, 0.86)})
		}
		if o := st.screen.rod(st.cam, rim); o != nil {
			out = append(out, shape{o, r.paint})
		}
	}
	return out
}

func (st stage) middle(r rod) float64 { return st.cam.View(r.a.Add(r.b).Scale(0.5)).Z }

func scaled(c color.RGBA, k float64) color.RGBA {
	return color.RGBA{uint8(k * float64(c.R)), uint8(k * float64(c.G)), uint8(k * float64(c.B)), c.A}
}

// Puck measures: 3 in by 1 in (rule books).
const (
	puckRadius = 0.0381
	puckHalf   = 0.0127
)

// puck draws the puck lying flat.
func (st stage) puck(at geom.Vec3) layer {
	l := layer{name: "puck", depth: st.cam.View(at).Z}
	lower, upper := at, at
	lower.Z, upper.Z = at.Z-puckHalf, at.Z+puckHalf
	var pts []geom.Vec2
	for _, c := range [2]geom.Vec3{lower, upper} {
		pts = append(pts, st.screen.polygon(st.cam, disc(c, puckRadius, 16)...)...)
	}
	if len(pts) > 2 {
		l.shapes = append(l.shapes, shape{hull(pts), puckPaint})
	}
	return l
}

// disc returns a level circle as a polygon.
func disc(at geom.Vec3, r float64, steps int) []geom.Vec3 {
	out := make([]geom.Vec3, steps)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(steps))
		out[i] = geom.Vec3{X: at.X + r*cos, Y: at.Y + r*sin, Z: at.Z}
	}
	return out
}
