package frame

import (
	"image"

	"example.org/rinkpane/internal/measure/cores"
)

// A veil is what hole, panel and ledge do to a picture, on a grid of nodes over
// the frame between which it is interpolated.
type veil struct {
	nodes [veilDown*veilFine + 1][veilAcross*veilFine + 1]shade
	clear [veilDown * veilFine]bool // rows of cells that change nothing
}

// A shade is what happens to one place of the picture.
type shade struct {
	gain  float32 // of the light, in degrees
	ledge float32 // share covered by the ledge
}

// The veil is worked out at veilAcross by veilDown cells, and veilFine times
// finer in each direction in cells over which it changes by more than
// veilSteep; elsewhere straight interpolation is off by less than a step of
// eight bits can show.
const (
	veilAcross = 36
	veilDown   = 24
	veilFine   = 4
	veilSteep  = 0.06
)

// shadeAt returns the shade at a node of the fine grid.
func (s *Shot) shadeAt(i, j int) shade {
	x, y := 2*float64(i)/(veilAcross*veilFine)-1, 1-2*float64(j)/(veilDown*veilFine)
	return shade{degree(s.exposure * s.Transmission(x, y) * s.unmarked(x, y)), float32(1 - s.LedgeFree(x, y))}
}

func (s *Shot) veil() *veil {
	v := new(veil)
	cores.Each(veilDown+1, func(j int) {
		for i := range veilAcross + 1 {
			v.nodes[j*veilFine][i*veilFine] = s.shadeAt(i*veilFine, j*veilFine)
		}
	})
	cores.Each(veilDown, func(j int) {
		for i := range veilAcross {
			v.fillCell(s, i*veilFine, j*veilFine)
		}
	})
	v.fillEdges()
	for j := range v.clear {
		v.clear[j] = clearRow(v.nodes[j][:]) && clearRow(v.nodes[j+1][:])
	}
	return v
}

// steep reports whether the veil changes much over the cell with its upper left
// node at i, j.
func (v *veil) steep(i, j int) bool {
	a, b, c, d := v.corners(i, j)
	return spanOf(a.gain, b.gain, c.gain, d.gain) > veilSteep || spanOf(a.ledge, b.ledge, c.ledge, d.ledge) > veilSteep
}

func (v *veil) corners(i, j int) (a, b, c, d shade) {
	return v.nodes[j][i], v.nodes[j][i+veilFine], v.nodes[j+veilFine][i], v.nodes[j+veilFine][i+veilFine]
}

func spanOf(a, b, c, d float32) float32 { return max(a, b, c, d) - min(a, b, c, d) }

// fillCell fills the nodes inside a cell and on its upper and left side.
func (v *veil) fillCell(s *Shot, i, j int) {
	steep := v.steep(i, j) || i > 0 && v.steep(i-veilFine, j) || j > 0 && v.steep(i, j-veilFine)
	a, b, c, d := v.corners(i, j)
	for y := range veilFine {
		for x := range veilFine {
			if x == 0 && y == 0 {
				continue
			}
			if steep {
				v.nodes[j+y][i+x] = s.shadeAt(i+x, j+y)
				continue
			}
			t, u := float32(y)/veilFine, float32(x)/veilFine
			v.nodes[j+y][i+x] = mix(mix(a, b, u), mix(c, d, u), t)
		}
	}
}

// fillEdges fills the last row and column, which no cell fills, straight.
func (v *veil) fillEdges() {
	const w, h = veilAcross * veilFine, veilDown * veilFine
	for i := range w {
		from := i / veilFine * veilFine
		v.nodes[h][i] = mix(v.nodes[h][from], v.nodes[h][from+veilFine], float32(i%veilFine)/veilFine)
	}
	for j := range h {
		from := j / veilFine * veilFine
		v.nodes[j][w] = mix(v.nodes[from][w], v.nodes[from+veilFine][w], float32(j%veilFine)/veilFine)
	}
}

func mix(a, b shade, t float32) shade {
	return shade{a.gain + t*(b.gain-a.gain), a.ledge + t*(b.ledge-a.ledge)}
}

// clearShade is the change that eight bits do not show.
const clearShade = 1.0 / 512

func clearRow(row []shade) bool {
	for _, n := range row {
		if max(n.gain-1, 1-n.gain) > clearShade || n.ledge > clearShade {
			return false
		}
	}
	return true
}

// ledgePaint is the boards' top out of focus and in the dark.
var ledgePaint = [3]float32{74, 70, 66}

// drop lays the veil over a band of a picture that is w by h pixels.
func (v *veil) drop(band *image.RGBA, t *tones, w, h int) {
	var row [veilAcross*veilFine + 1]shade
	for y := band.Rect.Min.Y; y < band.Rect.Max.Y; y++ {
		fj := (float32(y) + 0.5) / float32(h) * float32(len(v.clear))
		j := min(int(fj), len(v.clear)-1)
		if v.clear[j] {
			continue
		}
		for i := range row {
			row[i] = mix(v.nodes[j][i], v.nodes[j+1][i], fj-float32(j))
		}
		pix := band.Pix[(y-band.Rect.Min.Y)*band.Stride:]
		for x := range w {
			fi := (float32(x) + 0.5) / float32(w) * float32(len(row)-1)
			i := min(int(fi), len(row)-2)
			n := mix(row[i], row[i+1], fi-float32(i))
			p := pix[4*x : 4*x+3 : 4*x+3]
			if n.ledge > clearShade {
				for c := range p {
					under := float32(p[c])
					p[c] = uint8(under + n.ledge*(ledgePaint[c]-under) + 0.5)
				}
			}
			exposed := t.at(n.gain)
			p[0], p[1], p[2] = exposed[p[0]], exposed[p[1]], exposed[p[2]]
		}
	}
}
