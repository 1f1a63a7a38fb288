package chart

import (
	"cmp"
	"math"
)

// Scales that a drawing at paper's size is drawn at. ISO 5455:1979 recommends
// 1, 2 and 5 times powers of ten and allows those between where a sheet is too
// small for the next one up; 2.5, 3 and 4 stand on common scale rules (common
// practice, no published source).
var (
	recommended = []float64{1, 2, 5, 10}
	between     = []float64{1, 2, 2.5, 3, 4, 5, 10}
)

// mostLoss is how much smaller, as a factor, a recommended scale may make a
// drawing before one between is taken. Own choice.
const mostLoss = 1.25

// standardScale returns the scale, as 1 to a number, of the largest drawing that
// needs no more room than one of 1 to least.
func standardScale(least float64) float64 {
	if n := nextScale(recommended, least); n <= least*mostLoss {
		return n
	}
	return nextScale(between, least)
}

// onPaper returns the largest scale, in millimetres for a metre, that is a standard
// one on paper and no larger than another.
func (p Content) onPaper(scale float64) float64 {
	return mmPerMetre / standardScale(p.says(scale)) / cmp.Or(p.Zoom, 1)
}

// says returns what a scale in millimetres for a metre is on paper, as 1 to a number.
func (p Content) says(scale float64) float64 { return mmPerMetre / (scale * cmp.Or(p.Zoom, 1)) }

// nextScale returns the least of some numbers times a power of ten that is no
// less than another.
func nextScale(steps []float64, least float64) float64 {
	const slack = 1e-9
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, s := range steps {
		if s*power >= least*(1-slack) {
			return s * power
		}
	}
	return 10 * power
}
