package resect

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// likeShare is how far from a mark a landmark may lie that was meant, a share of the
// frame's width.
const likeShare = 0.005

// like names the landmark that lies where a mark was set that does not fit.
func (m *model) like(x []float64, frame, mark int, known []Landmark, sigma float64) string {
	f := m.frames[frame]
	cam := m.lens(x[frame*numbers : (frame+1)*numbers])
	cx, cy := f.middle()
	best, name := max(likeShare*float64(f.Pixels[0]), 5*sigma), ""
	for _, l := range known {
		px, py := cam.sees(l.At)
		if d := math.Hypot(px+cx-f.Marks[mark].X, py+cy-f.Marks[mark].Y); d < best && l.Name != f.Marks[mark].Landmark {
			best, name = d, l.Name
		}
	}
	return name
}

// help finds the landmark in a picture, not marked yet, with which the ellipse would
// shrink most: its longer half axis by the same errors.
func (m *model) help(x []float64, l left, share float64, known []Landmark) *Help {
	var best *Help
	for i, f := range m.frames {
		cam := m.lens(x[i*numbers : (i+1)*numbers])
		cx, cy := f.middle()
		for _, k := range known {
			px, py := cam.sees(k.At)
			inside := cam.View(k.At).Z > nearest && math.Abs(px) < cx && math.Abs(py) < cy
			if !inside || slices.ContainsFunc(f.Marks, func(m Pin) bool { return m.Landmark == k.Name }) {
				continue
			}
			after := l
			after.dof += 2
			e := ellipse(m.placeCov(x, with(l.cov, m.slope(x, i, k.At))), after.radius2(share))
			if best == nil || e.Major < best.Major {
				best = &Help{f.Name, k.Name, e.Major, [2]float64{px + cx, py + cy}}
			}
		}
	}
	return best
}

// with returns the covariance after two more rows were observed:
// C - C J' (I + J C J')^-1 J C.
func with(c *mat.SymDense, j *mat.Dense) *mat.SymDense {
	var cj, s, inv, g, less mat.Dense
	cj.Mul(c, j.T())
	s.Mul(j, &cj)
	for i := range 2 {
		s.Set(i, i, s.At(i, i)+1)
	}
	if inv.Inverse(&s) != nil {
		return c
	}
	g.Mul(&cj, &inv)
	less.Mul(&g, cj.T())
	n := c.SymmetricDim()
	out := mat.NewSymDense(n, nil)
	for i := range n {
		for k := i; k < n; k++ {
			out.SetSym(i, k, c.At(i, k)-less.At(i, k))
		}
	}
	return out
}
