package frame

import (
	"image/color"
	"math"

	"example.org/rinkpane/geom"
	"example.org/rinkpane/play"
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
	paint  color.RGBA
}

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

func (b *body) rod(p, q [3]float64, rp, rq float64, paint color.RGBA) {
	b.rods = append(b.rods, rod{
		a: b.place(p[0], p[1], p[2]), b: b.place(q[0], q[1], q[2]),
		ra: rp * b.scale, rb: rq * b.scale, paint: paint,
	})
}

func (b *body) ball(p [3]float64, r float64, paint color.RGBA) { b.rod(p, p, r, r, paint) }

// skater builds a skater or an official in a skating crouch. Measures in metres
// on the model figure, own judgement.
func (b *body) skater(k livery, stick bool) {
	for _, y := range [2]float64{-1, 1} {
		lead := 0.10 * y // one leg before the other
		b.rod([3]float64{lead - 0.13, 0.15 * y, 0.07}, [3]float64{lead + 0.16, 0.16 * y, 0.06}, 0.06, 0.05, k.skate)
		b.rod([3]float64{lead, 0.15 * y, 0.14}, [3]float64{lead + 0.16, 0.16 * y, 0.50}, 0.075, 0.10, k.sock)
		b.rod([3]float64{lead + 0.16, 0.16 * y, 0.52}, [3]float64{0, 0.12 * y, 0.90}, 0.12, 0.16, k.pants)
		b.rod([3]float64{0.14, 0.25 * y, 1.42}, [3]float64{0.18, 0.38 * y, 1.14}, 0.12, 0.10, k.sleeve)
		b.rod([3]float64{0.18, 0.38 * y, 1.14}, [3]float64{0.46, 0.16 * y, 0.98}, 0.09, 0.075, k.sleeve)
		b.ball([3]float64{0.50, 0.14 * y, 0.96}, 0.085, k.glove)
	}
	b.rod([3]float64{0, 0, 0.95}, [3]float64{0.12, 0, 1.36}, 0.21, 0.25, k.jersey)
	b.rod([3]float64{0.13, -0.18, 1.44}, [3]float64{0.13, 0.18, 1.44}, 0.14, 0.14, k.jersey)
	b.head(0.20, 1.70, k)
	if stick {
		b.rod([3]float64{0.38, 0.30, 1.20}, [3]float64{1.20, -0.42, 0.05}, 0.016, 0.016, stickPaint)
		b.rod([3]float64{1.20, -0.42, 0.05}, [3]float64{1.44, -0.34, 0.05}, 0.025, 0.025, stickPaint)
	}
}

// goalkeeper builds a goalkeeper in the set position.
func (b *body) goalkeeper(k livery) {
	for _, y := range [2]float64{-1, 1} {
		b.rod([3]float64{0.06, 0.22 * y, 0.14}, [3]float64{0.20, 0.20 * y, 0.72}, 0.15, 0.17, padPaint)
		b.rod([3]float64{0.16, 0.20 * y, 0.70}, [3]float64{0, 0.14 * y, 0.95}, 0.16, 0.18, k.pants)
		b.rod([3]float64{0.16, 0.28 * y, 1.40}, [3]float64{0.30, 0.48 * y, 1.08}, 0.14, 0.12, k.sleeve)
	}
	b.rod([3]float64{0, 0, 0.98}, [3]float64{0.16, 0, 1.38}, 0.27, 0.29, k.jersey)
	b.rod([3]float64{0.15, -0.2, 1.44}, [3]float64{0.15, 0.2, 1.44}, 0.16, 0.16, k.jersey)
	b.ball([3]float64{0.36, 0.54, 0.98}, 0.16, padPaint)
	b.rod([3]float64{0.40, -0.54, 0.82}, [3]float64{0.40, -0.54, 1.12}, 0.11, 0.11, padPaint)
	b.head(0.26, 1.70, k)
	b.rod([3]float64{0.42, -0.50, 0.95}, [3]float64{0.55, -0.20, 0.08}, 0.016, 0.02, stickPaint)
	b.rod([3]float64{0.55, -0.20, 0.06}, [3]float64{0.55, 0.20, 0.06}, 0.04, 0.04, stickPaint)
}

// head puts a helmet over a face.
func (b *body) head(x, z float64, k livery) {
	b.ball([3]float64{x + 0.045, 0, z - 0.03}, 0.105, skinPaint)
	b.rod([3]float64{x - 0.02, 0, z + 0.02}, [3]float64{x + 0.02, 0, z + 0.05}, 0.125, 0.12, k.helmet)
}

// number returns the strokes of a number on the person's back as flat
// polygons in the rink's frame.
func (b *body) number(n int, paint color.RGBA) []plate {
	digits := []int{n % 10}
	if n >= 10 {
		digits = []int{n / 10 % 10, n % 10}
	}
	total := float64(len(digits))*(digitWide+digitGap) - digitGap
	var out []plate
	for i, d := range digits {
		left := total/2 - float64(i)*(digitWide+digitGap) // seen from behind, left is the person's left
		for _, s := range strokes(d) {
			var p plate
			for k, c := range s.corners() {
				p.corners[k] = b.place(-0.17, left-c.X*digitWide, 1.14+c.Y*digitHigh)
			}
			p.paint = paint
			out = append(out, p)
		}
	}
	return out
}

// A plate is a flat four-cornered piece in the rink's frame, metres.
type plate struct {
	corners [4]geom.Vec3
	paint   color.RGBA
}
