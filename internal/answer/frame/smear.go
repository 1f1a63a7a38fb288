package frame

import (
	"encoding/binary"
	"image"
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// maxCopies bounds the copies of one smear.
const maxCopies = 24

// smear blurs a layer along its way, in pixels: the mean of shifted copies, at
// most apart pixels from one another.
func smear(im *image.RGBA, way geom.Vec2, apart float64) *image.RGBA {
	n := min(maxCopies, int(math.Ceil(way.Len()/apart))+1)
	w, h := im.Rect.Dx(), im.Rect.Dy()
	// Four channels a word, 16 bits each: room for 257 copies.
	pix, sum := make([]uint64, w*h), make([]uint64, w*h)
	for y := range h {
		row := im.Pix[y*im.Stride:]
		for x := range w {
			v := uint64(binary.LittleEndian.Uint32(row[4*x:]))
			pix[y*w+x] = v&0xff | v&0xff00<<8 | v&0xff0000<<16 | v&0xff000000<<24
		}
	}
	for k := range n {
		t := float64(k)/float64(n-1) - 0.5
		dx, dy := int(math.Round(t*way.X)), int(math.Round(t*way.Y))
		x0, x1 := max(0, dx), min(w, w+dx)
		if x0 >= x1 {
			continue
		}
		for y := max(0, dy); y < min(h, h+dy); y++ {
			src := pix[(y-dy)*w+x0-dx : (y-dy)*w+x1-dx]
			dst := sum[y*w+x0 : y*w+x1]
			for i, v := range src {
				dst[i] += v
			}
		}
	}
	out := image.NewRGBA(im.Rect)
	half := uint64(n) / 2
	for i, v := range sum {
		for c := range 4 {
			out.Pix[4*i+c] = uint8((v>>(16*c)&0xffff + half) / uint64(n))
		}
	}
	return out
}
