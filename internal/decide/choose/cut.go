package choose

import "example.org/rinkpane/internal/decide/solve"

// The cuts of the value of a set of views.
//
// Proof. Write c_1 >= c_2 >= ... for a moment's scores and y for the choice. Its
// value c_best + d c_second is (1-d) F1 + d F2, where Fk is the sum of the k
// best chosen scores. For any p >= 0
//
//	Fk(y) = max { sum c_i x_i : sum x_i <= k, 0 <= x_i <= y_i }
//	     <= k p + sum of max(0, c_i - p) y_i
//
// since sum c_i x_i = sum p x_i + sum (c_i - p) x_i. Adding over the moments
// by weight with p from level 1 and q from level 2 gives
//
//	base    = sum w [ (1-d) p + 2 d q ]
//	slope_i = sum w [ (1-d) max(0, c_i - p) + d max(0, c_i - q) ].
//
// The bound is met at y when p and q are the scores at which the running sum of
// y down the list passes 1 and 2 (own derivation; the dual of the linear
// relaxation, whose bound the cuts together equal).

// Cuts returns for each part the cut that is met at y.
func (r *ranking) Cuts(y []float64) []solve.Cut {
	cs, _ := r.cutsAt(y)
	return cs
}

// cutsAt returns for each part the cut that is met at y, and the parts' values
// of the linear relaxation there. y lies in [0, 1]^n.
func (r *ranking) cutsAt(y []float64) (cs []solve.Cut, values [parts]float64) {
	n := r.problem.Candidates()
	if r.slopes == nil {
		r.slopes = make([]float64, chunks*parts*n)
	}
	slopes := r.slopes
	clear(slopes)
	var bases [chunks][parts]float64
	shareRuns(r.problem.Moments, func(run, from, to int) {
		sl := slopes[run*parts*n : (run+1)*parts*n]
		for m := from; m < to; m++ {
			part := int(r.part[m])
			bases[run][part] += r.moment(m, y, sl[part*n:(part+1)*n])
		}
	})
	cs = make([]solve.Cut, parts)
	for k := range cs {
		cs[k] = solve.Cut{Part: k, Slope: make([]float64, n)}
		for run := range chunks {
			cs[k].Base += bases[run][k]
			for i, s := range slopes[(run*parts+k)*n : (run*parts+k+1)*n] {
				cs[k].Slope[i] += s
			}
		}
		values[k] = cs[k].At(y)
	}
	return cs, values
}

// moment adds one moment's slopes and returns its base.
func (r *ranking) moment(m int, y, slope []float64) float64 {
	from, to := r.start[m], r.start[m+1]
	who, score := r.who[from:to], r.score[from:to]
	var p, q float64
	sum, last := 0.0, len(score)
	first := -1
	for k, i := range who {
		sum += y[i]
		if first < 0 && sum >= 1-cutSlack {
			first, p = k, float64(score[k])
		}
		if sum >= 2-cutSlack {
			last, q = k, float64(score[k])
			break
		}
	}
	w := r.weight[m]
	w1, w2 := w*(1-r.second), w*r.second
	for k, i := range who[:last] {
		c := float64(score[k])
		s := w2 * (c - q)
		if c > p {
			s += w1 * (c - p)
		}
		slope[i] += s
	}
	return w1*p + 2*w2*q
}

// cutSlack forgives the rounding of sums of y that should be whole.
const cutSlack = 1e-9
