package custody

import (
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/unit"
)

// Reading is a measured value with its expanded uncertainty.
type Reading struct {
	What  Quantity
	Value unit.Length
	U     unit.Length // expanded uncertainty, two standard deviations: k = 2
	Photo string      // key of a kept photo, "" for none
}

// Limits is what a drawing allows; a limit that is not known bounds nothing.
type Limits struct {
	What      Quantity
	Low, High unit.Maybe[unit.Length]
}

// Verdict is the answer to a measurement or to an inspection.
type Verdict string

// The verdicts.
const (
	Accepted Verdict = "accepted" // proved to be as drawn
	Rejected Verdict = "refused"  // proved not to be
	Unproved Verdict = "unproved" // this instrument cannot tell
)

// Finding is a reading that was judged.
type Finding struct {
	Reading
	Low, High unit.Maybe[unit.Length] // what the drawing allows
	Verdict   Verdict
	// Would is the coarsest usual instrument that proves one or the other if it reads
	// the same; nil when the reading is proved, or none would do.
	Would *Instrument
}

// Judge judges a reading by the decision rule of ISO 14253-1 with the whole expanded
// uncertainty U on either side of a limit:
//
//	accepted   Low + U <= value <= High - U       the limits, reduced by U
//	refused    value < Low - U or value > High + U   the limits, grown by U
//	unproved   between the two
//
// Source: ISO 14253-1 (proving conformity and nonconformity), and JCGM 106:2012,
// 8.3.2 (guarded acceptance with a guard band of U = 2u).
func Judge(r Reading, l Limits) Finding {
	f := Finding{Reading: r, Low: l.Low, High: l.High, Verdict: Unproved}
	inside := l.margin(r.Value)
	switch {
	case inside >= r.U-rounding:
		f.Verdict = Accepted
	case -inside > r.U+rounding:
		f.Verdict = Rejected
	default:
		f.Would = within(r.What, unit.Length(math.Abs(inside.Metres())), r.U)
	}
	return f
}

// rounding is what a value may differ by from one that was typed in other units.
const rounding = 1e-9 * unit.Metre

// margin returns how far inside its limits a value lies, negative outside.
func (l Limits) margin(v unit.Length) unit.Length {
	m := unit.Length(math.Inf(1))
	if low, is := l.Low.Get(); is {
		m = min(m, v-low)
	}
	if high, is := l.High.Get(); is {
		m = min(m, high-v)
	}
	return m
}

// within returns the coarsest instrument whose uncertainty is no more than a margin
// and less than the one that could not tell.
func within(q Quantity, margin, used unit.Length) *Instrument {
	for _, i := range Instruments() {
		if i.U <= margin && i.U < used && slices.Contains(i.For, q) {
			return &i
		}
	}
	return nil
}

// Conformance returns the probability, from 0 to 1, that a quantity lies within its
// limits when it was read with a normal error: JCGM 106:2012, equation (9) and
// following,
//
//	p = F((High - value)/u) - F((Low - value)/u),   u = U/2
func (f Finding) Conformance() float64 {
	u := (f.U / 2).Metres()
	below := func(limit unit.Maybe[unit.Length], none float64) float64 {
		l, is := limit.Get()
		if !is {
			return none
		}
		if u == 0 {
			return math.Round((math.Copysign(1, (l-f.Value).Metres()) + 1) / 2)
		}
		return (1 + math.Erf((l-f.Value).Metres()/u/math.Sqrt2)) / 2
	}
	return below(f.High, 1) - below(f.Low, 0)
}
