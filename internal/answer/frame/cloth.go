package frame

import (
	"image/color"
	"math"
)

// A wrap turns an angle about a torso's axis, 0 at the back and rising to the person's
// left, and a height into a place on the cloth, in the person's own frame.
type wrap func(angle, z float64) (x, y float64)

// Cloth that is sewn on, metres on the model figure and numbers of pieces: own judgement.
const (
	hemLow, hemHigh = 0.90, 0.96 // a coloured band above a jersey's edge
	stripeTop       = 1.40       // of an official's jersey
	stripeFoot      = 0.84
	stripeCount     = 8 // dark ones around, and pieces of a ring
	bandPieces      = 3
)

// band is a piece of cloth between two angles and two heights. Angles fall from left to
// right for whom it faces.
func (b *body) band(around wrap, from, to, low, high float64, paint color.NRGBA) plate {
	p := plate{paint: paint}
	for k := range bandPieces + 1 {
		angle := from + (to-from)*float64(k)/bandPieces
		for e, z := range [2]float64{low, high} {
			x, y := around(angle, z)
			p.edges[e] = append(p.edges[e], b.place(x, y, z))
		}
	}
	return p
}

// sewn returns an official's stripes, and a player's coloured hem.
func (b *body) sewn(k livery, around wrap) []plate {
	if k.striped {
		return b.ring(around, 0.5, stripeFoot, stripeTop, stripePaint)
	}
	return b.ring(around, 1, hemLow, hemHigh, k.number)
}

// cuff puts a band, between two heights, around the limb that was built last: between two
// points of the person's own frame.
func (b *body) cuff(low, high [3]float64, rl, rh, from, to float64, paint color.NRGBA) {
	limb := &b.rods[len(b.rods)-1]
	around := func(angle, z float64) (x, y float64) {
		t := (z - low[2]) / (high[2] - low[2])
		sin, cos := math.Sincos(angle)
		r := rl + t*(rh-rl) + clearOfCloth
		return low[0] + t*(high[0]-low[0]) - r*cos, low[1] + t*(high[1]-low[1]) + r*sin
	}
	limb.on = append(limb.on, b.ring(around, 1, from, to, paint)...)
}

// ring is a band all around, in pieces of which each turns about an eighth of the way and
// shows a share of it, from its left on; whole ones lap over one another.
func (b *body) ring(around wrap, share, low, high float64, paint color.NRGBA) []plate {
	const each = 2 * math.Pi / stripeCount
	lapped := share
	if share == 1 {
		lapped = 1.06
	}
	var out []plate
	for i := range stripeCount {
		from := float64(i+1) * each
		out = append(out, b.band(around, from, from-lapped*each, low, high, paint))
	}
	return out
}

// visor hangs a clear shield from a helmet before the eyes.
func (b *body) visor(x, z float64) {
	b.rod([3]float64{x + 0.125, -0.055, z + 0.005}, [3]float64{x + 0.125, 0.055, z + 0.005}, 0.046, 0.046, visorPaint)
}

// cage puts bars before a goalkeeper's face: level and upright ones on a ball.
func (b *body) cage(x, z float64) {
	const radius, bar, reach = 0.125, 0.006, 0.9 // metres, metres, radians to the last bar
	on := func(side, up float64) [3]float64 {
		return [3]float64{x + 0.045 + radius*math.Cos(side)*math.Cos(up), radius * math.Sin(side) * math.Cos(up), z - 0.03 + radius*math.Sin(up)}
	}
	add := func(p, q [3]float64) { b.rod(p, q, bar, bar, bladePaint) }
	for i := -2; i <= 2; i++ {
		at := reach * float64(i) / 2
		add(on(-reach, 0.7*at), on(0, 0.7*at))
		add(on(0, 0.7*at), on(reach, 0.7*at))
		add(on(at, -0.7*reach), on(at, 0))
		add(on(at, 0), on(at, 0.7*reach))
	}
}

// glove puts a padded glove with its cuff and thumb at the end of a forearm, y to the side.
func (b *body) glove(at, elbow [3]float64, y float64, paint color.NRGBA) {
	toward := func(t float64) [3]float64 {
		return [3]float64{at[0] + t*(elbow[0]-at[0]), at[1] + t*(elbow[1]-at[1]), at[2] + t*(elbow[2]-at[2])}
	}
	b.ball(at, 0.08, paint)
	b.rod(toward(0.12), toward(0.34), 0.078, 0.098, scaled(paint, cuffShade))
	b.ball([3]float64{at[0] + 0.03, at[1] - 0.05*y, at[2] + 0.06}, 0.035, paint)
}

// cuffShade is how bright a glove's cuff is over the glove.
const cuffShade = 0.86

// face puts eyes, a mouth and a chin strap on a face: a ball about x, z, its radius given.
func (b *body) face(x, z, radius float64) {
	on := func(side, up float64) [3]float64 {
		return [3]float64{x + radius*math.Cos(side)*math.Cos(up), radius * math.Sin(side) * math.Cos(up), z + radius*math.Sin(up)}
	}
	for _, side := range [2]float64{-1, 1} {
		b.ball(on(0.36*side, 0.12), 0.013, eyePaint)
		b.rod(on(1.5*side, 0.1), on(0.55*side, -0.95), 0.007, 0.007, strapPaint)
	}
	b.rod(on(-0.22, -0.5), on(0.22, -0.5), 0.009, 0.009, lipPaint)
}
