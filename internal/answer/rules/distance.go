package rules

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// Distance is a limit of a rule: a plain length, or so many times the pane's
// thickness t plus a length, as the glazing trade writes it.
//
//	3 in            Distance{0, 76.2 mm}
//	6.5 t           Distance{6.5, 0}
//	t + 1/16 in     Distance{1, 1.5875 mm}
type Distance struct {
	Thicknesses float64 // factor of the pane's thickness, no unit
	Plus        unit.Length
}

// thicknessesMost is the greatest multiple of t that is read: no trade asks for more.
const thicknessesMost = 1000

// ParseDistance reads a distance. A length without its unit, a negative one and
// a multiple that is no number above zero are errors that say the cure.
func ParseDistance(s string) (Distance, error) {
	head, tail, sum := strings.Cut(s, "+")
	times, isT := strings.CutSuffix(strings.TrimSpace(head), "t")
	if !isT || strings.HasSuffix(times, "f") { // "5 ft" ends in t as well
		l, err := unit.ParseLength(s)
		return Distance{Plus: l}, err
	}
	d := Distance{Thicknesses: 1}
	if times = strings.TrimSpace(times); times != "" {
		k, err := strconv.ParseFloat(times, 64)
		if err != nil || math.IsNaN(k) || k <= 0 || k > thicknessesMost {
			return Distance{}, fmt.Errorf(`%q: write a number of the pane's thickness t, such as "2 t" or "t + 1/16 in"`, s)
		}
		d.Thicknesses = k
	}
	if !sum {
		return d, nil
	}
	var err error
	d.Plus, err = unit.ParseLength(strings.TrimSpace(tail))
	return d, err
}

// Of returns the distance for a pane of thickness t; ok is false when the
// thickness is needed and unknown.
func (d Distance) Of(t unit.Maybe[unit.Length]) (l unit.Length, ok bool) {
	if d.Thicknesses == 0 {
		return d.Plus, true
	}
	thick, ok := t.Get()
	return unit.Length(d.Thicknesses)*thick + d.Plus, ok
}

// readLeast reads a distance above zero.
func readLeast(m form.Map) Distance {
	d := form.Parse(m.At("least"), ParseDistance)
	if m.Has("least") && d == (Distance{}) {
		m.At("least").Failf("must be more than zero; leave the rule out instead")
	}
	return d
}

// Say prints the distance in a system's units.
func (d Distance) Say(sys unit.System) string {
	switch {
	case d.Thicknesses == 0:
		return d.Plus.Format(sys)
	case d.Plus == 0:
		return fmt.Sprintf("%g times the pane's thickness", d.Thicknesses)
	}
	return fmt.Sprintf("%g times the pane's thickness plus %s", d.Thicknesses, d.Plus.Format(sys))
}

// String returns the distance as it is written in a rule set, lengths in millimetres.
func (d Distance) String() string {
	switch {
	case d.Thicknesses == 0:
		return d.Plus.Format(unit.Metric)
	case d.Plus == 0:
		return fmt.Sprintf("%g t", d.Thicknesses)
	}
	return fmt.Sprintf("%g t + %s", d.Thicknesses, d.Plus.Format(unit.Metric))
}
