package frame

import (
	"cmp"
	"image"
	"image/color"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/ink"
	"example.org/rinkpane/internal/survey/play"
)

// A shape is one filled outline on the screen, pixels, y down.
type shape struct {
	outline []geom.Vec2
	box     image.Rectangle // the pixels that it may touch
	paint   color.NRGBA     // straight alpha
}

func newShape(outline []geom.Vec2, paint color.NRGBA) shape {
	lo, hi := outline[0], outline[0]
	for _, p := range outline[1:] {
		lo.X, lo.Y = min(lo.X, p.X), min(lo.Y, p.Y)
		hi.X, hi.Y = max(hi.X, p.X), max(hi.Y, p.Y)
	}
	box := image.Rect(int(math.Floor(lo.X)), int(math.Floor(lo.Y)), int(math.Ceil(hi.X)), int(math.Ceil(hi.Y)))
	return shape{outline, box, paint}
}

// fillShapes paints shapes in order on a picture.
func fillShapes(im *image.RGBA, shapes []shape) {
	if len(shapes) == 0 {
		return
	}
	pen := ink.New(im)
	for _, s := range shapes {
		if !s.box.Overlaps(im.Rect) {
			continue
		}
		last := s.outline[len(s.outline)-1]
		for _, q := range s.outline {
			pen.Edge(last, q)
			last = q
		}
		pen.Fill(s.paint)
	}
}

// A layer is a group of shapes that share a distance and a motion.
type layer struct {
	name   string
	shapes []shape
	depth  float64   // along the axis, metres
	way    geom.Vec2 // pixels moved during the exposure
}

// A stage collects a scene on one screen, for one goroutine.
type stage struct {
	cam    Camera
	screen screen
	room   *room
}

// A room is what outlines are built and cut in.
type room struct{ view, cut, poly []geom.Vec3 }

func newStage(c Camera, w, h int) stage {
	return stage{c, screen{float64(w), float64(h)}, new(room)}
}

func (st stage) add(to *[]shape, paint color.NRGBA, poly ...geom.Vec3) {
	if out := st.polygon(poly...); len(out) > 2 {
		*to = append(*to, newShape(out, paint))
	}
}

// polygon projects a polygon of the rink's frame onto the screen: pixels, y
// down; nil when nothing of it is drawn.
func (st stage) polygon(poly ...geom.Vec3) []geom.Vec2 {
	view := st.room.view[:0]
	for _, p := range poly {
		view = append(view, st.cam.View(p))
	}
	view = clipView(st.cam, view, &st.room.cut)
	st.room.view = view
	if len(view) < 3 {
		return nil
	}
	out := make([]geom.Vec2, len(view))
	for i, v := range view {
		out[i] = st.screen.place(v.X/v.Z/st.cam.TanX, v.Y/v.Z/st.cam.TanY)
	}
	return out
}

// figures returns the movable things, farthest first: goals, people, the puck.
func (st stage) figures(s *Shot) []layer {
	var out []layer
	for _, g := range s.Arena.Goals() {
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

// personReach bounds a person with a stick: a ball around the middle, metres.
const personReach = 2.0

// person draws one person, parts farthest first.
func (st stage) person(s *Shot, i int, p play.Person) layer {
	middle := geom.Vec3{X: p.X, Y: p.Y, Z: p.Height / 2}
	l := layer{name: "person", depth: st.cam.View(middle).Z}
	if st.cam.misses(middle, personReach) {
		return l
	}
	wear, number := wears(*s.Moment, i), shirt(*s.Moment, i)
	b := newBody(p)
	switch {
	case i == play.AttackerGoalie || i == play.DefenderGoalie:
		b.goalkeeper(wear, number)
	case i >= play.Officials:
		b.skater(wear, number, watching)
	case s.Moment.Phase == play.Celebration && i == s.Moment.Subject:
		b.skater(wear, number, cheering)
	default:
		b.skater(wear, number, playing)
	}
	l.shapes = st.rods(b.rods)
	by := s.Lighting.onFaces(geom.Vec2{X: p.X, Y: p.Y})
	relight(l.shapes, by)
	step := s.pace(i) * float64(s.Shutter)
	l.way = st.way(middle, geom.Vec3{X: step * b.fx, Y: step * b.fy})
	return l
}

// Shares of the moment's speed (own judgement): who does not carry the puck skates a little
// slower, officials glide, goalkeepers stand.
const (
	othersPace    = 0.85
	officialsPace = 0.4
)

// pace returns how fast the person at place i of the moment moves along the heading, m/s.
func (s *Shot) pace(i int) float64 {
	speed := s.Speed.MetresPerSecond()
	if s.Paced {
		speed = s.Moment.Phase.Speed()
	}
	switch {
	case i == play.AttackerGoalie || i == play.DefenderGoalie:
		return 0
	case !s.Paced || i == s.Moment.Subject:
		return speed
	case i >= play.Officials:
		return officialsPace * speed
	}
	return othersPace * speed
}

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
		return cmp.Compare(st.middle(b)-b.fore, st.middle(a)-a.fore)
	})
	var out []shape
	for _, r := range rods {
		for n, k := st.levels(r), 0; k < n; k++ {
			t := float64(k) / float64(max(1, n-1))
			part := r
			part.ra, part.rb = r.ra*(1-levelIn*t), r.rb*(1-levelIn*t)
			lift := geom.Vec3{Z: levelUp * t * min(r.ra, r.rb)}
			part.a, part.b = r.a.Add(lift), r.b.Add(lift)
			if o := st.screen.rod(st.cam, part); o != nil {
				out = append(out, newShape(o, scaled(r.paint, levelRim+(levelTop-levelRim)*t)))
			}
		}
		for _, p := range r.on {
			if o := p.facing(st.cam.Eye); o != nil {
				st.add(&out, p.paint, o...)
			}
		}
	}
	return out
}

// A rounded body under many lamps, on ice that gives back some of their light, is brightest
// above and darkest at its rim: it is drawn in levels, each one within the one before and
// shifted up. Shares of its radius, and of its paint's light (own judgement).
const (
	levelIn  = 0.62
	levelUp  = 0.36
	levelRim = 0.74
	levelTop = 1.04
	levelPx  = 3.5 // of radius on the screen for each level
	mostTone = 20
)

// levels returns in how many levels a rod is drawn.
func (st stage) levels(r rod) int {
	if r.paint.A < 255 {
		return 1
	}
	px := max(r.ra, r.rb) / max(nearest, st.middle(r)) / st.cam.TanX * st.screen.w / 2
	return int(min(mostTone, max(2, px/levelPx)))
}

func (st stage) middle(r rod) float64 { return st.cam.View(r.a.Add(r.b).Scale(0.5)).Z }

func scaled(c color.NRGBA, k float64) color.NRGBA {
	v := func(x uint8) uint8 { return uint8(min(255, k*float64(x))) }
	return color.NRGBA{v(c.R), v(c.G), v(c.B), c.A}
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
		pts = append(pts, st.polygon(disc(c, puckRadius, 16)...)...)
	}
	if len(pts) > 2 {
		l.shapes = append(l.shapes, newShape(hull(pts), puckPaint))
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
