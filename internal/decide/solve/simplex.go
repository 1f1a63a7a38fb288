package solve

import (
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
)

// simplex is a small linear program, maximised by the dual simplex method:
//
//	max cost.x   with  row.x + slack = b,   lo <= x <= hi,  0 <= slack <= room.
//
// Every variable and slack is boxed, so that any basis becomes dual feasible by
// moving the other variables to the right end of their boxes; a changed box or
// a new row is therefore mended from where the last solution stood.
//
// What it returns is a guide, not a proof: bounds are proved by [hunt.proved]
// from its dual prices and the program's own numbers.
//
// The tableau holds the basic variables in terms of the others:
// x_basic[r] = rhs[r] - sum over columns j of t[r][j] x_column[j].
type simplex struct {
	n    int // structural variables; slack r is variable n + r
	cost []float64
	rows []lpRow
	lo   []float64 // by variable
	hi   []float64

	basic  []int // variable by row
	column []int // variable by column
	where  []int // by variable: column j as j, row r as -1-r
	high   []bool
	t      [][]float64
	rhs    []float64
	d      []float64 // reduced costs by column
	x      []float64 // values of the basic variables by row
	pivots int
	ratios []ratio
}

// lpRow is one row as it was stated.
type lpRow struct {
	a []float64
	b float64
}

type ratio struct {
	j        int
	at, size float64
}

// How near is equal. Values are of order 1.
const (
	lpFeasible = 1e-9
	lpPivot    = 1e-9
	lpDual     = 1e-12
	lpSound    = 1e-7 // between a row's two sides
	refresh    = 3000 // pivots after which the tableau is built anew
	maxPivots  = 20_000
	// pivotsAtOnce is how many pivots pass between looks at the context.
	pivotsAtOnce = 32
)

func newSimplex(cost, lo, hi []float64) *simplex {
	n := len(cost)
	s := &simplex{n: n, cost: cost, lo: slices.Clone(lo), hi: slices.Clone(hi)}
	s.high = make([]bool, n)
	for j := range n {
		s.column, s.where = append(s.column, j), append(s.where, j)
	}
	s.d = slices.Clone(cost)
	return s
}

// addRow adds row a.x <= b with at most room below b; its slack starts basic.
func (s *simplex) addRow(a []float64, b, room float64) int {
	r := len(s.rows)
	s.rows = append(s.rows, lpRow{a, b})
	s.lo, s.hi, s.high = append(s.lo, 0), append(s.hi, room), append(s.high, false)
	t, rhs := make([]float64, s.n), b
	for v, c := range a {
		if c == 0 {
			continue
		}
		if w := s.where[v]; w >= 0 {
			t[w] += c
		} else {
			k := -1 - w
			for j, x := range s.t[k] {
				t[j] -= c * x
			}
			rhs -= c * s.rhs[k]
		}
	}
	s.t, s.rhs, s.x = append(s.t, t), append(s.rhs, rhs), append(s.x, 0)
	s.basic, s.where = append(s.basic, s.n+r), append(s.where, -1-r)
	return r
}

// box sets a variable's limits.
func (s *simplex) box(v int, lo, hi float64) { s.lo[v], s.hi[v] = lo, hi }

// held returns the value of the variable of column j.
func (s *simplex) held(j int) float64 {
	v := s.column[j]
	if s.high[v] {
		return s.hi[v]
	}
	return s.lo[v]
}

// value returns a variable's value in the last solution.
func (s *simplex) value(v int) float64 {
	if w := s.where[v]; w < 0 {
		return s.x[-1-w]
	} else {
		return s.held(w)
	}
}

// settle moves every non-basic variable to the end of its box where its
// reduced cost wants it, and works out the basic ones.
func (s *simplex) settle() {
	for j, v := range s.column {
		if s.d[j] > lpDual {
			s.high[v] = true
		} else if s.d[j] < -lpDual {
			s.high[v] = false
		}
	}
	for r := range s.t {
		x := s.rhs[r]
		for j, c := range s.t[r] {
			if c != 0 {
				x -= c * s.held(j)
			}
		}
		s.x[r] = x
	}
}

// solve runs the dual simplex; it returns false when the program seems to have
// no solution, with the row that shows it, or with row -1 after too many pivots
// or the end of ctx.
func (s *simplex) solve(ctx context.Context) (row int, ok bool) {
	s.settle()
	for k := range maxPivots {
		if k%pivotsAtOnce == 0 && ctx.Err() != nil {
			break
		}
		if s.pivots >= refresh {
			s.rebuild()
			s.settle()
		}
		r, below := s.worst()
		if r < 0 {
			return -1, true
		}
		j := s.entering(r, below)
		if j < 0 {
			return r, false
		}
		s.exchange(r, j, below)
	}
	return -1, false // unfinished: its prices still prove a bound, if a weak one
}

// sound reports whether the last solution keeps the rows as they were stated.
// Many pivots, or a small one, can leave a tableau that no longer tells them.
func (s *simplex) sound() bool {
	for r, row := range s.rows {
		sum := s.value(s.n+r) - row.b
		for v, a := range row.a {
			if a != 0 {
				sum += a * s.value(v)
			}
		}
		if math.Abs(sum) > lpSound {
			return false
		}
	}
	return true
}

// worst returns the row whose basic variable is farthest outside its box.
func (s *simplex) worst() (row int, below bool) {
	row, most := -1, lpFeasible
	for r, v := range s.basic {
		if d := s.lo[v] - s.x[r]; d > most {
			row, most, below = r, d, true
		}
		if d := s.x[r] - s.hi[v]; d > most {
			row, most, below = r, d, false
		}
	}
	return row, below
}

// entering picks the column that takes the place of row r's variable: the one
// whose reduced cost reaches zero first, passing by those that can reach the
// other end of their boxes without mending the row (they are moved there).
func (s *simplex) entering(r int, below bool) int {
	lack := s.x[r] - s.hi[s.basic[r]]
	sign := 1.0 // x falls when a variable at its low end with t > 0 rises
	if below {
		lack, sign = s.lo[s.basic[r]]-s.x[r], -1
	}
	s.ratios = s.ratios[:0]
	for j, c := range s.t[r] {
		v := s.column[j]
		a := sign * c
		if s.high[v] {
			a = -a
		}
		if a <= lpPivot || s.hi[v] == s.lo[v] {
			continue
		}
		s.ratios = append(s.ratios, ratio{j, math.Abs(s.d[j]) / a, a})
	}
	slices.SortFunc(s.ratios, func(a, b ratio) int {
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		case a.size > b.size: // the larger pivot is the safer one
			return -1
		case a.size < b.size:
			return 1
		}
		return a.j - b.j
	})
	for _, k := range s.ratios {
		v := s.column[k.j]
		lack -= k.size * (s.hi[v] - s.lo[v])
		if lack <= 0 {
			return k.j
		}
	}
	if n := len(s.ratios); n > 0 && lack <= lpFeasible { // short by rounding only
		return s.ratios[n-1].j
	}
	return -1
}

// exchange flips the columns that entering passed by and pivots.
func (s *simplex) exchange(r, j int, below bool) {
	for _, k := range s.ratios {
		if k.j == j {
			break
		}
		v := s.column[k.j]
		step := s.hi[v] - s.lo[v]
		if s.high[v] {
			step = -step
		}
		s.high[v] = !s.high[v]
		for i := range s.t {
			s.x[i] -= s.t[i][k.j] * step
		}
	}
	out := s.basic[r]
	goal := s.hi[out]
	if below {
		goal = s.lo[out]
	}
	step := (s.x[r] - goal) / s.t[r][j]
	now := s.held(j) + step
	for i := range s.t {
		s.x[i] -= s.t[i][j] * step
	}
	s.pivot(r, j)
	s.x[r] = now
	s.high[out] = !below
}

// pivot makes column j's variable basic in row r.
func (s *simplex) pivot(r, j int) {
	s.pivots++
	row := s.t[r]
	inv := 1 / row[j]
	for k := range row {
		row[k] *= inv
	}
	row[j] = inv
	s.rhs[r] *= inv
	for i, other := range s.t {
		f := other[j]
		if i == r || f == 0 {
			continue
		}
		other[j] = 0
		axpy(other, -f, row)
		s.rhs[i] -= f * s.rhs[r]
	}
	f := s.d[j]
	s.d[j] = 0
	axpy(s.d, -f, row)
	out, in := s.basic[r], s.column[j]
	s.basic[r], s.column[j] = in, out
	s.where[in], s.where[out] = -1-r, j
}

// axpy adds f times x to y.
func axpy(y []float64, f float64, x []float64) { floats.AddScaled(y, f, x) }

// rebuild makes the tableau anew from the rows as stated, for the same basis,
// which clears the rounding of many pivots.
func (s *simplex) rebuild() {
	want := make([]bool, len(s.where)) // basic
	for _, v := range s.basic {
		want[v] = true
	}
	for j := range s.n {
		s.column[j], s.where[j] = j, j
	}
	copy(s.d, s.cost)
	for r := range s.rows {
		copy(s.t[r], s.rows[r].a)
		s.rhs[r], s.basic[r], s.where[s.n+r] = s.rows[r].b, s.n+r, -1-r
	}
	for v := range s.n {
		if !want[v] {
			continue
		}
		// The largest element among the rows whose slack must leave.
		best, size := -1, lpPivot
		for r, b := range s.basic {
			if b >= s.n && !want[b] {
				if a := math.Abs(s.t[r][s.where[v]]); a > size {
					best, size = r, a
				}
			}
		}
		if best >= 0 { // else the basis was singular by rounding: v stays out
			s.pivot(best, s.where[v])
		}
	}
	s.pivots = 0
}

// price returns row r's dual price, at least 0 for a row that may not be
// passed; 0 when the row is not tight.
func (s *simplex) price(r int) float64 {
	if w := s.where[s.n+r]; w >= 0 {
		return -s.d[w]
	}
	return 0
}

// dropRows removes the rows for which drop says so; only rows whose slack is
// basic may go. The others keep their order.
func (s *simplex) dropRows(drop func(r int) bool) (kept []int) {
	gone := make([]bool, len(s.rows))
	for r := range s.rows {
		if s.where[s.n+r] < 0 && drop(r) {
			gone[-1-s.where[s.n+r]] = true
		} else {
			kept = append(kept, r)
		}
	}
	renamed := map[int]int{}
	for to, from := range kept {
		renamed[s.n+from] = s.n + to
	}
	rename := func(v int) int {
		if v < s.n {
			return v
		}
		return renamed[v]
	}
	// The tableau's rows go by position, the stated rows by number.
	at := 0
	for i := range s.t {
		if gone[i] {
			continue
		}
		s.t[at], s.rhs[at], s.x[at], s.basic[at] = s.t[i], s.rhs[i], s.x[i], rename(s.basic[i])
		at++
	}
	s.t, s.rhs, s.x, s.basic = s.t[:at], s.rhs[:at], s.x[:at], s.basic[:at]
	for to, from := range kept {
		s.rows[to], s.lo[s.n+to], s.hi[s.n+to], s.high[s.n+to] = s.rows[from], s.lo[s.n+from], s.hi[s.n+from], s.high[s.n+from]
	}
	s.rows = s.rows[:at]
	all := s.n + at
	s.lo, s.hi, s.high, s.where = s.lo[:all], s.hi[:all], s.high[:all], s.where[:all]
	for j, v := range s.column {
		s.column[j] = rename(v)
		s.where[s.column[j]] = j
	}
	for r, v := range s.basic {
		s.where[v] = -1 - r
	}
	return kept
}
