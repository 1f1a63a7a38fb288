package sight

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/play"
)

// block scores a run of moments for one hole after another. It holds what the
// moments have in common for all holes and the kernel's working memory, so
// that scoring allocates nothing.
type block struct {
	judge    *Judgement
	settings []lensSetting
	set      *play.Set
	ledge    ledge
	goals    []goalBox
	perShare float64
	cosMost  float64
	perCos   float64
	from     int
	subject  []subject
	shadows  shadows
	radius   [play.People]float64 // of the bodies, metres
}

// subject is the person whom a moment's picture is of.
type subject struct {
	x, y     float64
	cos, sin float64 // of the heading
	height   float64
	face     float64 // height of the face above the ice
	place    int     // in the moment's row
}

// faceBelow is how far the middle of the face lies below the top of the
// helmet, metres: helmet about 4 cm and half a head of 23 cm less the crown
// (ANSUR II: menton to crown 232 mm, from memory).
const faceBelow = 0.14

func newBlock(s *Scorer, set *play.Set) *block {
	j := &s.judge
	full, most := math.Cos(j.FaceFull.Radians()), math.Cos(j.FaceMost.Radians())
	b := &block{
		judge: j, settings: s.settings, set: set, goals: goalBoxes(set.Layout),
		ledge:    ledge{walls: wallsOf(s.arena.Rink), top: s.arena.Boards.Height.Metres()},
		perShare: 1 / (j.ShareFull - j.ShareLeast),
		cosMost:  most, perCos: 1 / (full - most),
		subject: make([]subject, 0, blockSize),
	}
	for i := range b.radius {
		b.radius[i] = play.Radius(i)
	}
	return b
}

// load takes the moments from..to-1.
func (b *block) load(from, to int) {
	b.from, b.subject = from, b.subject[:0]
	for m := from; m < to; m++ {
		p := int(b.set.Subject[m])
		k := m*play.People + p
		sin, cos := math.Sincos(float64(b.set.Heading[k]))
		h := float64(b.set.Height[k])
		b.subject = append(b.subject, subject{
			x: float64(b.set.X[k]), y: float64(b.set.Y[k]), cos: cos, sin: sin,
			height: h, face: h - faceBelow, place: p,
		})
	}
}

// score writes the view's score of each loaded moment.
func (b *block) score(v *view, out []float32) {
	for i := range b.subject {
		out[i] = float32(b.one(v, i))
	}
}

// one scores loaded moment i. The cheap factors come first: most views fail one.
func (b *block) one(v *view, i int) float64 {
	s := &b.subject[i]
	e := &v.eye
	dx, dy := s.x-e.At.X, s.y-e.At.Y
	d := math.Sqrt(dx*dx + dy*dy)
	if d < nearest {
		return 0
	}
	turn := -(dx*s.cos + dy*s.sin) / d // cosine of the angle between face and lens
	if turn <= b.cosMost {
		return 0
	}
	u := geom.Vec3{X: dx*e.Along.X + dy*e.Along.Y, Y: s.face - e.Z, Z: dx*e.In.X + dy*e.In.Y}
	score := b.size(v.aims, u, s.height, d)
	if score == 0 {
		return 0
	}
	return score * min(1, (turn-b.cosMost)*b.perCos) * b.open(v, i, dx/d, dy/d, d)
}

// nearest is the distance below which no picture is tried, metres: the
// subject's body would touch the boards.
const nearest = 0.3
