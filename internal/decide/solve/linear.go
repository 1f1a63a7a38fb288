package solve

import "math"

// Linear is a worth of so much for each column, without unit: an assignment, a
// packing, a covering.
type Linear []float64

// Of adds up what the columns of a set are worth, without unit.
func (c Linear) Of(set []int) (sum float64) {
	for _, i := range set {
		sum += c[i]
	}
	return sum
}

// Spans returns the one part's span: all that is below zero to all that is above.
func (c Linear) Spans() []Span {
	var s Span
	for _, x := range c {
		s.Least, s.Most = s.Least+min(x, 0), s.Most+max(x, 0)
	}
	return []Span{s}
}

// Cuts returns the one cut that is the worth itself.
func (c Linear) Cuts([]float64) []Cut { return []Cut{{Slope: c}} }

// Gains returns each column's own worth, without unit.
func (c Linear) Gains(_ []int, may func(i int) bool) []float64 {
	out := make([]float64, len(c))
	for i, x := range c {
		if out[i] = x; !may(i) {
			out[i] = math.Inf(-1)
		}
	}
	return out
}
