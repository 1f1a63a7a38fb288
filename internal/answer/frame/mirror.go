package frame

import (
	"image"
	"image/draw"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/geom"
)

// A mirror is what a pane mirrors into the lens: the stands behind the camera with their people
// and lights, out of focus as they are; with its mean light, 0..1.
type mirror struct {
	step
	mean float32
}

const (
	mirrorStep = 2    // how much smaller than the picture it is drawn
	mirrorRow  = 5    // the row that it is blurred for
	mostMirror = 40.0 // times the mean that a lamp in it counts
)

// mirrored draws the hall behind the camera as the pane shows it: as seen from the eye's image
// in the pane, along directions that are mirrored in it. That the lens itself stands before a
// part of it is left out.
func (s *Shot) mirrored(w, h int, k *kernels) *mirror {
	c, n := s.Camera, s.Mount.In
	flip := func(v geom.Vec3) geom.Vec3 { return v.Sub(n.Scale(2 * v.Dot(n))) }
	c.Eye = s.Mount.Origin.Add(flip(c.Eye.Sub(s.Mount.Origin)))
	c.Right, c.Up, c.Forward = flip(c.Right), flip(c.Up), flip(c.Forward)
	w, h = (w+mirrorStep-1)/mirrorStep, (h+mirrorStep-1)/mirrorStep
	st, im := newStage(c, w, h), image.NewRGBA(image.Rect(0, 0, w, h))
	around := outline(s.Arena.Rink)
	hall := hall{[][]post{append(around, around[0])}}
	draw.Draw(im, im.Rect, image.NewUniform(darkPaint), image.Point{}, draw.Src)
	fillShapes(im, slices.Concat(st.roof(s.Arena.Rink, hall), st.stands(s, hall)))
	disc := s.Blur((standsFrom+mirrorRow*rowDeep)/math.Cos(s.Aim.Pan.Radians()), w)
	softenByStair(im, k, func(smaller int) spread {
		return evenSpread((w+smaller-1)/smaller, (h+smaller-1)/smaller, disc*boxOfDisc/float64(smaller))
	})
	fillShapes(im, st.lights(s, hall))
	return &mirror{step{im, mirrorStep}, meanOf(im)}
}

// meanOf is the mean light of a picture over its colours.
func meanOf(im *image.RGBA) float32 {
	var light [256]float64
	for v := range light {
		light[v] = lightOf(float64(v) / 255)
	}
	sum := 0.0
	for k := 0; k+3 < len(im.Pix); k += 4 {
		sum += light[im.Pix[k]] + light[im.Pix[k+1]] + light[im.Pix[k+2]]
	}
	return float32(max(1e-4, 4*sum/3/float64(len(im.Pix))))
}

// rows returns what gives a picture's rows: of each, the light at a place of its pixels, 4 bytes
// each, over the mean.
func (m *mirror) rows(w int) func(y int) func(sc *scatter, at int) float32 {
	if m == nil {
		return func(int) func(*scatter, int) float32 { return func(*scatter, int) float32 { return 1 } }
	}
	line, room := make([]uint8, 4*w), make([]lane, w/m.k+3)
	return func(y int) func(*scatter, int) float32 {
		m.span(line, room, 0, y, w)
		return func(sc *scatter, at int) float32 { return min(mostMirror, sc.light[line[at]]/m.mean) }
	}
}
