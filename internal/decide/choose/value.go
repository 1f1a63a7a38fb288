package choose

import (
	"math"

	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/cores"
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
// the set's value, without unit; minus infinity for the others.
func (r *ranking) Gains(set []int, may func(i int) bool) []float64 {
	p := r.problem
	one, two := r.one, r.two
	clear(one)
	clear(two)
	for _, i := range set {
		top2(one, two, p.Row(i))
	}
	out := make([]float64, p.Candidates())
	var open []int
	for i := range out {
		if out[i] = math.Inf(-1); may(i) {
			open = append(open, i)
		}
	}
	cores.Each(len(open), func(k int) { out[open[k]] = r.gain(p.Row(open[k]), one, two) })
	return out
}

func (r *ranking) gain(row, one, two []float32) float64 {
	var sum float64
	for m, c := range row {
		if c > two[m] {
			if c > one[m] {
				sum += r.weight[m] * (float64(c) - float64(one[m]) + r.second*(float64(one[m])-float64(two[m])))
			} else {
				sum += r.weight[m] * r.second * (float64(c) - float64(two[m]))
			}
		}
	}
	return sum
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
