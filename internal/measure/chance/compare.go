package chance

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mathext"
)

// AtLeast returns the binomial probability, from 0 to 1, of k or more hits in n tries
// that hit with probability p each:
//
//	P(K >= k) = I_p(k, n-k+1)      I: regularised incomplete beta function
//
// It is 1 for k <= 0, 0 for k > n, and NaN for p outside 0 to 1. Given n events of
// Poisson processes of one rate, the count of a process with the share p of the
// exposure is such a count, so that this is the exact conditional test of its rate
// against the others' (Przyborowski and Wilenski, Biometrika 31 (1940) 313).
func AtLeast(k, n int, p float64) float64 {
	switch {
	case math.IsNaN(p) || p < 0 || p > 1:
		return math.NaN()
	case k <= 0:
		return 1
	case k > n:
		return 0
	}
	return mathext.RegIncBeta(float64(k), float64(n-k)+1, p)
}

// Holm adjusts probabilities for how many there are, so that one below a level is as
// rare by chance among all of them as one test alone is (S. Holm, Scandinavian Journal
// of Statistics 6 (1979) 65): in rising order p_1 <= ... <= p_m,
//
//	adjusted_i = max over j <= i of min(1, (m-j+1) p_j)
//
// in the order in which they were given.
func Holm(p []float64) []float64 {
	order := make([]int, len(p))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(p[a], p[b]) })
	out, most := make([]float64, len(p)), 0.0
	for j, i := range order {
		most = max(most, min(1, float64(len(p)-j)*p[i]))
		out[i] = most
	}
	return out
}
