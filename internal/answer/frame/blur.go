package frame

import (
	"image"
	"math"
)

// A disc of diameter c has the variance c^2/16 along a line; two boxes of half
// width h one after the other have 2 h^2/3, so h = c sqrt(3/32) keeps the
// second moment (own derivation).
var boxOfDisc = math.Sqrt(3.0 / 32)

// leastBlur is the half width in pixels below which a box does nothing to see.
const leastBlur = 0.35

// gridStep is how far apart the nodes of a spread are, in pixels.
const gridStep = 16

// A spread is the blur over a picture: the half width in pixels of the two
// boxes at nodes gridStep pixels apart, row by row; between nodes it runs
// straight.
type spread struct {
	cols, rows int
	nodes      []float32
}

func newSpread(w, h int) spread {
	m := spread{cols: (w+gridStep-1)/gridStep + 1, rows: (h+gridStep-1)/gridStep + 1}
	m.nodes = make([]float32, m.cols*m.rows)
	return m
}

// evenSpread is the same everywhere.
func evenSpread(w, h int, half float64) spread {
	m := newSpread(w, h)
	for i := range m.nodes {
		m.nodes[i] = float32(half)
	}
	return m
}

func (m spread) most() float32 {
	most := float32(0)
	for _, h := range m.nodes {
		most = max(most, h)
	}
	return most
}

// grades are the half widths at a spread's nodes along one row or column.
type grades []float32

// row writes the half widths along a row of pixels.
func (m spread) row(to grades, y int) {
	j, t := y/gridStep, float32(y%gridStep)/gridStep
	a, b := m.nodes[j*m.cols:], m.nodes[(j+1)*m.cols:]
	for i := range to {
		to[i] = a[i] + t*(b[i]-a[i])
	}
}

// column writes the half widths along a column of pixels.
func (m spread) column(to grades, x int) {
	i, t := x/gridStep, float32(x%gridStep)/gridStep
	for j := range to {
		a := m.nodes[j*m.cols+i:]
		to[j] = a[0] + t*(a[1]-a[0])
	}
}

// at is the half width at a place along the strand.
func (g grades) at(i int) float32 {
	a, b := g[i/gridStep], g[i/gridStep+1]
	return a + (b-a)/gridStep*float32(i%gridStep)
}

// A reach says which half widths of a picture's blur are of use: those outside
// are taken from a picture of another size.
type reach struct{ from, to float32 }

// everything blurs whatever is to be blurred.
var everything = reach{leastBlur, math.MaxFloat32}

func (r reach) leavesOut(a, b float32) bool { return max(a, b) < r.from || min(a, b) >= r.to }

// leavesAllOut reports whether no part of a strand is of use.
func (r reach) leavesAllOut(g grades) bool {
	for i := range len(g) - 1 {
		if !r.leavesOut(g[i], g[i+1]) {
			return false
		}
	}
	return true
}

// softenRows blurs the rows from..to.
func softenRows(im *image.RGBA, m spread, k *kernels, r reach, from, to int) {
	s, g := newStrand(im.Rect.Dx()), make(grades, m.cols)
	for y := from; y < to; y++ {
		if m.row(g, y); r.leavesAllOut(g) {
			continue
		}
		row := im.Pix[y*im.Stride:]
		for x := range s.n {
			s.px[pad+x] = spaced(row[4*x:])
		}
		s.soften(g, k, r)
		for x, p := range s.out {
			put(p, row[4*x:])
		}
	}
}

// columnsAtOnce is how many columns are taken out of a picture together: 64
// bytes a row, a cache line.
const columnsAtOnce = 16

// softenColumns blurs the columns from..to.
func softenColumns(im *image.RGBA, m spread, k *kernels, r reach, from, to int) {
	h := im.Rect.Dy()
	g := make(grades, m.rows)
	var block [columnsAtOnce]*strand
	for c := range min(columnsAtOnce, to-from) {
		block[c] = newStrand(h)
	}
	for x := from; x < to; x += columnsAtOnce {
		n := min(columnsAtOnce, to-x)
		for y := range h {
			row := im.Pix[y*im.Stride+4*x : y*im.Stride+4*(x+n)]
			for c, s := range block[:n] {
				s.px[pad+y] = spaced(row[4*c:])
			}
		}
		for c, s := range block[:n] {
			m.column(g, x+c)
			s.soften(g, k, r)
		}
		for y := range h {
			row := im.Pix[y*im.Stride+4*x : y*im.Stride+4*(x+n)]
			for c, s := range block[:n] {
				put(s.out[y], row[4*c:])
			}
		}
	}
}

// soften blurs a picture on all cores.
func soften(im *image.RGBA, m spread, k *kernels, r reach) {
	w, h := im.Rect.Dx(), im.Rect.Dy()
	eachBand(h, func(y0, y1 int) { softenRows(im, m, k, r, y0, y1) })
	eachBand(w, func(x0, x1 int) { softenColumns(im, m, k, r, x0, x1) })
}
