package frame

import (
	"image/color"
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/rink"
)

// spotRadius is a painted end-zone spot: 2 ft across (rule books).
const spotRadius = 0.3048

// ice draws the ice and its paint.
func (st stage) ice(r rink.Rink) []shape {
	var out []shape
	st.flat(&out, icePaint, r.Outline(24))
	for _, c := range r.Creases() {
		st.flat(&out, creasePaint, c.Outline(24))
	}
	for _, l := range r.Lines() {
		paint := redPaint
		if l.Kind == rink.LineBlue {
			paint = bluePaint
		}
		half := geom.Vec2{X: l.Width / 2}
		st.flat(&out, paint, []geom.Vec2{l.From.Sub(half), l.From.Add(half), l.To.Add(half), l.To.Sub(half)})
	}
	line := max(0.05, r.Dimensions().Markings.LineWidth.Metres())
	for _, s := range r.Spots() {
		paint := redPaint
		if s.Centre {
			paint = bluePaint
		}
		if s.Circle > 0 {
			st.ring(&out, paint, s.At, s.Circle, line)
		}
		st.flat(&out, paint, circle(s.At, spotRadius, 24))
	}
	return out
}

// shades draws the dark spot under each person.
func (st stage) shades(s *Shot) []shape {
	var out []shape
	if s.Moment == nil {
		return nil
	}
	for _, p := range s.Moment.People {
		for _, k := range [2]float64{1.5, 1} {
			st.flat(&out, shadePaint, circle(geom.Vec2{X: p.X, Y: p.Y}, 0.26*k, 32))
		}
	}
	return out
}

func (st stage) flat(to *[]shape, paint color.NRGBA, outline []geom.Vec2) {
	poly := make([]geom.Vec3, len(outline))
	for i, p := range outline {
		poly[i] = geom.Vec3{X: p.X, Y: p.Y}
	}
	st.add(to, paint, poly...)
}

// ring draws a painted circle, its outer radius given, in pieces.
func (st stage) ring(to *[]shape, paint color.NRGBA, centre geom.Vec2, radius, width float64) {
	const steps, pieces = 192, 16
	at := func(r float64, i int) geom.Vec2 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / steps)
		return centre.Add(geom.Vec2{X: r * cos, Y: r * sin})
	}
	const each = steps / pieces
	for p := range pieces {
		var outline []geom.Vec2
		for i := range each + 2 { // one step more: no seam
			outline = append(outline, at(radius, p*each+i))
		}
		for i := each + 1; i >= 0; i-- {
			outline = append(outline, at(radius-width, p*each+i))
		}
		st.flat(to, paint, outline)
	}
}

func circle(centre geom.Vec2, r float64, steps int) []geom.Vec2 {
	out := make([]geom.Vec2, steps)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(steps))
		out[i] = centre.Add(geom.Vec2{X: r * cos, Y: r * sin})
	}
	return out
}
