package chart

import (
	"math"
	"strconv"
)

// ticks returns round numbers, steps of 1, 2 or 5 times a power of ten, that
// cover lo to hi with about n steps: the first at or below lo, the last at or
// above hi. A range of hardly any extent is widened.
func ticks(lo, hi float64, n int) []float64 {
	if least := max(leastExtent, tellApart*max(math.Abs(lo), math.Abs(hi))); !(hi-lo > least) {
		half := max(0.5, least)
		lo, hi = lo-half, lo+half
	}
	return stepTicks(lo, hi, niceStep((hi-lo)/float64(max(n, 1))))
}

// An axis shorter than leastExtent, in its own unit, or than the share tellApart
// of its values shows rounding, under names of many digits.
const (
	leastExtent = 1e-6
	tellApart   = 1e-10
)

// stepTicks returns the multiples of a step that cover lo to hi.
func stepTicks(lo, hi, step float64) []float64 {
	first, last := math.Floor(lo/step+1e-9), math.Ceil(hi/step-1e-9)
	out := make([]float64, int(last-first)+1)
	for k := range out { // counted: adding 1 to a large float64 may leave it as it is
		out[k] = (first + float64(k)) * step
	}
	return out
}

// RoundValues returns round numbers between two of any one unit, both left out, in steps of 1, 2
// or 5 times a power of ten: n at least, but where the two are one.
func RoundValues(low, high float64, n int) []float64 {
	if !(high > low) {
		return nil
	}
	var out []float64
	for n := float64(n + 1); len(out) < int(n)-1; n++ {
		step := niceStep((high - low) / (2 * n))
		out = out[:0]
		for k := math.Floor(low/step) + 1; k*step < high; k++ {
			out = append(out, k*step)
		}
	}
	return out
}

// niceStep returns the least step of 1, 2 or 5 times a power of ten that is at
// least so large.
func niceStep(least float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(least)))
	for _, m := range []float64{1, 2, 5} {
		if m*p >= least*(1-1e-9) {
			return m * p
		}
	}
	return 10 * p
}

// tickName prints a tick with as many decimals as its step needs.
func tickName(v, step float64) string {
	decimals := max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
	if v == 0 {
		v = 0 // no minus before zero
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}
