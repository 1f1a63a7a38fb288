// Package ink answers: how much of each pixel does an outline cover?
//
// A [Pen] fills outlines into a picture with exact coverage at their edges. Each
// edge leaves in every row how much of a pixel's width it turns from outside to
// inside; the running sum along the row is then the coverage (the signed-area
// method of font rasterisers). Outlines that are noted together are filled by the
// non-zero rule, as long as overlapping parts turn the same way. A row costs what
// lies between its outermost edges, not the outline's whole box.
package ink

import (
	"encoding/binary"
	"image"
	"image/color"
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// Pen fills outlines into one picture.
type Pen struct {
	im          *image.RGBA
	w, h        int
	turn        []float32 // (w+2) a row
	lo, hi      []int32   // columns of each row that edges touched
	first, last int       // rows that edges touched: from first to before last
}

// New returns a pen for a picture, or for the part of one that a clip leaves.
func New(im *image.RGBA) *Pen {
	w, h := im.Rect.Dx(), im.Rect.Dy()
	p := &Pen{im: im, w: w, h: h, turn: make([]float32, (w+2)*h), lo: make([]int32, h), hi: make([]int32, h), first: h}
	for y := range h {
		p.lo[y], p.hi[y] = int32(w), -1
	}
	return p
}

// Edge notes an edge of an outline from a to b, in pixels of the picture; a pixel
// at (x, y) reaches to (x+1, y+1).
func (p *Pen) Edge(a, b geom.Vec2) {
	corner := geom.Vec2{X: float64(p.im.Rect.Min.X), Y: float64(p.im.Rect.Min.Y)}
	a, b = a.Sub(corner), b.Sub(corner)
	dir := float32(1)
	if a.Y > b.Y {
		a, b, dir = b, a, -1
	}
	if a.Y == b.Y || b.Y <= 0 || a.Y >= float64(p.h) {
		return
	}
	slope := (b.X - a.X) / (b.Y - a.Y)
	first, end := int(max(0, math.Floor(a.Y))), int(min(float64(p.h), math.Ceil(b.Y)))
	p.first, p.last = min(p.first, first), max(p.last, end)
	for y := first; y < end; y++ {
		y0, y1 := max(a.Y, float64(y)), min(b.Y, float64(y+1))
		x0, x1 := a.X+(y0-a.Y)*slope, a.X+(y1-a.Y)*slope
		p.inside(y, float32(min(x0, x1)), float32(max(x0, x1)), dir*float32(y1-y0))
	}
}

// inside notes a piece of an edge within one row, from x0 to x1 >= x0, that
// spans d of the row's height, d negative upward. What lies left of the picture
// turns the whole row; what lies right of it turns nothing that is seen.
func (p *Pen) inside(y int, x0, x1, d float32) {
	right := float32(p.w)
	if x1 <= 0 {
		p.cross(y, 0, 0, d)
		return
	}
	if x0 >= right {
		p.hi[y] = int32(p.w)
		return
	}
	if x0 < 0 {
		left := d * -x0 / (x1 - x0)
		p.cross(y, 0, 0, left)
		x0, d = 0, d-left
	}
	if x1 > right {
		p.hi[y] = int32(p.w)
		x1, d = right, d*(right-x0)/(x1-x0)
	}
	p.cross(y, x0, x1, d)
}

// cross is inside for a piece that lies wholly in the picture.
func (p *Pen) cross(y int, x0, x1, d float32) {
	row := p.turn[y*(p.w+2) : (y+1)*(p.w+2)]
	i := int(x0)
	j := int(math.Ceil(float64(x1)))
	p.lo[y] = min(p.lo[y], int32(i))
	p.hi[y] = max(p.hi[y], int32(max(j, i+1)))
	if j <= i+1 {
		m := (x0+x1)/2 - float32(i)
		row[i] += d * (1 - m)
		row[i+1] += d * m
		return
	}
	s := d / (x1 - x0) // turned per pixel of width
	f0, f1 := 1-(x0-float32(i)), x1-float32(j-1)
	// Coverage of pixel i is the triangle beyond x0; each further one adds the
	// trapezium up to its right side.
	sofar := s * f0 * f0 / 2
	row[i] += sofar
	for k := i + 1; k < j-1; k++ {
		area := s * (f0 + float32(k-i) - 0.5)
		row[k] += area - sofar
		sofar = area
	}
	area := d - s*f1*f1/2 // the last pixel: all but the corner left of x1
	row[j-1] += area - sofar
	row[j] += d - area
}

// Fill lays a paint where the noted edges turn inside, and forgets the edges.
func (p *Pen) Fill(paint color.NRGBA) {
	solid := uint32(paint.R) | uint32(paint.G)<<8 | uint32(paint.B)<<16 | 0xff<<24
	opaque := paint.A == 255
	r, g, b := uint32(paint.R), uint32(paint.G), uint32(paint.B)
	share := 256 * float32(paint.A) / 255
	for y := p.first; y < p.last; y++ {
		lo, hi := int(p.lo[y]), int(p.hi[y])
		p.lo[y], p.hi[y] = int32(p.w), -1
		if hi < lo {
			continue
		}
		turn := p.turn[y*(p.w+2):]
		pix := p.im.Pix[y*p.im.Stride:]
		var sum float32
		for x := lo; x <= hi; x++ {
			sum += turn[x]
			turn[x] = 0
			cover := min(1, max(sum, -sum))
			if cover < leastCover || x >= p.w {
				continue
			}
			at := pix[4*x : 4*x+4 : 4*x+4]
			if opaque && cover > 1-leastCover {
				binary.LittleEndian.PutUint32(at, solid)
				continue
			}
			k := uint32(cover*share + 0.5)
			at[0] = uint8((r*k + uint32(at[0])*(256-k) + 128) >> 8)
			at[1] = uint8((g*k + uint32(at[1])*(256-k) + 128) >> 8)
			at[2] = uint8((b*k + uint32(at[2])*(256-k) + 128) >> 8)
			at[3] = uint8((255*k + uint32(at[3])*(256-k) + 128) >> 8)
		}
	}
	p.first, p.last = p.h, 0
}

// leastCover is the share of a pixel below which paint is not seen: half a
// step of eight bits.
const leastCover = 1.0 / 512
