package frame

import (
	"image"
	"math"

	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/rink"
)

// softenBackdrop blurs the ice, boards and stands for the depth of each pixel.
func (s *Shot) softenBackdrop(im *image.RGBA, k *kernels) {
	w, h := im.Rect.Dx(), im.Rect.Dy()
	softenByStair(im, k, func(smaller int) spread { return s.spread(w, h, smaller) })
}

// spread works out the backdrop's blur for a picture 1/k of one of w by h
// pixels.
func (s *Shot) spread(w, h, k int) spread {
	m := newSpread((w+k-1)/k, (h+k-1)/k)
	cores.Each(m.rows, func(j int) {
		y := 1 - 2*float64(k*j*gridStep)/float64(h)
		for i := range m.cols {
			x := 2*float64(k*i*gridStep)/float64(w) - 1
			m.nodes[j*m.cols+i] = float32(s.Blur(s.backdropDepth(x, y), w) * boxOfDisc / float64(k))
		}
	})
	return m
}

// backdropDepth returns how deep, along the axis, the ice or the boards and
// stands lie at a place of the frame, in metres.
func (s *Shot) backdropDepth(x, y float64) float64 {
	u := s.Camera.ray(x, y)
	return s.backdropAway(u) * u.Dot(s.Camera.Forward)
}

// backdropAway returns how often a direction fits between the eye and the ice or boards.
func (s *Shot) backdropAway(u geom.Vec3) float64 {
	away := wayOut(s.Arena.Rink, s.Camera.Eye.XY(), u.XY())
	if u.Z < 0 {
		away = min(away, -s.Camera.Eye.Z/u.Z)
	}
	return away
}

// backdropPlace returns the place of the ice at a place of the frame, or the boards' foot
// below it, in metres.
func (s *Shot) backdropPlace(x, y float64) geom.Vec2 {
	u := s.Camera.ray(x, y)
	return s.Camera.Eye.XY().Add(u.XY().Scale(s.backdropAway(u)))
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
