package frame

import (
	"encoding/binary"
	"image"
	"math"

	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/geom"
)

// longWay is how many pixels a layer may move before it is smeared along its
// way; a shorter one widens the boxes, which is not told apart.
const longWay = 2.5

// paintCels draws each layer by itself, premultiplied, blurred for its distance
// and its way.
func (s *Shot) paintCels(st stage, layers []layer, kern *kernels) []step {
	out := make([]step, len(layers))
	cores.Each(len(layers), func(i int) { out[i] = paintCel(st, layers[i], s.Blur(layers[i].depth, int(st.screen.w)), kern) })
	return out
}

// paintCel draws a layer under a disc of confusion, a diameter in pixels, on
// the step of the stair that serves it.
func paintCel(st stage, l layer, disc float64, kern *kernels) step {
	k := stepFor(disc * boxOfDisc)
	var box image.Rectangle
	for _, sh := range l.shapes {
		box = box.Union(sh.box)
	}
	far := int(min(mostReach, math.Ceil(2*disc*boxOfDisc+l.way.Len()/2)+2)) // of the boxes and the way
	all := image.Rect(-far, -far, int(st.screen.w)+far, int(st.screen.h)+far)
	im := image.NewRGBA(shrunk(box.Inset(-far).Intersect(all), k))
	if im.Rect.Empty() {
		return step{im, k}
	}
	fillShapes(im, shrunkShapes(l.shapes, k))
	disc, way := disc/float64(k), l.way.Scale(1/float64(k))
	if way.Len() > longWay {
		im = smear(im, way, max(1, disc*boxOfDisc))
		way = geom.Vec2{}
	}
	across, down := widened(disc, way.X), widened(disc, way.Y)
	if k > 1 {
		across, down = remaining(across), remaining(down)
	}
	w, h := im.Rect.Dx(), im.Rect.Dy()
	if across >= leastBlur {
		softenRows(im, evenSpread(w, h, across), kern, everything, 0, h)
	}
	if down >= leastBlur {
		softenColumns(im, evenSpread(w, h, down), kern, everything, 0, w)
	}
	return step{im, k}
}

// mostReach bounds how far a layer's blur may reach beyond the frame, in pixels.
const mostReach = 400

// widened returns the half width of the boxes for a disc and a way along one
// axis, all in pixels. An even smear over a way w has the variance w^2/12,
// which adds to the disc's c^2/16; two boxes have 2 h^2/3.
func widened(disc, way float64) float64 {
	return math.Sqrt(1.5 * (disc*disc/16 + way*way/12))
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
		out[i] = newShape(o, sh.paint)
	}
	return out
}

// over lays a layer over a band of an opaque picture.
func (s step) over(band *image.RGBA) {
	m := s.im.Rect
	r := image.Rectangle{m.Min.Mul(s.k), m.Max.Mul(s.k)}.Intersect(band.Rect)
	if r.Empty() {
		return
	}
	line, room := make([]uint8, 4*r.Dx()), make([]lane, r.Dx()/s.k+3)
	for y := r.Min.Y; y < r.Max.Y; y++ {
		src := line
		if s.k == 1 {
			src = s.im.Pix[s.im.PixOffset(r.Min.X, y):]
		} else {
			s.span(line, room, r.Min.X, y, r.Dx())
		}
		lay(band.Pix[band.PixOffset(r.Min.X, y):], src, r.Dx())
	}
}

// lay puts n premultiplied pixels over as many opaque ones.
func lay(dst, src []uint8, n int) {
	for i := range n {
		v := binary.LittleEndian.Uint32(src[4*i:])
		switch a := v >> 24; a {
		case 0:
		case 255:
			binary.LittleEndian.PutUint32(dst[4*i:], v)
		default:
			d, inv := dst[4*i:4*i+4:4*i+4], 255-a
			d[0] = uint8(v + share(uint32(d[0]), inv))
			d[1] = uint8(v>>8 + share(uint32(d[1]), inv))
			d[2] = uint8(v>>16 + share(uint32(d[2]), inv))
		}
	}
}

// share returns x a / 255, rounded.
func share(x, a uint32) uint32 { return (x*a*257 + 1<<15) >> 16 }
