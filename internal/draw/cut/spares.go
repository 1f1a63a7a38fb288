package cut

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/chance"
)

// SpareOptions say how many breaks to be ready for.
type SpareOptions struct {
	BreakRate float64 // breaks per drilled pane and season, a bare number
	Certainty float64 // probability that the spares last the season, all kinds together, from 0 to below 1
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

// stockStep is the finest step, in kilograms, in which spares are weighed
// against one another, and mostSteps how many of them the heaviest spare has.
const (
	stockStep = 0.01
	mostSteps = 500
)

// stock settles the spares of panes and covers: the least mass in all with
// which all kinds together last the season, see [chance.Stock].
func (l *List) stock() error {
	heaviest := 0.0
	for k := range l.kinds() {
		heaviest = max(heaviest, k.Piece)
	}
	step := max(stockStep, heaviest/mostSteps)
	var demands []chance.Demand
	for k := range l.kinds() {
		rate := l.Options.BreakRate
		if k.Cover {
			rate = l.Options.CoverRate
		}
		demands = append(demands, chance.Demand{Mean: rate * float64(k.InUse()), Weight: max(1, int(math.Round(k.Piece/step)))})
	}
	spares, reached, err := chance.Stock(l.Options.Certainty, demands)
	if err != nil {
		return fmt.Errorf("spares: %w", err)
	}
	l.Reached = reached
	for k := range l.kinds() {
		k.Spares, spares = spares[0], spares[1:]
	}
	return nil
}
