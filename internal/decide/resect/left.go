package resect

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"example.org/rinkpane/internal/measure/geom"
)

// left is what a fit leaves over.
type left struct {
	cov    *mat.SymDense // of the free numbers, in the fit's own sigma
	slopes *mat.Dense
	marks  []float64 // rows of marks, over sigma
	dof    float64   // of the marks: rows less what they tell
	sigma  float64   // px
}

// left returns what a fit leaves over. The marks' degrees of freedom are their rows less
// the trace of the hat matrix over them: what is known beforehand tells its share.
func (m *model) left(x []float64) left {
	marks, _ := m.rows(x)
	j := m.slopes(x)
	a, _ := m.normal(x)
	var chol mat.Cholesky
	out := left{slopes: j, marks: marks, cov: mat.NewSymDense(len(m.free), nil)}
	if chol.Factorize(a) {
		_ = chol.InverseTo(out.cov) // a badly conditioned inverse tells a wide ellipse, as it should
	}
	rss, rows := 0.0, 0
	for i := 0; i < len(marks); i += 2 {
		if !m.used[i/2] {
			continue
		}
		h := out.hat(i)
		rows += 2
		out.dof -= h[0] + h[2]
		rss += marks[i]*marks[i] + marks[i+1]*marks[i+1]
	}
	out.dof += float64(rows)
	out.sigma = m.sigma * math.Sqrt(rss/max(out.dof, 1e-9))
	return out
}

// mark returns the frame and the place in it of the mark with a number among all.
func (m *model) mark(n int) (frame, mark int) {
	for i, f := range m.frames {
		if n < len(f.Marks) {
			return i, n
		}
		n -= len(f.Marks)
	}
	return len(m.frames), 0
}

// hat returns the hat matrix of the mark whose rows begin at i: xx, xy, yy.
func (l left) hat(i int) (h [3]float64) {
	a, b := l.slopes.RowView(i), l.slopes.RowView(i+1)
	return [3]float64{mat.Inner(a, l.cov, a), mat.Inner(a, l.cov, b), mat.Inner(b, l.cov, b)}
}

// whole returns r' (I - H)^-1 r of a used mark, or r' (I + H)^-1 r of one that is not:
// what the sum of squares would lose, or gain, without or with it.
func (l left) whole(i int, used bool) float64 {
	h, sign := l.hat(i), 1.0
	if used {
		sign = -1
	}
	xx, xy, yy := 1+sign*h[0], sign*h[1], 1+sign*h[2]
	u, v := l.marks[i], l.marks[i+1]
	det := xx*yy - xy*xy
	if !(det > 1e-12) {
		return 0
	}
	return (yy*u*u - 2*xy*u*v + xx*v*v) / det
}

// radius2 is the square of how many standard deviations hold 95 % of the places: twice
// the F distribution's 95 % point of 2 and dof degrees of freedom, in closed form. Of
// the place's variance only a share grows with the marks' errors, whose size is an
// estimate; the rest is known beforehand. By Satterthwaite (1946) that makes dof/share^2.
func (l left) radius2(share float64) float64 {
	dof := l.dof / max(share*share, 1e-6)
	if l.dof < 0.5 || dof > 1e6 {
		return -2 * math.Log(1-sure)
	}
	return dof * (math.Pow(1-sure, -2/dof) - 1)
}

// byMarks is the part of the covariance that grows with the square of the marks' errors:
// C J'J C over the rows of the marks that are used.
func (l left) byMarks(used []bool) *mat.SymDense {
	n := l.cov.SymmetricDim()
	half := mat.NewDense(2*len(used), n, nil)
	half.Mul(l.slopes.Slice(0, 2*len(used), 0, n), l.cov)
	for i, u := range used {
		if !u {
			half.SetRow(2*i, make([]float64, n))
			half.SetRow(2*i+1, make([]float64, n))
		}
	}
	out := mat.NewSymDense(n, nil)
	out.SymOuterK(1, half.T())
	return out
}

const (
	sure    = 0.95
	strange = 0.001 // how seldom any mark that belongs is taken for one that does not
	finest  = 0.25  // px: marks whose errors are smaller are not held against one another
)

// chance of a squared error q of two rows, over their variance, as large or larger.
func chance(q, variance, dof float64) float64 {
	return math.Pow(1+q/variance/dof, -dof/2)
}

// forgive leaves out for the start what lies far off a robust fit.
func (m *model) forgive(x []float64) {
	var off []float64
	marks, _ := m.rows(x)
	for i := 0; i < len(marks); i += 2 {
		off = append(off, math.Hypot(marks[i], marks[i+1])*m.sigma)
	}
	sorted := slices.Clone(off)
	slices.Sort(sorted)
	limit := forgiven * max(1, sorted[len(sorted)/2]/1.1774) // the median of a Rayleigh distribution is 1.1774 sigma
	for n, px := range off {
		m.used[n] = px <= limit
	}
	if !m.enough() {
		m.all()
	}
}

// sort takes marks in that fit the others after all, then leaves out, one by one, those
// that the others speak against.
func (m *model) sort(x []float64) {
	for changed := true; changed; {
		changed = false
		l := m.left(x)
		for n := range len(l.marks) / 2 {
			if !m.used[n] && l.dof >= 1 && chance(l.whole(2*n, false), sq(max(l.sigma, finest)/m.sigma), l.dof) > strange/float64(len(l.marks)/2) {
				m.used[n], changed = true, true
			}
		}
		if changed {
			m.fit(x)
		}
	}
	for m.drop(x) {
		m.fit(x)
	}
}

// drop leaves out the mark that the others speak against most, if they do at all.
func (m *model) drop(x []float64) bool {
	l := m.left(x)
	dof := l.dof - 2
	if dof < 0.9 {
		return false
	}
	worst, at, count := 0.0, -1, 0
	for n := range len(l.marks) / 2 {
		if m.used[n] {
			count++
			if q := l.whole(2*n, true); q > worst {
				worst, at = q, n
			}
		}
	}
	rss := l.dof * sq(l.sigma/m.sigma)
	if at < 0 || chance(worst, max((rss-worst)/dof, sq(finest/m.sigma)), dof) > strange/float64(count) {
		return false
	}
	m.used[at] = false
	if m.enough() {
		return true
	}
	m.used[at] = true
	return false
}

func sq(x float64) float64 { return x * x }

// slope returns the derivatives by the free numbers of where a frame sees a place, over
// sigma: two rows.
func (m *model) slope(x []float64, frame int, p geom.Vec3) *mat.Dense {
	out := mat.NewDense(2, len(m.free), nil)
	y := slices.Clone(x[frame*numbers : (frame+1)*numbers])
	for j, k := range m.free {
		own := k - frame*numbers
		if own < 0 || own >= numbers {
			continue
		}
		was := y[own]
		y[own] = was + probe
		hx, hy := m.lens(y).sees(p)
		y[own] = was - probe
		lx, ly := m.lens(y).sees(p)
		y[own] = was
		out.Set(0, j, (hx-lx)/(2*probe)/m.sigma)
		out.Set(1, j, (hy-ly)/(2*probe)/m.sigma)
	}
	return out
}
