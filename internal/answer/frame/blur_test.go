package frame

import (
	"image"
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
)

// TestBlurHasTheDiscsSecondMoment blurs a bright bar by discs from one pixel to
// a tenth of the picture, over all sizes of the stair, and measures how much
// wider the bar's second moment became: c^2/16 along a line (second moment of a
// disc). An eighth is allowed for whole pixels and eight bits.
func TestBlurHasTheDiscsSecondMoment(t *testing.T) {
	const w, h, x0, x1 = 800, 48, 390, 411
	k := newKernels()
	for _, disc := range []float64{2, 3, 4, 6, 7.5, 8.5, 12, 16, 17, 24, 33, 40, 64, 80} {
		im := image.NewRGBA(image.Rect(0, 0, w, h))
		for i := range im.Pix {
			im.Pix[i] = 255
			if x := i / 4 % w; i%4 < 3 && (x < x0 || x >= x1) {
				im.Pix[i] = 0
			}
		}
		before := moment(im)
		softenByStair(im, k, func(n int) spread { return evenSpread(w/n, h/n, disc*boxOfDisc/float64(n)) })
		got, want := moment(im)-before, disc*disc/16
		if math.Abs(got-want) > 0.125*want+0.05 {
			t.Errorf("disc of %g px: the bar's second moment grew by %.3f, want %.3f px^2", disc, got, want)
		}
	}
}

// moment is the second moment across a picture's middle row about its own
// middle, in square pixels.
func moment(im *image.RGBA) float64 {
	row := im.Pix[im.Rect.Dy()/2*im.Stride:]
	var sum, first, second float64
	for x := range im.Rect.Dx() {
		v, at := float64(row[4*x]), float64(x)+0.5
		sum, first, second = sum+v, first+v*at, second+v*at*at
	}
	mean := first / sum
	return second/sum - mean*mean
}

// TestKernelsSumToOne: no blur may change how bright an even plane is.
func TestKernelsSumToOne(t *testing.T) {
	for i, k := range newKernels() {
		sum := k.w[0]
		for _, w := range k.w[1:] {
			sum += 2 * w
		}
		if sum != 256 {
			t.Errorf("kernel %d sums to %d/256", i, sum)
		}
	}
	im := image.NewRGBA(image.Rect(0, 0, 97, 61))
	for i := range im.Pix {
		im.Pix[i] = uint8([4]int{228, 17, 131, 255}[i%4])
	}
	softenByStair(im, newKernels(), func(n int) spread { return evenSpread((97+n-1)/n, (61+n-1)/n, 9/float64(n)) })
	for i, v := range im.Pix {
		if want := uint8([4]int{228, 17, 131, 255}[i%4]); v != want {
			t.Fatalf("byte %d of an even plane is %d after the blur, was %d", i, v, want)
		}
	}
}

// TestSmearIsTheMeanAlongTheWay moves a bright pixel's layer by ten pixels.
func TestSmearIsTheMeanAlongTheWay(t *testing.T) {
	im := image.NewRGBA(image.Rect(0, 0, 31, 5))
	for x := 10; x < 21; x++ {
		for c := range 4 {
			im.Pix[im.PixOffset(x, 2)+c] = 220
		}
	}
	out := smear(im, geom.Vec2{X: 10, Y: 0}, 1)
	// The middle pixel is covered by all copies, the bar's first one by half of
	// them, one 6 px before it by none.
	for x, want := range map[int]float64{15: 220, 10: 120, 4: 0} {
		if got := float64(out.Pix[out.PixOffset(x, 2)]); math.Abs(got-want) > 1 {
			t.Errorf("at %d: %g, want %g", x, got, want)
		}
	}
}
