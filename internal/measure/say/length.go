package say

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// AtLeast is a length that must be reached: it is rounded up to what
// [unit.Length.Format] shows, so that the figure is never too little.
type AtLeast unit.Length

// Say prints the length, rounded up.
func (l AtLeast) Say(sys unit.System) string {
	step := shown(unit.Length(l), sys)
	return (unit.Length(math.Ceil(float64(unit.Length(l)/step)-stepSlack)) * step).Format(sys)
}

// AtMost is a length that must not be passed: it is rounded down likewise.
type AtMost unit.Length

// Say prints the length, rounded down.
func (l AtMost) Say(sys unit.System) string {
	step := shown(unit.Length(l), sys)
	return (unit.Length(math.Floor(float64(unit.Length(l)/step)+stepSlack)) * step).Format(sys)
}

// Fine is a length as on a drawing: [unit.Length.FormatFine].
type Fine unit.Length

// Say prints the length as on a drawing.
func (l Fine) Say(sys unit.System) string { return unit.Length(l).FormatFine(sys) }

// stepSlack is the part of a step by which a sum of rounded lengths may be off.
const stepSlack = 1e-3

// shown returns the step to which lengths near x are printed.
func shown(x unit.Length, sys unit.System) unit.Length {
	a := max(x, -x)
	if sys == unit.Imperial {
		switch {
		case a < unit.Inch/4:
			return unit.Inch / 64
		case a < 4*unit.Inch:
			return unit.Inch / 16
		case a < 4*unit.Foot:
			return unit.Inch / 8
		}
		return unit.Inch / 4
	}
	switch {
	case a < 10*unit.Millimetre:
		return unit.Millimetre / 100
	case a < 100*unit.Millimetre:
		return unit.Millimetre / 10
	case a < unit.Metre:
		return unit.Millimetre
	}
	return unit.Centimetre
}
