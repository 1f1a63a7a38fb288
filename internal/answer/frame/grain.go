package frame

import (
	"image"
	"math"
)

// A sensor's measures, typical of sensors of these years (from memory, no published source).
const (
	wellPerSquare = 1700.0 // electrons at white and ISO 100, per square micrometre of a pixel
	readNoise     = 2.5    // electrons
)

// A grain is the noise of a picture: for each display value its standard deviation, and a
// long row of chances that every line of the picture reads from another place on.
//
//	N = 1700 p^2 100/ISO electrons at white, p the pixel's pitch in micrometres
//	deviation of light L = sqrt(L N + 2.5^2) / N / sqrt(the sensor's pixels in one of the picture)
//
// Photons come by Poisson's law; colours and neighbours are taken as independent.
type grain struct {
	seed   uint32
	spread [256]int32 // in 1/256 of a display value's step
	chance [grainLong]int8
}

const (
	grainLong = 1 << 14
	chanceOne = 32 // one standard deviation
)

func (s *Shot) grain(across int) *grain {
	g := &grain{seed: uint32(s.seed) ^ uint32(s.seed>>32)}
	for i := range g.chance {
		// The sum of four even chances is near enough to normal; its deviation is 147.8.
		h := scramble(uint32(i), 0x67a1)
		sum := h&0xff + h>>8&0xff + h>>16&0xff + h>>24
		g.chance[i] = int8(math.Round((float64(sum) - 510) / 147.8 * chanceOne))
	}
	if s.Pixels[0] < 1 {
		return g
	}
	pitch := s.Sensor.Millimetres() * 1000 / float64(s.Pixels[0])
	full := wellPerSquare * pitch * pitch * 100 / float64(s.Lighting.Used)
	each := max(1, float64(s.Pixels[0])/float64(across))
	for v := range g.spread {
		light := lightOf(float64(v) / 255)
		deviation := math.Sqrt(light*full+readNoise*readNoise) / full / each
		slope := (valueOf(light+1e-4) - valueOf(light-1e-4)) / 2e-4
		if v == 0 || v == 255 {
			slope /= 2 // half of it is cut off
		}
		g.spread[v] = int32(min(64, 255*deviation*slope) * 256)
	}
	return g
}

// drop lays the noise over a band of a picture.
func (g *grain) drop(band *image.RGBA) {
	const half = 128 * chanceOne
	for y := band.Rect.Min.Y; y < band.Rect.Max.Y; y++ {
		at := scramble(g.seed, uint32(y))
		pix := band.Pix[(y-band.Rect.Min.Y)*band.Stride : (y-band.Rect.Min.Y)*band.Stride+4*band.Rect.Dx()]
		for k := 0; k+3 < len(pix); k += 4 {
			for c := range 3 {
				v := int32(pix[k+c])
				v += (int32(g.chance[at%grainLong])*g.spread[v] + half) >> 13
				at++
				pix[k+c] = uint8(min(255, max(0, v)))
			}
		}
	}
}
