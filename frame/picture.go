package frame

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"runtime"
	"sync"

	xdraw "golang.org/x/image/draw"
	"golang.org/x/image/vector"

	"example.org/rinkpane/geom"
)

// Picture draws the shot so many pixels wide and high. The pixels do not
// depend on how many cores work on them. Width and height must be at least 1
// and should have the frame's proportions.
func (s *Shot) Picture(w, h int) *image.RGBA {
	st := stage{cam: s.Camera, screen: screen{float64(w), float64(h)}}
	im := image.NewRGBA(image.Rect(0, 0, w, h))
	back := s.backdrop(st)
	eachBand(h, func(y0, y1 int) {
		band := im.SubImage(image.Rect(0, y0, w, y1)).(*image.RGBA)
		draw.Draw(band, band.Rect, image.NewUniform(roofPaint), image.Point{}, draw.Src)
		fill(band, back)
	})
	s.softenBackdrop(im)
	layers := s.paintLayers(st)
	v := s.veil()
	eachBand(h, func(y0, y1 int) {
		band := im.SubImage(image.Rect(0, y0, w, y1)).(*image.RGBA)
		for _, l := range layers {
			r := l.Rect.Intersect(band.Rect)
			draw.Draw(band, r, l, r.Min, draw.Over)
		}
		v.drop(band, w, h)
	})
	return im
}

// backdrop returns everything that stands still, in painting order.
func (s *Shot) backdrop(st stage) []shape {
	h := newHall(s.Arena.Rink, st.cam.Eye.XY())
	out := st.stands(h)
	out = append(out, st.panes(s)...)
	out = append(out, st.boards(h, s.Arena.Boards.Height.Metres())...)
	out = append(out, st.ice(s.Arena.Rink)...)
	return append(out, st.shades(s)...)
}

// paintLayers draws each figure into a layer of its own, blurred for its
// distance and its way; farthest first.
func (s *Shot) paintLayers(st stage) []*image.RGBA {
	figures := st.figures(s)
	out := make([]*image.RGBA, len(figures))
	each(len(figures), func(i int) { out[i] = s.paintLayer(st, figures[i]) })
	return out
}

// mostPad bounds how far a layer's blur may reach beyond its figure, in pixels.
const mostPad = 400

// A strongly blurred layer is painted smaller: its box keeps at least
// coarseBox pixels of half width, in which a bilinear enlargement is not seen.
const (
	coarseBox  = 3.0
	mostCoarse = 8
)

func (s *Shot) paintLayer(st stage, l layer) *image.RGBA {
	disc := s.Blur(l.depth, int(st.screen.w))
	k := 1
	for k < mostCoarse && disc*boxOfDisc/float64(2*k) > coarseBox {
		k *= 2
	}
	pad := int(min(mostPad, math.Ceil(disc+l.way.Len())+1))
	box := image.Rectangle{}
	for _, sh := range l.shapes {
		box = box.Union(bounds(sh.outline))
	}
	all := image.Rect(-pad, -pad, int(st.screen.w)+pad, int(st.screen.h)+pad)
	small := shrunk(box.Inset(-pad).Intersect(all), k)
	im := image.NewRGBA(small)
	fill(im, shrunkShapes(l.shapes, k))
	im = smear(im, l.way.Scale(1/float64(k)))
	soften(im, disc/float64(k))
	if k == 1 {
		return im
	}
	full := image.NewRGBA(image.Rectangle{small.Min.Mul(k), small.Max.Mul(k)})
	xdraw.ApproxBiLinear.Scale(full, full.Rect, im, im.Rect, xdraw.Src, nil)
	return full
}

// shrunk returns the smallest rectangle of a picture k times smaller that
// covers r.
func shrunk(r image.Rectangle, k int) image.Rectangle {
	down := func(x int) int { return int(math.Floor(float64(x) / float64(k))) }
	return image.Rect(down(r.Min.X), down(r.Min.Y), down(r.Max.X+k-1), down(r.Max.Y+k-1))
}

func shrunkShapes(shapes []shape, k int) []shape {
	if k == 1 {
		return shapes
	}
	out := make([]shape, len(shapes))
	for i, sh := range shapes {
		o := make([]geom.Vec2, len(sh.outline))
		for j, p := range sh.outline {
			o[j] = p.Scale(1 / float64(k))
		}
		out[i] = shape{o, sh.paint}
	}
	return out
}

// fill paints shapes in order, with exact coverage at their edges.
func fill(im *image.RGBA, shapes []shape) {
	var z vector.Rasterizer
	for _, sh := range shapes {
		r := bounds(sh.outline).Intersect(im.Rect)
		if r.Empty() {
			continue
		}
		z.Reset(r.Dx(), r.Dy())
		for i, p := range sh.outline {
			x, y := float32(p.X-float64(r.Min.X)), float32(p.Y-float64(r.Min.Y))
			if i == 0 {
				z.MoveTo(x, y)
			} else {
				z.LineTo(x, y)
			}
		}
		z.ClosePath()
		z.Draw(im, r, image.NewUniform(color.NRGBA(sh.paint)), image.Point{})
	}
}

func bounds(outline []geom.Vec2) image.Rectangle {
	lo, hi := outline[0], outline[0]
	for _, p := range outline[1:] {
		lo.X, lo.Y = min(lo.X, p.X), min(lo.Y, p.Y)
		hi.X, hi.Y = max(hi.X, p.X), max(hi.Y, p.Y)
	}
	return image.Rect(int(math.Floor(lo.X)), int(math.Floor(lo.Y)), int(math.Ceil(hi.X)), int(math.Ceil(hi.Y)))
}

// bandRows is how many rows one piece of work holds.
const bandRows = 32

// eachBand calls work for bands of rows that together cover 0..h.
func eachBand(h int, work func(y0, y1 int)) {
	n := (h + bandRows - 1) / bandRows
	each(n, func(i int) { work(i*bandRows, min(h, (i+1)*bandRows)) })
}

// each calls work for 0..n-1, shared over the cores.
func each(n int, work func(i int)) {
	var wg sync.WaitGroup
	next := make(chan int, n)
	for i := range n {
		next <- i
	}
	close(next)
	for range min(n, runtime.GOMAXPROCS(0)) {
		wg.Go(func() {
			for i := range next {
				work(i)
			}
		})
	}
	wg.Wait()
}
