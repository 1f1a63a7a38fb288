package choose

import (
	"context"
	"math"
	"slices"

	"example.org/rinkpane/internal/decide/solve"
)

// Samples is what other samples of as many moments say of the best set: the proof
// holds for the moments that were looked at, and for no others.
type Samples struct {
	Number int     // of other samples
	Low    float64 // least and most that the set is worth in them, without unit
	High   float64 // without unit
	// Regret is the most by which another set is better in one of them, without
	// unit: what the proof may cost somebody who believes it.
	Regret float64
}

// otherSamples is how many other samples are made.
const otherSamples = 4

// others asks other samples about the best set: each is scored and solved anew,
// with seeds that follow the answer's. Tracks are one sample; there is no other.
func (s *Study) others(ctx context.Context, out *Answer, best solve.Result) {
	if s.opt.Set != nil || len(best.Set) == 0 {
		return
	}
	found := Samples{Number: otherSamples, Low: math.Inf(1), High: math.Inf(-1)}
	for k := range otherSamples {
		opt := s.opt
		opt.Seed, opt.Tell = s.opt.Seed+uint64(k)+1, nil
		// Barred places are many and take no part, but for one that must be kept.
		opt.Plain = opt.Plain || best.Set[len(best.Set)-1] < s.open
		other, err := Prepare(ctx, s.arena, s.sets, s.kit, opt)
		if err != nil { // only ctx's: the options were good before
			out.Unfinished = append(out.Unfinished, "other samples")
			return
		}
		s.opt.tell(Report{Stage: "other samples", Share: float64(k+1) / otherSamples, Value: best.Value, Bound: best.Bound})
		value := other.solver.Value(best.Set)
		found.Low, found.High = min(found.Low, value), max(found.High, value)
		found.Regret = max(found.Regret, other.solver.Solve(ctx, furtherNodes, nil).Value-value)
	}
	out.Others = found
}

// sure is how many standard errors to either side hold 95 % of a normal
// distribution: 1.95996.
const sure = 1.959964

// margin is half the 95 % interval of the difference of two sets' values over all
// moments that the sampler may draw, without unit; of one set's value where the
// other is nil. Both sets are judged by the same moments, so that what moves both
// alike falls out (common random numbers):
//
//	margin = 1.96 sqrt( sum over m of w_m^2 (d_m - d)^2 ),   d = sum of w_m d_m
//
// with d_m the difference in moment m: the standard error of a mean with weights,
// the weights scaled to a sum of 1 (linearised ratio estimator; Cochran, Sampling
// Techniques, chapter 6). Moments are drawn independently. Crews are held as they
// are best for these moments.
func (s *Solver) margin(a, b []int) float64 {
	d := make([]float64, s.problem.Moments)
	for k, set := range [2][]int{a, b} {
		sign := float64(1 - 2*k)
		s.views(set, func(m int, one, two float32) { d[m] += sign * (float64(one) + s.problem.Second*float64(two)) })
	}
	var mean, sum float64
	for m, w := range s.weight {
		mean += w * d[m]
	}
	for m, w := range s.weight {
		sum += w * w * (d[m] - mean) * (d[m] - mean)
	}
	return sure * math.Sqrt(sum)
}

// asGood returns the places that may stand for the k-th of a set: the run of
// neighbours along the boards, itself among them, with which the set stays legal and
// within the margin of the best.
func (s *Study) asGood(set []int, k int) []Candidate {
	rest := without(set, k)
	value := s.solver.Value(set)
	own := s.places[set[k]]
	good := func(i int) bool {
		if i == set[k] {
			return true
		}
		swapped := slices.Sorted(slices.Values(append(slices.Clone(rest), i)))
		if !s.problem.Allows(swapped) {
			return false
		}
		lost := value - s.solver.Value(swapped)
		return lost < nearEnough && lost <= s.solver.margin(set, swapped)
	}
	var level []int // places of the same height, in station order
	for i := range s.open {
		if s.places[i].Hole.Height == own.Hole.Height || i == set[k] {
			level = append(level, i)
		}
	}
	at := slices.Index(level, set[k])
	if at < 0 { // a place that a rule bars, kept by the user's word
		return []Candidate{own}
	}
	from, to := at, at
	for from > 0 && good(level[from-1]) {
		from--
	}
	for to+1 < len(level) && good(level[to+1]) {
		to++
	}
	return s.pick(level[from : to+1])
}

// nearEnough is the loss, without unit, above which no margin is worked out: far
// above the margin of any two sets of 1,000 moments that differ by a hole.
const nearEnough = 0.02
