package frame

import (
	"image"
	"math"

	"example.org/rinkpane/geom"
	"example.org/rinkpane/rink"
)

// gridStep is how far apart the nodes are, in pixels, at which the backdrop's
// depth is worked out.
const gridStep = 16

// softenBackdrop blurs the ice, boards and stands for the depth of each pixel.
func (s *Shot) softenBackdrop(im *image.RGBA) {
	w, h := im.Rect.Dx(), im.Rect.Dy()
	spread, most := s.spread(w, h)
	if most < leastBlur {
		return
	}
	half := func(x, y int) float64 { return float64(spread[y*w+x]) }
	for range 2 {
		eachBand(h, func(y0, y1 int) { boxRows(im, half, y0, y1, true) })
		eachBand(w, func(x0, x1 int) { boxColumns(im, half, x0, x1, true) })
	}
}

// spread returns the box's half width for each pixel, and the largest.
func (s *Shot) spread(w, h int) (pixels []float32, most float64) {
	cols, rows := (w+gridStep-1)/gridStep+1, (h+gridStep-1)/gridStep+1
	nodes := make([]float32, cols*rows)
	for j := range rows {
		y := 1 - 2*float64(j*gridStep)/float64(h)
		for i := range cols {
			x := 2*float64(i*gridStep)/float64(w) - 1
			b := s.Blur(s.backdropDepth(x, y), w) * boxOfDisc
			nodes[j*cols+i] = float32(b)
			most = max(most, b)
		}
	}
	pixels = make([]float32, w*h)
	if most < leastBlur {
		return pixels, most
	}
	eachBand(h, func(y0, y1 int) {
		for y := y0; y < y1; y++ {
			j, t := y/gridStep, float32(y%gridStep)/gridStep
			for x := range w {
				i, u := x/gridStep, float32(x%gridStep)/gridStep
				a, b := nodes[j*cols+i:], nodes[(j+1)*cols+i:]
				top, low := a[0]+u*(a[1]-a[0]), b[0]+u*(b[1]-b[0])
				pixels[y*w+x] = top + t*(low-top)
			}
		}
	})
	return pixels, most
}

// backdropDepth returns how deep, along the axis, the ice or the boards and
// stands lie at a place of the frame, in metres.
func (s *Shot) backdropDepth(x, y float64) float64 {
	u := s.Camera.ray(x, y)
	away := wayOut(s.Arena.Rink, s.Camera.Eye.XY(), u.XY())
	if u.Z < 0 {
		away = min(away, -s.Camera.Eye.Z/u.Z)
	}
	return away * u.Dot(s.Camera.Forward)
}

// wayOut returns how often the direction u fits between the eye and the far
// boards: the last crossing of the ray with the rounded rectangle, found on the
// straight sides first and on a corner's arc when it falls there.
func wayOut(r rink.Rink, eye, u geom.Vec2) float64 {
	d := r.Dimensions()
	hx, hy, rad := d.Length.Metres()/2, d.Width.Metres()/2, d.CornerRadius.Metres()
	k := math.Min(side(eye.X, u.X, hx), side(eye.Y, u.Y, hy))
	if math.IsInf(k, 1) {
		return 0
	}
	p := eye.Add(u.Scale(k))
	cx, cy := math.Copysign(hx-rad, p.X), math.Copysign(hy-rad, p.Y)
	if math.Abs(p.X) <= hx-rad || math.Abs(p.Y) <= hy-rad {
		return k
	}
	e := eye.Sub(geom.Vec2{X: cx, Y: cy})
	a, b, c := u.Dot(u), e.Dot(u), e.Dot(e)-rad*rad
	if disc := b*b - a*c; disc >= 0 {
		return (-b + math.Sqrt(disc)) / a
	}
	return k
}

// side returns where a coordinate leaves -h..h.
func side(at, step, h float64) float64 {
	switch {
	case step > 0:
		return (h - at) / step
	case step < 0:
		return (-h - at) / step
	}
	return math.Inf(1)
}
