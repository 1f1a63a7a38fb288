package solve

// Cut is a proved upper bound on one part of a worth that is linear in the
// choice: part(y) <= Base + sum of Slope_i y_i for every y in [0, 1]^n, hence
// for every set.
type Cut struct {
	Part  int
	Base  float64   // without unit
	Slope []float64 // by column, without unit

	idle int // rounds in which it was not tight
}

// At returns the cut's bound at a choice y in [0, 1]^n, without unit.
func (c *Cut) At(y []float64) float64 {
	sum := c.Base
	for i, s := range c.Slope {
		sum += s * y[i]
	}
	return sum
}
