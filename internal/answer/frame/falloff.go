package frame

import (
	"image"

	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/geom"
)

// A floor is the light on the ice in degrees of each colour, at nodes floorStep metres apart;
// between them it runs straight.
type floor struct {
	cols, rows int
	corner     geom.Vec2
	nodes      [][3]float32
}

const floorStep = 2.0

func (s *Shot) floor() floor {
	d := s.Arena.Rink.Dimensions()
	f := floor{cols: int(d.Length.Metres()/floorStep) + 2, rows: int(d.Width.Metres()/floorStep) + 2,
		corner: geom.Vec2{X: -d.Length.Metres() / 2, Y: -d.Width.Metres() / 2}}
	f.nodes = make([][3]float32, f.cols*f.rows)
	cores.Each(f.rows, func(j int) {
		for i := range f.cols {
			at := f.corner.Add(geom.Vec2{X: float64(i) * floorStep, Y: float64(j) * floorStep})
			for c, k := range s.Lighting.onIce(at) {
				f.nodes[j*f.cols+i][c] = degree(k)
			}
		}
	})
	return f
}

func (f floor) at(p geom.Vec2) (out [3]float32) {
	x, y := (p.X-f.corner.X)/floorStep, (p.Y-f.corner.Y)/floorStep
	i, j := min(f.cols-2, max(0, int(x))), min(f.rows-2, max(0, int(y)))
	t, u := float32(x)-float32(i), float32(y)-float32(j)
	a, b := f.nodes[j*f.cols+i:], f.nodes[(j+1)*f.cols+i:]
	for c := range out {
		near, far := a[0][c]+t*(a[1][c]-a[0][c]), b[0][c]+t*(b[1][c]-b[0][c])
		out[c] = near + u*(far-near)
	}
	return out
}

// A falloff is the light over the backdrop at nodes of a grid over the frame, in degrees of
// each colour; between nodes it runs straight. Nodes are closer up and down, where a step
// may go far over the ice.
type falloff struct {
	nodes [falloffDown + 1][veilAcross + 1][3]float32
	even  bool // nothing to see of it
}

const falloffDown = veilDown * veilFine

// falloff works out the survey's light on the ice, and on the boards what falls at their foot.
func (s *Shot) falloff() *falloff {
	f, floor := &falloff{even: true}, s.floor()
	for j := range f.nodes {
		for i := range f.nodes[j] {
			f.nodes[j][i] = floor.at(s.backdropPlace(2*float64(i)/veilAcross-1, 1-2*float64(j)/falloffDown))
		}
	}
	for _, row := range f.nodes {
		for _, n := range row {
			for _, d := range n {
				f.even = f.even && max(d-1, 1-d) < clearShade
			}
		}
	}
	return f
}

// drop lights a band of a backdrop that is w by h pixels.
func (f *falloff) drop(band *image.RGBA, t *tones, w, h int) {
	if f.even {
		return
	}
	var row [veilAcross + 1][3]float32
	for y := band.Rect.Min.Y; y < band.Rect.Max.Y; y++ {
		fj := (float32(y) + 0.5) / float32(h) * falloffDown
		j := min(int(fj), falloffDown-1)
		u := fj - float32(j)
		for i := range row {
			a, b := f.nodes[j][i], f.nodes[j+1][i]
			for c := range a {
				row[i][c] = toneSteps * min(mostDegree, a[c]+u*(b[c]-a[c]))
			}
		}
		pix := band.Pix[(y-band.Rect.Min.Y)*band.Stride:]
		step := veilAcross / float32(w)
		for x := range w {
			fi := (float32(x) + 0.5) * step
			i := min(int(fi), veilAcross-1)
			u := fi - float32(i)
			a, b := &row[i], &row[i+1]
			p := pix[4*x : 4*x+3 : 4*x+3]
			p[0] = t[int(a[0]+u*(b[0]-a[0])+0.5)][p[0]]
			p[1] = t[int(a[1]+u*(b[1]-a[1])+0.5)][p[1]]
			p[2] = t[int(a[2]+u*(b[2]-a[2])+0.5)][p[2]]
		}
	}
}
