package frame

import "encoding/binary"

// A strand is one row or column at work. Its pixels hold their four channels in
// one word, 16 bits each, so that one multiplication weighs all of them.
type strand struct {
	n   int
	px  []uint64 // with pad more at both ends
	out []uint64
}

func newStrand(n int) *strand {
	return &strand{n: n, px: make([]uint64, n+2*pad), out: make([]uint64, n)}
}

// spaced reads four bytes into a word, 16 bits each.
func spaced(pix []uint8) uint64 {
	v := uint64(binary.LittleEndian.Uint32(pix))
	return v&0xff | v&0xff00<<8 | v&0xff0000<<16 | v&0xff000000<<24
}

// put writes a word's four channels as bytes.
func put(p uint64, pix []uint8) {
	binary.LittleEndian.PutUint32(pix, uint32(p&0xff|p>>8&0xff00|p>>16&0xff0000|p>>24&0xff000000))
}

// Words with the same in each of the four channels.
const (
	halves = 0x0080_0080_0080_0080
	bytes4 = 0x00ff_00ff_00ff_00ff
)

// extend repeats the strand's end pixels beyond its ends.
func (s *strand) extend() {
	for i := range pad {
		s.px[i], s.px[pad+s.n+i] = s.px[pad], s.px[pad+s.n-1]
	}
}

// Pixels are blurred by weighing them with up to pad neighbours to each side.
// That serves half widths up to mostBlur pixels.
const (
	pad       = 6
	mostBlur  = 3.0
	fineSteps = 16 // kernels a pixel of half width
)

// weights are those of a pixel and of its neighbours to one side, in 1/256: with
// both sides together 256.
type weights struct {
	reach int
	w     [pad + 1]uint64
}

// kernels are the weights for half widths in steps of 1/fineSteps pixels.
type kernels [mostBlur * fineSteps]weights

// newKernels works out what two boxes, one after the other, make of a pixel.
func newKernels() *kernels {
	k := new(kernels)
	for i := range k {
		k[i] = twoBoxes(boxFor((float64(i) + 0.5) / fineSteps))
	}
	return k
}

// A box is the weights of a pixel and its neighbours under a box that reaches b
// beyond the pixel's own edges: a neighbour counts by the part of it that is
// covered.
type box [pad + 1]float64

func newBox(b float64) box {
	var w box
	for d := range w {
		w[d] = max(0, min(float64(d)+0.5, b+0.5)-max(float64(d)-0.5, -b-0.5)) / (2*b + 1)
	}
	return w
}

// variance in square pixels.
func (w box) variance() float64 {
	sum := 0.0
	for d, v := range w {
		sum += 2 * v * float64(d*d)
	}
	return sum
}

// boxFor returns the box whose weights have the variance h^2/3 of one of half
// width h: whole pixels widen a box, so that it is a little narrower.
func boxFor(h float64) box {
	lo, hi := 0.0, h
	for range 30 {
		if mid := (lo + hi) / 2; newBox(mid).variance() < h*h/3 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return newBox(lo)
}

// twoBoxes returns the weights of a box twice over.
func twoBoxes(b box) weights {
	at := func(d int) float64 {
		if d = max(d, -d); d < len(b) {
			return b[d]
		}
		return 0
	}
	out := weights{w: [pad + 1]uint64{256}}
	for d := pad; d > 0; d-- {
		both := 0.0
		for e := -pad; e <= pad; e++ {
			both += at(e) * at(d-e)
		}
		out.w[d] = uint64(256*both + 0.5)
		out.w[0] -= 2 * out.w[d]
		if out.reach == 0 && out.w[d] > 0 {
			out.reach = d
		}
	}
	return out
}

// soften writes the strand, its pixels weighed with their neighbours. Stretches
// that lie wholly outside the reach are left as they are.
func (s *strand) soften(g grades, k *kernels, r reach) {
	s.extend()
	copy(s.out, s.px[pad:])
	for from := 0; from < s.n; from += gridStep {
		a, b := g[from/gridStep], g[from/gridStep+1]
		if r.leavesOut(a, b) {
			continue
		}
		step := (b - a) / gridStep
		for i := from; i < min(s.n, from+gridStep); i++ {
			h := a + step*float32(i-from)
			if h < leastBlur {
				continue
			}
			w := &k[min(int(h*fineSteps), len(k)-1)]
			at := s.px[i : i+2*pad+1 : i+2*pad+1]
			sum := at[pad]*w.w[0] + halves
			for d := 1; d <= w.reach; d++ {
				sum += (at[pad-d] + at[pad+d]) * w.w[d]
			}
			s.out[i] = sum >> 8 & bytes4
		}
	}
}
