package frame

import (
	"image"
	"image/draw"

	"example.org/rinkpane/internal/measure/cores"
)

// Picture draws the shot so many pixels wide and high. The pixels do not
// depend on how many cores work on them. Width and height must be at least 1
// and should have the frame's proportions.
func (s *Shot) Picture(w, h int) *image.RGBA {
	st := newStage(s.Camera, w, h)
	var back, planes []shape
	var layers []layer
	var lights []shape
	var v *veil
	var f *falloff
	var t *tones
	var g *grain
	tasks := [...]func(){
		func() { v = s.veil() },
		func() { f = s.falloff() },
		func() {
			st := newStage(s.Camera, w, h)
			lights = st.lights(s, newHall(s.Arena.Rink, st.cam.Eye.XY()))
		},
		func() { t, g = newTones(), s.grain(w) },
		func() { layers, planes = st.figures(s), st.planes(s) },
		func() { back = s.backdrop(newStage(s.Camera, w, h)) },
	}
	cores.Each(len(tasks), func(i int) { tasks[i]() })
	im := image.NewRGBA(image.Rect(0, 0, w, h))
	eachBand(h, func(y0, y1 int) {
		band := im.SubImage(image.Rect(0, y0, w, y1)).(*image.RGBA)
		draw.Draw(band, band.Rect, image.NewUniform(darkPaint), image.Point{}, draw.Src)
		fillShapes(band, back)
		f.drop(band, t, w, h)
	})
	k := newKernels()
	s.softenBackdrop(im, k)
	cels := s.paintCels(st, layers, k)
	eachBand(h, func(y0, y1 int) {
		band := im.SubImage(image.Rect(0, y0, w, y1)).(*image.RGBA)
		fillShapes(band, lights)
		fillShapes(band, planes)
		for _, c := range cels {
			c.over(band)
		}
		v.drop(band, t, w, h)
		if s.pane == nil && !s.plain {
			g.drop(band)
		}
	})
	if s.pane != nil {
		sc := s.scatter(im)
		sc.mirror = s.mirrored(w, h, k)
		eachBand(h, func(y0, y1 int) {
			band := im.SubImage(image.Rect(0, y0, w, y1)).(*image.RGBA)
			sc.drop(band)
			if !s.plain {
				g.drop(band)
			}
		})
	}
	if marks := st.checks(s); len(marks) > 0 {
		fillShapes(im, marks)
	}
	return im
}

// backdrop returns everything that stands still, in painting order.
func (s *Shot) backdrop(st stage) []shape {
	h := newHall(s.Arena.Rink, st.cam.Eye.XY())
	out := st.roof(s.Arena.Rink, h)
	out = append(out, st.stands(s, h)...)
	out = append(out, st.panes(s)...)
	out = append(out, st.boards(h, s.Arena.Boards.Height.Metres())...)
	out = append(out, st.ice(s.Arena.Rink)...)
	return append(out, st.shades(s)...)
}

// bandRows is how many rows one piece of work holds.
const bandRows = 32

// eachBand calls work for bands of rows that together cover 0..h.
func eachBand(h int, work func(y0, y1 int)) {
	n := (h + bandRows - 1) / bandRows
	cores.Each(n, func(i int) { work(i*bandRows, min(h, (i+1)*bandRows)) })
}
