package resect

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"example.org/rinkpane/internal/measure/geom"
)

// What is known before any mark is seen (own choice, no published source).
const (
	usualBack  = 0.15 // metres from the glass's rink face to the eye, along the axis
	backSpread = 0.15 // its standard deviation: lenses differ, hands move
	play       = 0.02 // metres, a standard deviation: how far from the hole's middle an axis passes, where frames share one hole
)

// model is what is fitted: the frames of one hole, each told by its numbers, and, of
// several frames, the place that they share behind them.
type model struct {
	boards
	frames []Frame
	at     [][]geom.Vec3 // of each frame's marks
	used   []bool        // of all marks, frame by frame
	sigma  float64       // px: size of the marks' errors in each direction
	robust float64       // px beyond which an error counts less and less; 0: all count alike
	free   []int         // which of the numbers are fitted
	gone   func() bool   // whoever asked waits no longer: fits end where they are
}

// shared says where the place stands that several frames share: behind all numbers.
func (m *model) shared() int { return numbers * len(m.frames) }

// choose says which numbers are free: all but exactly known focal lengths.
func (m *model) choose() {
	m.free = nil
	for i, f := range m.frames {
		for k := range numbers {
			if exact := k == atFocal && f.Focal.length > 0 && f.Focal.spread == 0; !exact {
				m.free = append(m.free, i*numbers+k)
			}
		}
	}
	if len(m.frames) > 1 {
		m.free = append(m.free, m.shared()+atStation, m.shared()+atHeight)
	}
}

// rows returns the differences between what is observed and what the numbers say, each
// over its standard deviation: first two for each mark, then what is known beforehand.
func (m *model) rows(x []float64) (marks, known []float64) {
	marks, known = make([]float64, 0, 2*len(m.used)), make([]float64, 0, 4*len(m.frames))
	for i := range m.frames {
		marks, known = m.rowsOf(i, x, marks, known)
	}
	return marks, known
}

// rowsOf appends the rows of one frame.
func (m *model) rowsOf(i int, x, marks, known []float64) (_, _ []float64) {
	s, f, own := m.shared(), m.frames[i], x[i*numbers:(i+1)*numbers]
	cam := m.lens(own)
	cx, cy := f.middle()
	for k, mark := range f.Marks {
		px, py := cam.sees(m.at[i][k])
		marks = append(marks, (px+cx-mark.X)/m.sigma, (py+cy-mark.Y)/m.sigma)
	}
	known = append(known, (own[atBack]-usualBack)/backSpread)
	if f.Focal.spread > 0 {
		known = append(known, (own[atFocal]-math.Log(f.Focal.length.Metres()*f.across()))/f.Focal.spread)
	}
	if len(m.frames) > 1 {
		known = append(known, (own[atStation]-x[s+atStation])/play, (own[atHeight]-x[s+atHeight])/play)
	}
	return marks, known
}

// weigh returns the loss of all rows and weighs those of marks by the square root of
// their weight: Cauchy's loss c^2 log(1 + e^2/c^2) of a mark's whole error e, whose
// weight is 1/(1 + e^2/c^2). A mark that is not used has no loss and no weight.
func (m *model) weigh(marks, known []float64) (loss float64) {
	c := m.robust / m.sigma
	for i := 0; i < len(marks); i += 2 {
		e2 := marks[i]*marks[i] + marks[i+1]*marks[i+1]
		switch {
		case !m.used[i/2]:
			marks[i], marks[i+1] = 0, 0
			continue
		case c == 0:
			loss += e2
			continue
		}
		loss += c * c * math.Log1p(e2/(c*c))
		w := 1 / math.Sqrt(1+e2/(c*c))
		marks[i], marks[i+1] = marks[i]*w, marks[i+1]*w
	}
	for _, r := range known {
		loss += r * r
	}
	return loss
}

// step by which a number is moved to see what it does, in metres, radians or logarithm.
const probe = 1e-6

// slopes returns the rows' derivatives by the free numbers, by central differences. A
// frame's rows hang on its own numbers and on those that all share.
func (m *model) slopes(x []float64) *mat.Dense {
	marks, known := m.rows(x)
	out := mat.NewDense(len(marks)+len(known), len(m.free), nil)
	y := slices.Clone(x)
	row, rowKnown := 0, len(marks)
	var hi, lo, hiKnown, loKnown []float64
	for i := range m.frames {
		for j, k := range m.free {
			if k < m.shared() && k/numbers != i {
				continue
			}
			y[k] = x[k] + probe
			hi, hiKnown = m.rowsOf(i, y, hi[:0], hiKnown[:0])
			y[k] = x[k] - probe
			lo, loKnown = m.rowsOf(i, y, lo[:0], loKnown[:0])
			y[k] = x[k]
			differ(out, row, j, hi, lo)
			differ(out, rowKnown, j, hiKnown, loKnown)
		}
		row, rowKnown = row+len(hi), rowKnown+len(hiKnown)
	}
	return out
}

// differ writes central differences into a column, from a row on.
func differ(out *mat.Dense, row, column int, hi, lo []float64) {
	for i := range hi {
		out.Set(row+i, column, (hi[i]-lo[i])/(2*probe))
	}
}

// Limits of the fit: steps at most, tries to damp one, and the gain in loss, a share,
// below which it has arrived.
const (
	mostSteps = 80
	mostTries = 12
	arrived   = 1e-10
)

// fit moves the numbers to the least loss near them (Levenberg's and Marquardt's damped
// Gauss-Newton steps) and returns it.
func (m *model) fit(x []float64) float64 {
	damp := 1e-3
	marks, known := m.rows(x)
	loss := m.weigh(marks, known)
	for range mostSteps {
		if m.gone() {
			break
		}
		next, gained := m.step(x, loss, &damp)
		if !gained {
			break
		}
		done := loss-next <= arrived*(loss+arrived)
		if loss = next; done {
			break
		}
	}
	return loss
}

// step moves the numbers once, if that lessens the loss.
func (m *model) step(x []float64, loss float64, damp *float64) (float64, bool) {
	a, g := m.normal(x)
	n := len(m.free)
	y := make([]float64, len(x))
	for range mostTries {
		damped := mat.NewSymDense(n, nil)
		damped.CopySym(a)
		for i := range n {
			damped.SetSym(i, i, a.At(i, i)*(1+*damp)+1e-12)
		}
		var chol mat.Cholesky
		var d mat.VecDense
		if chol.Factorize(damped) && chol.SolveVecTo(&d, g) == nil {
			copy(y, x)
			for j, k := range m.free {
				y[k] -= d.AtVec(j)
			}
			marks, known := m.rows(y)
			if next := m.weigh(marks, known); next < loss {
				copy(x, y)
				*damp = max(*damp/5, 1e-12)
				return next, true
			}
		}
		*damp *= 6
	}
	return loss, false
}

// normal returns the normal equations' matrix and right side at some numbers.
func (m *model) normal(x []float64) (*mat.SymDense, *mat.VecDense) {
	marks, known := m.rows(x)
	j := m.slopes(x)
	plain := append([]float64(nil), marks...)
	m.weigh(marks, known)
	for i := range marks { // rows of derivatives get the weight of their errors
		if w := ratio(marks[i], plain[i]); w != 1 {
			for k := range m.free {
				j.Set(i, k, j.At(i, k)*w)
			}
		}
	}
	r := mat.NewVecDense(len(marks)+len(known), append(marks, known...))
	var g mat.VecDense
	g.MulVec(j.T(), r)
	a := mat.NewSymDense(len(m.free), nil)
	a.SymOuterK(1, j.T())
	return a, &g
}

func ratio(weighed, plain float64) float64 {
	if plain == 0 {
		return 1
	}
	return weighed / plain
}
