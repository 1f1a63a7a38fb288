// Package chance answers two questions about rare, independent events that
// come at a steady rate (broken panes, pucks through a hole, injuries):
//
//   - how well is the rate known after k events? [Garwood], [Rate.Interval]
//   - how many spares last with a given certainty? [PoissonQuantile]
//
// The model is the Poisson process: events do not cause one another and the
// rate does not change over the time watched.
//
//	P(K <= k) = Q(k+1, m)      m: mean count, Q: upper regularised incomplete gamma
//
// Limits: it says nothing of a rate that changes (a new pane, a rougher
// league), nor of events that come in bursts; then the true interval is wider.
package chance

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mathext"
)

// MaxCount is the largest number of events that this package takes: beyond
// it the incomplete gamma function loses digits and no rink breaks so much.
const MaxCount = 1_000_000

// MaxMean is the largest mean count, for the same reason.
const MaxMean = 1e6

// ErrRange marks a count, mean, level or exposure outside its valid range.
var ErrRange = errors.New("out of range")

// PoissonCDF returns P(K <= k) for a Poisson count K with the given mean
// (pure number, >= 0): Q(k+1, mean). It is 0 for k < 0 and NaN for a mean
// that is negative or not a number.
func PoissonCDF(k int, mean float64) float64 {
	switch {
	case math.IsNaN(mean) || mean < 0:
		return math.NaN()
	case k < 0:
		return 0
	case mean == 0:
		return 1
	case math.IsInf(mean, 1):
		return 0
	}
	return mathext.GammaIncRegComp(float64(k)+1, mean)
}

// PoissonQuantile returns the smallest count k with P(K <= k) >= certainty
// for a Poisson count with the given mean. So many spares last with at least
// that certainty. Valid for 0 <= mean <= MaxMean and 0 <= certainty < 1;
// outside it returns an error that wraps ErrRange.
func PoissonQuantile(certainty, mean float64) (int, error) {
	if !(certainty >= 0 && certainty < 1) {
		return 0, fmt.Errorf("certainty %g: %w, give one from 0 to below 1", certainty, ErrRange)
	}
	if !(mean >= 0 && mean <= MaxMean) {
		return 0, fmt.Errorf("mean count %g: %w, give one from 0 to %g", mean, ErrRange, float64(MaxMean))
	}
	// The distribution function rises with k, so the answer can be bisected;
	// the bracket starts at the mean and doubles.
	low, high := -1, int(mean)+1
	for PoissonCDF(high, mean) < certainty {
		low, high = high, 2*high
	}
	for high-low > 1 {
		mid := low + (high-low)/2
		if PoissonCDF(mid, mean) >= certainty {
			high = mid
		} else {
			low = mid
		}
	}
	return high, nil
}

// Interval is a closed range of a count or a rate, in the unit of what it
// bounds (a pure number for a count, events per unit of exposure for a rate).
type Interval struct{ Low, High float64 }

// Garwood returns the exact two-sided interval of a Poisson mean after k
// events, at the given level (0.95 for 95 %). Each tail holds (1-level)/2:
//
//	P(K >= k | Low) = P(K <= k | High) = (1-level)/2,   Low = 0 for k = 0
//
// It never covers less than level and, since counts are whole, mostly more.
// Source: F. Garwood, Biometrika 28 (1936) 437. Valid for 0 <= k <= MaxCount
// and 0 < level < 1; outside it returns an error that wraps ErrRange.
func Garwood(k int, level float64) (Interval, error) {
	if k < 0 || k > MaxCount {
		return Interval{}, fmt.Errorf("%d events: %w, give 0 to %d", k, ErrRange, MaxCount)
	}
	if !(level > 0 && level < 1) {
		return Interval{}, fmt.Errorf("level %g: %w, give one between 0 and 1", level, ErrRange)
	}
	tail := (1 - level) / 2
	iv := Interval{High: mathext.GammaIncRegCompInv(float64(k)+1, tail)}
	if k > 0 {
		iv.Low = mathext.GammaIncRegInv(float64(k), tail)
	}
	return iv, nil
}

// Rate is a number of events seen over an exposure.
type Rate struct {
	Events   int
	Exposure float64 // in any unit of the caller's: hours, games, pane-seasons
}

// Value returns the observed rate, events per unit of exposure; NaN when the
// exposure is not above zero.
func (r Rate) Value() float64 {
	if !(r.Exposure > 0) {
		return math.NaN()
	}
	return float64(r.Events) / r.Exposure
}

// Interval returns the exact two-sided interval of the rate (events per unit
// of exposure): Garwood's interval of the count over the exposure. The error
// wraps ErrRange when the exposure is not above zero or Garwood's range is left.
func (r Rate) Interval(level float64) (Interval, error) {
	if !(r.Exposure > 0) || math.IsInf(r.Exposure, 1) {
		return Interval{}, fmt.Errorf("exposure %g: %w, give one above zero", r.Exposure, ErrRange)
	}
	iv, err := Garwood(r.Events, level)
	if err != nil {
		return Interval{}, err
	}
	return Interval{Low: iv.Low / r.Exposure, High: iv.High / r.Exposure}, nil
}
