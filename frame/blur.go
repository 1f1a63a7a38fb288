package frame

import (
	"image"
	"math"

	"example.org/rinkpane/geom"
)

// A disc of diameter c has the variance c^2/16 along a line; two boxes of half
// width h one after the other have 2 h^2/3, so h = c sqrt(3/32) keeps the
// second moment (own derivation).
var boxOfDisc = math.Sqrt(3.0 / 32)

// leastBlur is the half width in pixels below which a box does nothing to see.
const leastBlur = 0.35

// soften blurs a whole layer by a disc of a diameter in pixels.
func soften(im *image.RGBA, disc float64) {
	h := disc * boxOfDisc
	if h < leastBlur {
		return
	}
	half := func(int, int) float64 { return h }
	for range 2 {
		boxRows(im, half, 0, im.Rect.Dy(), false)
		boxColumns(im, half, 0, im.Rect.Dx(), false)
	}
}

// line is the running sum of one row or column; between samples it is
// interpolated, so that fractional widths blend.
type line struct {
	sum [][4]float32
}

func newLine(n int) *line { return &line{sum: make([][4]float32, n+1)} }

func (l *line) load(pix []uint8, stride, n int) {
	var s [4]float32
	for i := range n {
		p := pix[i*stride : i*stride+4 : i*stride+4]
		s[0] += float32(p[0])
		s[1] += float32(p[1])
		s[2] += float32(p[2])
		s[3] += float32(p[3])
		l.sum[i+1] = s
	}
}

// at returns the running sum up to a place between samples.
func (l *line) at(x float32, n int) [4]float32 {
	if x <= 0 {
		return [4]float32{}
	}
	if x >= float32(n) {
		return l.sum[n]
	}
	i := int(x)
	t := x - float32(i)
	a, b := &l.sum[i], &l.sum[i+1]
	return [4]float32{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1]), a[2] + t*(b[2]-a[2]), a[3] + t*(b[3]-a[3])}
}

// store writes the box means of half width h(i) back where they blur at all.
func (l *line) store(pix []uint8, stride, n int, half func(i int) float64, inside bool) {
	for i := range n {
		h := float32(half(i))
		if h < leastBlur {
			continue
		}
		h += 0.5
		lo, hi := float32(i)+0.5-h, float32(i)+0.5+h
		a, b := l.at(lo, n), l.at(hi, n)
		width := 2 * h
		if inside {
			width = min(hi, float32(n)) - max(lo, 0)
		}
		k := 1 / width
		p := pix[i*stride : i*stride+4 : i*stride+4]
		for c := range 4 {
			p[c] = uint8((b[c]-a[c])*k + 0.5)
		}
	}
}

// boxRows runs the box along the rows from..to of an image, both counted from
// its upper left corner, as x and y of half are. inside says that the picture
// ends at the image's edge, so that means are taken over the part inside.
func boxRows(im *image.RGBA, half func(x, y int) float64, from, to int, inside bool) {
	w := im.Rect.Dx()
	l := newLine(w)
	for y := from; y < to; y++ {
		row := im.Pix[y*im.Stride:]
		l.load(row, 4, w)
		l.store(row, 4, w, func(x int) float64 { return half(x, y) }, inside)
	}
}

// boxColumns is boxRows along the columns.
func boxColumns(im *image.RGBA, half func(x, y int) float64, from, to int, inside bool) {
	h := im.Rect.Dy()
	l := newLine(h)
	for x := from; x < to; x++ {
		column := im.Pix[4*x:]
		l.load(column, im.Stride, h)
		l.store(column, im.Stride, h, func(y int) float64 { return half(x, y) }, inside)
	}
}

// smear blurs a layer along its way, in pixels: the mean of shifted copies.
func smear(im *image.RGBA, way geom.Vec2) *image.RGBA {
	n := min(maxCopies, int(math.Ceil(way.Len())))
	if n < 2 {
		return im
	}
	w, h := im.Rect.Dx(), im.Rect.Dy()
	sum := make([]uint32, 4*w*h)
	for k := range n {
		t := float64(k)/float64(n-1) - 0.5
		dx, dy := int(math.Round(t*way.X)), int(math.Round(t*way.Y))
		for y := max(0, dy); y < min(h, h+dy); y++ {
			x0, x1 := max(0, dx), min(w, w+dx)
			if x0 >= x1 {
				continue
			}
			src := im.Pix[(y-dy)*im.Stride+4*(x0-dx) : (y-dy)*im.Stride+4*(x1-dx)]
			dst := sum[4*(y*w+x0) : 4*(y*w+x1)]
			for i, v := range src {
				dst[i] += uint32(v)
			}
		}
	}
	out := image.NewRGBA(im.Rect)
	for i, v := range sum {
		out.Pix[i] = uint8((v + uint32(n)/2) / uint32(n))
	}
	return out
}

// maxCopies bounds the copies of one smear.
const maxCopies = 24
