package frame

import (
	"image"
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/optics"
)

// A scatter is what a pane adds to a picture: light of the whole scene that it
// scatters, the stands that it mirrors, and the ghost. Shares of light at the
// nodes of a coarse grid over the frame, between which they are interpolated.
type scatter struct {
	nodes  [veilDown + 1][veilAcross + 1]added
	ghost  image.Point  // from a place of the picture to its ghost, pixels
	mean   [3]float32   // the picture's mean light, by colour
	light  [256]float32 // display value to light, 0..1
	values [4096]uint8  // and back
	under  *image.RGBA  // the picture as it was
	mirror *mirror      // what is mirrored; nil: the same everywhere
}

// added are shares of light at one place of the picture.
type added struct {
	scattered float32 // of what is there; as much of the picture's mean is added
	mirrored  float32 // of the picture's mean
	ghost     float32 // of what is there
}

// scatter reads a finished picture; [scatter.drop] then changes it band by band.
func (s *Shot) scatter(im *image.RGBA) *scatter {
	sc := &scatter{under: &image.RGBA{Pix: slices.Clone(im.Pix), Stride: im.Stride, Rect: im.Rect}}
	for v := range sc.light {
		sc.light[v] = float32(lightOf(float64(v) / 255))
	}
	for i := range sc.values {
		sc.values[i] = uint8(255*valueOf(float64(i)/float64(len(sc.values)-1)) + 0.5)
	}
	for j := range sc.nodes {
		for i := range sc.nodes[j] {
			seen, ok := s.Seen(2*float64(i)/veilAcross-1, 1-2*float64(j)/veilDown)
			if !ok { // edge on: nothing passes, all is mirrored
				sc.nodes[j][i] = added{1, float32(s.Mirror), 0}
				continue
			}
			sc.nodes[j][i] = added{
				float32(seen.Scattered), float32(s.Mirror * seen.Mirrored() / seen.Transmission), float32(seen.Ghost.Strength),
			}
		}
	}
	sc.ghost = s.ghostAt(im.Rect.Dx())
	sc.mean = sc.meanLight()
	return sc
}

// ghostAt returns how far the ghost of the frame's middle stands from it at the
// focus distance, in pixels of a picture so many across: toward the foot of the
// pane's normal, by apart over the distance, in tangents.
func (s *Shot) ghostAt(across int) image.Point {
	seen, ok := s.Seen(0, 0)
	if !ok {
		return image.Point{}
	}
	right, up, forward := Axes(s.Aim.Pan.Radians(), s.Aim.Tilt.Radians())
	x, y := right.Z, up.Z // the pane's normal is the hole frame's Z
	length := math.Hypot(x, y)
	if length == 0 || forward.Z <= 0 {
		return image.Point{}
	}
	pixels := float64(seen.Ghost.Apart/s.Focus) / s.Case.TanX * float64(across) / 2
	return image.Point{X: int(math.Round(x / length * pixels)), Y: -int(math.Round(y / length * pixels))}
}

func (sc *scatter) meanLight() [3]float32 {
	var sum [3]float64
	pix := sc.under.Pix
	for k := 0; k+3 < len(pix); k += 4 {
		for c := range sum {
			sum[c] += float64(sc.light[pix[k+c]])
		}
	}
	n := float64(len(pix) / 4)
	return [3]float32{float32(sum[0] / n), float32(sum[1] / n), float32(sum[2] / n)}
}

// at interpolates the shares at a place of the frame in grid cells.
func (sc *scatter) at(x, y float32) added {
	i, j := min(int(x), veilAcross-1), min(int(y), veilDown-1)
	t, u := x-float32(i), y-float32(j)
	top, bottom := sc.nodes[j][i].to(sc.nodes[j][i+1], t), sc.nodes[j+1][i].to(sc.nodes[j+1][i+1], t)
	return top.to(bottom, u)
}

// to returns the shares a part t of the way to another place's.
func (a added) to(b added, t float32) added {
	return added{a.scattered + t*(b.scattered-a.scattered), a.mirrored + t*(b.mirrored-a.mirrored), a.ghost + t*(b.ghost-a.ghost)}
}

// drop lays the pane's light over a band of the picture.
func (sc *scatter) drop(band *image.RGBA) {
	w, h := sc.under.Rect.Dx(), sc.under.Rect.Dy()
	behind := sc.mirror.rows(w)
	for y := band.Rect.Min.Y; y < band.Rect.Max.Y; y++ {
		stands := behind(y)
		for x := range w {
			n := sc.at((float32(x)+0.5)/float32(w)*veilAcross, (float32(y)+0.5)/float32(h)*veilDown)
			here := sc.under.PixOffset(x, y)
			from := sc.under.PixOffset(min(max(x-sc.ghost.X, 0), w-1), min(max(y-sc.ghost.Y, 0), h-1))
			for c := range 3 {
				light := (1-n.scattered)*sc.light[sc.under.Pix[here+c]] + (n.scattered+n.mirrored*stands(sc, 4*x+c))*sc.mean[c] + n.ghost*sc.light[sc.under.Pix[from+c]]
				band.Pix[band.PixOffset(x, y)+c] = sc.values[int(min(1, light)*float32(len(sc.values)-1)+0.5)]
			}
		}
	}
}

// GhostPixels returns how far the ghost stands from the image at the aim's
// distance, in the body's pixels: apart x magnification / pixel pitch.
func (s *Shot) GhostPixels() (float64, error) {
	m, pitch, err := s.scale()
	seen, _ := s.Seen(0, 0)
	if err != nil {
		return 0, err
	}
	return optics.PixelsOn(seen.Ghost.Apart, m, pitch), nil
}
