package frame

import (
	"encoding/binary"
	"image"
	"math"
	"math/bits"
)

// A picture is blurred on a stair of sizes: each step is half as large as the
// one before and serves the pixels whose half width lies, counted in its own
// pixels, between smallBlur and fullBlur. So every pixel costs a few weights,
// however wide its blur is.
//
//	half width  0 ...... 2.5 ....... 5 ........ 10 ...
//	size            1    |   1/2     |   1/4    |   1/8
const (
	smallBlur = fullBlur / 2
	fullBlur  = 2.5
	mostSteps = 6
)

// shrinkSquare is how much of the square of a half width, in a step's own
// pixels, making it smaller and larger again has already brought about: means
// over one of its pixels have the variance 1/12, straight interpolation between
// them 1/6; two boxes have 2 h^2/3 (own derivation).
const shrinkSquare = 1.5 * (1.0/12 + 1.0/6)

// remaining returns the half width that is left to be blurred on a step.
func remaining(h float64) float64 { return math.Sqrt(max(0, h*h-shrinkSquare)) }

// A step is a picture 1/k of the size.
type step struct {
	im *image.RGBA
	k  int
}

// stepFor returns how much smaller a picture serves a half width.
func stepFor(h float64) int {
	k := 1
	for h/float64(k) >= fullBlur && k < 1<<mostSteps {
		k *= 2
	}
	return k
}

// softenByStair blurs a picture; spread gives its blur, and that of the picture
// made smaller by a factor, in that one's own pixels.
func softenByStair(im *image.RGBA, k *kernels, spread func(smaller int) spread) {
	whole := spread(1)
	most := float64(whole.most())
	if most < leastBlur {
		return
	}
	var steps []step
	small := im
	for n := 2; n <= stepFor(most); n *= 2 {
		small = halved(small)
		steps = append(steps, step{small, n})
	}
	for _, st := range steps {
		m := spread(st.k)
		for i, half := range m.nodes {
			m.nodes[i] = float32(remaining(float64(half)))
		}
		// A step serves its neighbours' edges too.
		soften(st.im, m, k, reach{smallBlur / 2, 2 * fullBlur})
	}
	soften(im, whole, k, reach{leastBlur, 2 * fullBlur})
	if len(steps) > 0 {
		eachBand(im.Rect.Dy(), func(y0, y1 int) { join(im, steps, whole, y0, y1) })
	}
}

// join takes the widely blurred pixels of some rows from their steps.
func join(im *image.RGBA, steps []step, m spread, y0, y1 int) {
	w := im.Rect.Dx()
	g := make(grades, m.cols)
	var line [4 * gridStep]uint8
	var room [gridStep/2 + 2]lane
	for y := y0; y < y1; y++ {
		m.row(g, y)
		for from := 0; from < w; from += gridStep {
			a, b := float64(g[from/gridStep]), float64(g[from/gridStep+1])
			n := min(gridStep, w-from)
			for k := max(2, stepFor(min(a, b))); k <= stepFor(max(a, b)); k *= 2 {
				st := steps[bits.TrailingZeros(uint(k))-1]
				st.span(line[:], room[:], from, y, n)
				for i := range n {
					if stepFor(float64(g.at(from+i))) == k {
						at := im.PixOffset(from+i, y)
						copy(im.Pix[at:at+4], line[4*i:4*i+4])
					}
				}
			}
		}
	}
}

// halved returns a picture of half the size: means of four pixels, of fewer at
// an odd edge.
func halved(im *image.RGBA) *image.RGBA {
	w, h := im.Rect.Dx(), im.Rect.Dy()
	out := image.NewRGBA(image.Rect(0, 0, (w+1)/2, (h+1)/2))
	eachBand(out.Rect.Dy(), func(y0, y1 int) {
		for y := y0; y < y1; y++ {
			a, b := im.Pix[2*y*im.Stride:], im.Pix[min(2*y+1, h-1)*im.Stride:]
			to := out.Pix[y*out.Stride:]
			for x := range out.Rect.Dx() {
				i, j := 8*x, 4*min(2*x+1, w-1)
				sum := spaced(a[i:]) + spaced(a[j:]) + spaced(b[i:]) + spaced(b[j:])
				put((sum+halves/64)>>2&bytes4, to[4*x:])
			}
		}
	})
	return out
}

// span writes n pixels of the full size from column x of a row on, by straight
// interpolation between the step's pixels. room holds n/k + 2 lanes.
func (s step) span(to []uint8, room []lane, x, y, n int) {
	first, _ := s.node(x-s.k*s.im.Rect.Min.X, s.im.Rect.Dx())
	last, _ := s.node(x+n-1-s.k*s.im.Rect.Min.X, s.im.Rect.Dx())
	last = min(last+1, s.im.Rect.Dx()-1)
	j, t := s.node(y-s.k*s.im.Rect.Min.Y, s.im.Rect.Dy())
	a, b := s.im.Pix[j*s.im.Stride:], s.im.Pix[min(j+1, s.im.Rect.Dy()-1)*s.im.Stride:]
	for i := first; i <= last; i++ {
		p, q := laneOf(a[4*i:]), laneOf(b[4*i:])
		room[i-first] = lane{p.rb*(256-t) + q.rb*t, p.ga*(256-t) + q.ga*t}
	}
	const half = 1<<15 | 1<<47
	for i := range n {
		m, u := s.node(x+i-s.k*s.im.Rect.Min.X, s.im.Rect.Dx())
		p, q := &room[m-first], &room[min(m+1, last)-first]
		rb, ga := p.rb*(256-u)+q.rb*u+half, p.ga*(256-u)+q.ga*u+half
		binary.LittleEndian.PutUint32(to[4*i:], uint32(rb>>16&0xff|rb>>48<<16|ga>>16&0xff<<8|ga>>48<<24))
	}
}

// node returns the step's pixel before a pixel of the full size, and how far
// beyond its middle that lies, in 1/256.
func (s step) node(x, n int) (int, uint64) {
	at := (2*x+1)*128/s.k - 128
	if at < 0 {
		return 0, 0
	}
	return min(at>>8, n-1), uint64(at & 0xff)
}

// A lane holds a pixel with two channels a word, 32 bits each: room for two
// weighings by 1/256.
type lane struct{ rb, ga uint64 }

func laneOf(pix []uint8) lane {
	v := uint64(binary.LittleEndian.Uint32(pix))
	return lane{v&0xff | v&0xff0000<<16, v>>8&0xff | v>>24<<32}
}
