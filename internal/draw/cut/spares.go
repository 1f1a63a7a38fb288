package cut

import (
	"fmt"

	"example.org/rinkpane/internal/measure/chance"
)

// SpareOptions say how many breaks to be ready for.
type SpareOptions struct {
	BreakRate float64 // breaks per drilled pane and season, a bare number
	Certainty float64 // probability that the spares last the season, from 0 to below 1
	CoverRate float64 // covers lost or broken per hole and season, a bare number
}

// DefaultSpareOptions returns 0.15 breaks a pane and season, 0.3 covers lost a
// hole and season, 95 % certainty: own assumptions; a rink's own record is better.
func DefaultSpareOptions() SpareOptions {
	return SpareOptions{BreakRate: 0.15, Certainty: 0.95, CoverRate: 0.3}
}

// check refuses rates and certainties that mean nothing.
func (o SpareOptions) check() error {
	const most = 1000.0 // breaks or losses a season and piece
	switch {
	case !(o.BreakRate >= 0 && o.BreakRate <= most):
		return fmt.Errorf("break rate %g: give the breaks per drilled pane and season, from 0 to %g", o.BreakRate, most)
	case !(o.CoverRate >= 0 && o.CoverRate <= most):
		return fmt.Errorf("cover rate %g: give the covers lost or broken per hole and season, from 0 to %g", o.CoverRate, most)
	case !(o.Certainty >= 0 && o.Certainty < 1):
		return fmt.Errorf("certainty %g: give one from 0 to below 1, as 0.95", o.Certainty)
	}
	return nil
}

// Spares returns how many spare pieces last a season with the certainty asked
// when each of n pieces breaks at the rate, by the exact Poisson distribution.
func Spares(n int, rate, certainty float64) (int, error) {
	if n < 0 || !(rate >= 0 && rate <= 1000) {
		return 0, fmt.Errorf("%d pieces, %g breaks each: give 0 or more pieces and a rate from 0 to 1000", n, rate)
	}
	return chance.PoissonQuantile(certainty, float64(n)*rate)
}
