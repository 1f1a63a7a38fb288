package choose

import (
	"math"

	"example.org/rinkpane/internal/decide/solve"
)

// Of returns the value of a set, without unit: over all moments by weight, the best score
// plus Second times the second best.
func (r *ranking) Of(set []int) float64 {
	var partial [chunks]float64
	p := r.problem
	shareRuns(p.Moments, func(run, from, to int) {
		one, two := r.one[from:to], r.two[from:to]
		clear(one)
		clear(two)
		for _, i := range set {
			top2(one, two, p.Row(i)[from:to])
		}
		var sum float64
		for k := range one {
			sum += r.weight[from+k] * (float64(one[k]) + r.second*float64(two[k]))
		}
		partial[run] = sum
	})
	var sum float64
	for _, s := range partial {
		sum += s
	}
	return sum
}

// top2 takes a row of scores into the best and second best so far.
func top2(one, two, row []float32) {
	for m, c := range row {
		if c > one[m] {
			one[m], two[m] = c, one[m]
		} else if c > two[m] {
			two[m] = c
		}
	}
}

// Gains returns for each candidate that may join a set what it would add to
// the set's value, without unit; minus infinity for the others. Only candidates
// above the second best view of a moment add anything to it: the top of its list.
func (r *ranking) Gains(set []int, may func(i int) bool) []float64 {
	n := r.problem.Candidates()
	in := make([]bool, n)
	for _, i := range set {
		in[i] = true
	}
	partial := make([]float64, chunks*n)
	shareRuns(r.problem.Moments, func(run, from, to int) {
		sum := partial[run*n : (run+1)*n]
		for m := from; m < to; m++ {
			r.gain(m, in, sum)
		}
	})
	out := make([]float64, n)
	for i := range out {
		if !may(i) {
			out[i] = math.Inf(-1)
			continue
		}
		for run := range chunks {
			out[i] += partial[run*n+i]
		}
	}
	return out
}

// gain adds what each candidate outside a set would add to one moment.
func (r *ranking) gain(m int, in []bool, sum []float64) {
	who, score := r.who[r.start[m]:r.start[m+1]], r.score[r.start[m]:r.start[m+1]]
	first, second, end := 0.0, 0.0, len(who)
	best := end // where the set's best view stands in the list
	for k, i := range who {
		if !in[i] {
			continue
		}
		if best < end {
			second, end = float64(score[k]), k
			break
		}
		first, best = float64(score[k]), k
	}
	w := r.weight[m]
	for k, i := range who[:min(best, end)] {
		sum[i] += w * (float64(score[k]) - first + r.second*(first-second))
	}
	for k := best + 1; k < end; k++ {
		sum[who[k]] += w * r.second * (float64(score[k]) - second)
	}
}

// Spans returns the most that each part of the value can reach.
func (r *ranking) Spans() []solve.Span {
	out := make([]solve.Span, parts)
	for m, w := range r.weight {
		list := r.score[r.start[m]:r.start[m+1]]
		top := &out[r.part[m]].Most
		if len(list) > 0 {
			*top += w * float64(list[0])
		}
		if len(list) > 1 {
			*top += w * r.second * float64(list[1])
		}
	}
	return out
}
