package frame

import (
	"image/color"
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/rink"
)

// A glow is something in the hall that shines by itself: a flat convex outline, metres, with
// its luminance over white's.
type glow struct {
	outline  []geom.Vec3
	paint    color.NRGBA
	strength float64
}

// Lights of the hall: own judgement.
const (
	lampStrength  = 60.0
	aisleStrength = 9.0
	phoneStrength = 2.5
	aisleEvery    = 41 // seats to a light on the steps
	phoneEvery    = 67 // seats to a lit screen
	lightsFromRow = 3  // lower rows stand behind the boards
	leastDisc     = 1.4
)

var (
	lampPaint  = color.NRGBA{250, 250, 244, 255}
	stepPaint  = color.NRGBA{255, 214, 150, 255}
	phonePaint = color.NRGBA{206, 224, 255, 255}
)

// lights draws what shines, each spread over its [stage.disc]: over more of the picture, light
// is weaker.
func (st stage) lights(s *Shot, h hall) []shape {
	var out []shape
	for _, g := range append(lamps(s.Arena.Rink), st.seated(h)...) {
		if disc, ok := st.disc(s, g); ok {
			share := g.strength * surface(st.polygon(g.outline...)) / max(1, surface(disc))
			g.paint.A = uint8(255*valueOf(min(1, share)) + 0.5)
			out = append(out, newShape(disc, g.paint))
		}
	}
	return out
}

// disc returns what a glow covers on the screen: its own outline widened by its disc of
// confusion, which has the shape of what the hole leaves of the pupil. The sum of two convex
// outlines is the hull of the sums of their corners.
func (st stage) disc(s *Shot, g glow) ([]geom.Vec2, bool) {
	x, y, depth, ok := st.cam.Project(between(g.outline[0], g.outline[2], 0.5))
	if !ok || depth < 1 || max(math.Abs(x), math.Abs(y)) > margin {
		return nil, false
	}
	blur := max(leastDisc, s.Blur(depth, int(st.screen.w))) / 2
	if depth < s.Focus.Metres() {
		blur = -blur // rays have not crossed yet
	}
	pupil := s.PupilShape(max(-1, min(1, x)), max(-1, min(1, y)))
	var pts []geom.Vec2
	for _, q := range st.polygon(g.outline...) {
		for _, p := range pupil {
			pts = append(pts, q.Add(geom.Vec2{X: p.X * blur, Y: -p.Y * blur}))
		}
	}
	if len(pts) < 3 {
		return nil, false
	}
	return hull(pts), true
}

// surface returns the area of an outline, square pixels.
func surface(outline []geom.Vec2) (sum float64) {
	last := outline[len(outline)-1]
	for _, p := range outline {
		sum += last.Cross(p) / 2
		last = p
	}
	return math.Abs(sum)
}

// lamps are the roof's.
func lamps(r rink.Rink) []glow {
	var out []glow
	d := r.Dimensions()
	m := math.Floor(d.Length.Metres() / 2 / lampStep)
	const z = roofHigh - trussHigh - lampBelow
	for row := range lampRows {
		y := d.Width.Metres() * ((float64(row)+0.5)/lampRows - 0.5)
		for i := -m; i <= m; i++ {
			x := (i + 0.5) * lampStep
			const l, w = lampLong / 2, lampWide / 2
			out = append(out, glow{level(x-l, y-w, x+l, y+w, z), lampPaint, lampStrength})
		}
	}
	return out
}

// seated are the lights among the seats: on steps, and screens in hands. Which seat has one
// follows from its place alone.
func (st stage) seated(h hall) []glow {
	var out []glow
	for row := lightsFromRow; row < rows; row++ {
		for _, run := range h.runs {
			for _, p := range run {
				at := railAt(p, standsFrom+(float64(row)+0.3)*rowDeep, standsLow+float64(row)*rowRise)
				die := scramble(uint32(row), uint32(int32(p.at.X*8)), uint32(int32(p.at.Y*8)), 7)
				g, half, low, high := glow{paint: stepPaint, strength: aisleStrength}, 0.06, 0.02, 0.07
				switch {
				case die%aisleEvery == 0:
				case die%phoneEvery == 1:
					g, half, low, high = glow{paint: phonePaint, strength: phoneStrength}, 0.035, 0.62, 0.76
				default:
					continue
				}
				side := geom.Vec3{X: p.in.Y * half, Y: -p.in.X * half}
				a, b := at.Sub(side), at.Add(side)
				g.outline = []geom.Vec3{a.Add(geom.Vec3{Z: low}), b.Add(geom.Vec3{Z: low}), b.Add(geom.Vec3{Z: high}), a.Add(geom.Vec3{Z: high})}
				out = append(out, g)
			}
		}
	}
	return out
}
