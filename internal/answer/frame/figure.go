package frame

import (
	"image/color"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/play"
)

// A ball is a ball in the rink's frame, metres.
type ball struct {
	at     geom.Vec3
	radius float64
}

// A rod is a solid between two balls, metres in the rink's frame.
type rod struct {
	a, b   geom.Vec3
	ra, rb float64
	paint  color.NRGBA
	fore   float64 // drawn as if so much nearer, metres
	on     []plate // what is sewn onto it
}

// jerseyFore puts a jersey over what is worn below it.
const jerseyFore = 0.15

// modelHeight is the height of the figure whose measures stand below, metres:
// the mean stature of ANSUR II's men with skates and helmet.
const modelHeight = 1.876

// A body builds one person's rods in the person's own frame: x the way the
// face looks, y to the person's left, z up, scaled to the person's height.
type body struct {
	at     geom.Vec2
	fx, fy float64 // heading
	scale  float64
	rods   []rod
}

func newBody(p play.Person) *body {
	sin, cos := math.Sincos(p.Heading)
	return &body{at: geom.Vec2{X: p.X, Y: p.Y}, fx: cos, fy: sin, scale: p.Height / modelHeight}
}

// place turns a point of the person's frame into the rink's frame.
func (b *body) place(x, y, z float64) geom.Vec3 {
	x, y, z = x*b.scale, y*b.scale, z*b.scale
	return geom.Vec3{X: b.at.X + x*b.fx - y*b.fy, Y: b.at.Y + x*b.fy + y*b.fx, Z: z}
}

func (b *body) rod(p, q [3]float64, rp, rq float64, paint color.NRGBA) {
	b.rods = append(b.rods, rod{
		a: b.place(p[0], p[1], p[2]), b: b.place(q[0], q[1], q[2]),
		ra: rp * b.scale, rb: rq * b.scale, paint: paint,
	})
}

func (b *body) ball(p [3]float64, r float64, paint color.NRGBA) { b.rod(p, p, r, r, paint) }

// A stance is how a skater stands.
type stance int

const (
	playing  stance = iota // both hands on the stick, in a crouch
	cheering               // arms thrown up
	watching               // an official: no stick
)

// skater builds a skater or an official. Measures in metres on the model
// figure, own judgement.
func (b *body) skater(k livery, number int, as stance) {
	for _, y := range [2]float64{-1, 1} {
		lead := 0.10 * y // one leg before the other
		b.rod([3]float64{lead - 0.16, 0.15 * y, 0.012}, [3]float64{lead + 0.20, 0.16 * y, 0.012}, 0.012, 0.012, bladePaint)
		b.rod([3]float64{lead - 0.12, 0.15 * y, 0.10}, [3]float64{lead + 0.15, 0.16 * y, 0.085}, 0.065, 0.055, k.skate)
		shin := [2][3]float64{{lead, 0.15 * y, 0.17}, {lead + 0.16, 0.16 * y, 0.50}}
		b.rod(shin[0], shin[1], 0.075, 0.10, k.sock)
		b.cuff(shin[0], shin[1], 0.075, 0.10, 0.27, 0.33, k.band)
		b.rod([3]float64{lead + 0.16, 0.16 * y, 0.52}, [3]float64{0, 0.12 * y, 0.90}, 0.12, 0.16, k.pants)
		if as == cheering {
			b.rod([3]float64{0.12, 0.26 * y, 1.44}, [3]float64{0.20, 0.46 * y, 1.64}, 0.12, 0.10, k.sleeve)
			b.rod([3]float64{0.20, 0.46 * y, 1.64}, [3]float64{0.16, 0.50 * y, 1.92}, 0.09, 0.075, k.sleeve)
			b.glove([3]float64{0.16, 0.50 * y, 2.0}, [3]float64{0.20, 0.46 * y, 1.64}, y, k.glove)
			continue
		}
		shoulder, elbow := [3]float64{0.14, 0.25 * y, 1.42}, [3]float64{0.18, 0.38 * y, 1.14}
		b.rod(shoulder, elbow, 0.12, 0.10, k.sleeve)
		if k.striped {
			b.cuff(elbow, shoulder, 0.10, 0.12, 1.18, 1.25, stripePaint)
			b.cuff(elbow, shoulder, 0.10, 0.12, 1.32, 1.39, stripePaint)
		}
		b.rod([3]float64{0.18, 0.38 * y, 1.14}, [3]float64{0.46, 0.16 * y, 0.98}, 0.09, 0.075, k.sleeve)
		b.glove([3]float64{0.50, 0.14 * y, 0.96}, elbow, y, k.glove)
	}
	b.torso([3]float64{0, 0, 0.95}, [3]float64{0.12, 0, 1.36}, 0.21, 0.25, k, number)
	b.rod([3]float64{0.13, -0.18, 1.44}, [3]float64{0.13, 0.18, 1.44}, 0.14, 0.14, k.jersey)
	b.head(0.20, 1.70, k)
	b.visor(0.20, 1.70)
	switch as {
	case playing:
		b.rod([3]float64{0.38, 0.30, 1.20}, [3]float64{1.20, -0.42, 0.05}, 0.016, 0.016, stickPaint)
		b.rod([3]float64{1.20, -0.42, 0.05}, [3]float64{1.44, -0.34, 0.05}, 0.025, 0.025, stickPaint)
	case cheering:
		b.rod([3]float64{0.16, 0.30, 1.98}, [3]float64{0.16, -1.05, 2.10}, 0.016, 0.016, stickPaint)
		b.rod([3]float64{0.16, -1.05, 2.10}, [3]float64{0.18, -1.22, 2.28}, 0.025, 0.025, stickPaint)
	}
}

// goalkeeper builds a goalkeeper in the set position.
func (b *body) goalkeeper(k livery, number int) {
	for _, y := range [2]float64{-1, 1} {
		b.rod([3]float64{0.02, 0.23 * y, 0.012}, [3]float64{0.32, 0.24 * y, 0.012}, 0.012, 0.012, bladePaint)
		b.rod([3]float64{0.04, 0.23 * y, 0.09}, [3]float64{0.28, 0.24 * y, 0.08}, 0.06, 0.055, k.skate)
		b.rod([3]float64{0.06, 0.22 * y, 0.14}, [3]float64{0.20, 0.20 * y, 0.72}, 0.15, 0.17, padPaint)
		b.rod([3]float64{0.16, 0.20 * y, 0.70}, [3]float64{0, 0.14 * y, 0.95}, 0.16, 0.18, k.pants)
		b.rod([3]float64{0.16, 0.28 * y, 1.40}, [3]float64{0.30, 0.48 * y, 1.08}, 0.14, 0.12, k.sleeve)
	}
	b.torso([3]float64{0, 0, 0.98}, [3]float64{0.16, 0, 1.38}, 0.27, 0.29, k, number)
	b.rod([3]float64{0.15, -0.2, 1.44}, [3]float64{0.15, 0.2, 1.44}, 0.16, 0.16, k.jersey)
	b.ball([3]float64{0.36, 0.54, 0.98}, 0.16, padPaint)
	b.rod([3]float64{0.40, -0.54, 0.82}, [3]float64{0.40, -0.54, 1.12}, 0.11, 0.11, padPaint)
	k.helmet = padPaint
	b.head(0.26, 1.70, k)
	b.cage(0.26, 1.70)
	b.rod([3]float64{0.42, -0.50, 0.95}, [3]float64{0.55, -0.20, 0.08}, 0.016, 0.02, stickPaint)
	b.rod([3]float64{0.55, -0.20, 0.06}, [3]float64{0.55, 0.20, 0.06}, 0.04, 0.04, stickPaint)
}

// head puts a helmet over a face.
func (b *body) head(x, z float64, k livery) {
	const radius = 0.105
	b.ball([3]float64{x + 0.045, 0, z - 0.03}, radius, skinPaint)
	b.face(x+0.045, z-0.03, radius)
	b.rod([3]float64{x - 0.02, 0, z + 0.02}, [3]float64{x + 0.02, 0, z + 0.05}, 0.125, 0.12, k.helmet)
}

// torso builds the jersey's body between two points of the person's own frame,
// with the number on its back.
func (b *body) torso(low, high [3]float64, rl, rh float64, k livery, number int) {
	b.rod(low, high, rl, rh, k.jersey)
	t := &b.rods[len(b.rods)-1]
	t.fore = jerseyFore
	radius := func(z float64) float64 { return rl + (z-low[2])/(high[2]-low[2])*(rh-rl) + clearOfCloth }
	around := func(angle, z float64) (x, y float64) {
		sin, cos := math.Sincos(angle)
		return low[0] + (z-low[2])/(high[2]-low[2])*(high[0]-low[0]) - radius(z)*cos, radius(z) * sin
	}
	t.on = append(b.sewn(k, around), b.number(number, k.number, func(side, z float64) (x, y float64) { return around(side/radius(z), z) })...)
}

// clearOfCloth keeps a number just off the jersey, metres.
const clearOfCloth = 0.004

// number returns the strokes of a number on the person's back as flat pieces in
// the rink's frame, bent around the back: wrap turns the way to the person's
// left along the cloth and the height into the person's own frame.
func (b *body) number(n int, paint color.NRGBA, wrap func(side, z float64) (x, y float64)) []plate {
	digits := []int{n % 10}
	if n >= 10 {
		digits = []int{n / 10 % 10, n % 10}
	}
	total := float64(len(digits))*(digitWide+digitGap) - digitGap
	var out []plate
	for i, d := range digits {
		left := total/2 - float64(i)*(digitWide+digitGap) // seen from behind, left is the person's left
		for _, s := range strokes(d) {
			lo, hi := s.box()
			pieces := 1 + int((hi.X-lo.X)*digitWide/bendStep)
			p := plate{paint: paint}
			for k := range pieces + 1 {
				x := lo.X + (hi.X-lo.X)*float64(k)/float64(pieces)
				for e, y := range [2]float64{lo.Y, hi.Y} {
					z := digitFoot + y*digitHigh
					px, py := wrap(left-x*digitWide, z)
					p.edges[e] = append(p.edges[e], b.place(px, py, z))
				}
			}
			out = append(out, p)
		}
	}
	return out
}

// A plate is a bent band in the rink's frame, metres: its lower and its upper
// edge, both from left to right for whom it faces.
type plate struct {
	edges [2][]geom.Vec3
	paint color.NRGBA
}

// facing returns the outline of the part that turns its face to a point; nil
// for none.
func (p plate) facing(eye geom.Vec3) []geom.Vec3 {
	low, high := p.edges[0], p.edges[1]
	from, to := -1, -1
	for i := range len(low) - 1 {
		if faces(low[i], low[i+1], high[i], eye) {
			if from < 0 {
				from = i
			}
			to = i + 1
		}
	}
	if from < 0 {
		return nil
	}
	out := slices.Clone(low[from : to+1])
	for i := to; i >= from; i-- {
		out = append(out, high[i])
	}
	return out
}

// faces reports whether a flat piece with a corner at a, the next one to the
// right at b and the one above at c turns its face to a point.
func faces(a, b, c, eye geom.Vec3) bool {
	u, v := b.Sub(a), c.Sub(a)
	n := geom.Vec3{X: u.Y*v.Z - u.Z*v.Y, Y: u.Z*v.X - u.X*v.Z, Z: u.X*v.Y - u.Y*v.X}
	return n.Dot(eye.Sub(a)) > 0
}
