package custody_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/measure/unit"
)

const mm = unit.Millimetre

func limits(low, high float64) custody.Limits {
	l := custody.Limits{What: custody.Width}
	if !math.IsInf(low, 0) {
		l.Low = unit.Known(unit.Length(low) * mm)
	}
	if !math.IsInf(high, 0) {
		l.High = unit.Known(unit.Length(high) * mm)
	}
	return l
}

func reading(value, u float64) custody.Reading {
	return custody.Reading{What: custody.Width, Value: unit.Length(value) * mm, U: unit.Length(u) * mm}
}

// The worked cases of JCGM 106:2012, clause 7, from memory, numbers without their unit:
// a breakdown voltage of -5.47 V, u 0.05 V, that may be -5.40 V at most, conforms with
// 0.92; a resistor of 1500.09 ohm, u 0.12 ohm, within 1499.8 to 1500.2 ohm, with
// F(0.92) - F(-2.42) = 0.82 - 0.01.
func TestConformanceOfJCGM106(t *testing.T) {
	for name, c := range map[string]struct{ value, u, low, high, want float64 }{
		"breakdown voltage": {-5.47, 0.05, math.Inf(-1), -5.40, 0.92},
		"resistor":          {1500.09, 0.12, 1499.8, 1500.2, 0.81},
		"on the limit":      {5, 1, math.Inf(-1), 5, 0.5},
	} {
		f := custody.Judge(reading(c.value, 2*c.u), limits(c.low, c.high))
		if got := f.Conformance(); math.Abs(got-c.want) > 0.005 {
			t.Errorf("%s: %.4f, want %.2f", name, got, c.want)
		}
	}
}

// The decision rule of ISO 14253-1: proved within the limits reduced by U, disproved
// outside the limits grown by U, neither between; the lines are by hand.
func TestDecisionRuleOfISO14253(t *testing.T) {
	const inf = math.MaxFloat64
	for _, c := range []struct {
		value, u, low, high float64
		want                custody.Verdict
		would               string
	}{
		{139.7, 0.5, 139.2, 140.2, custody.Accepted, ""}, // U just fits
		{139.65, 0.5, 139.2, 140.2, custody.Unproved, "caliper"},
		{139.25, 0.5, 139.2, 140.2, custody.Unproved, "caliper"},
		{139.2, 0.5, 139.2, 140.2, custody.Unproved, ""}, // on the limit no instrument tells
		{138.9, 0.5, 139.2, 140.2, custody.Unproved, "caliper"},
		{138.6, 0.5, 139.2, 140.2, custody.Rejected, ""},
		{140.8, 0.5, 139.2, 140.2, custody.Rejected, ""},
		{139.6, 0.05, 139.2, 140.2, custody.Accepted, ""},
		{140.23, 0.05, 139.2, 140.2, custody.Unproved, ""}, // finer than a caliper is not usual
		{138.6, 1, 139.2, 140.2, custody.Unproved, "steel rule"},
		{6.5, 0.3, 6, inf, custody.Accepted, ""}, // no upper limit
	} {
		l := limits(c.low, c.high)
		if c.high == inf {
			l.High = unit.Maybe[unit.Length]{}
		}
		f := custody.Judge(reading(c.value, c.u), l)
		would := ""
		if f.Would != nil {
			would = f.Would.Name
		}
		if f.Verdict != c.want || would != c.would {
			t.Errorf("%g +- %g in %g to %g: %s by %q, want %s by %q", c.value, c.u, c.low, c.high, f.Verdict, would, c.want, c.would)
		}
	}
}

// What is accepted conforms, and what is refused does not, with 97.7 % at least: one
// tail of a normal error beyond two standard deviations.
func TestProofsAreSure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(1, 200).Draw(t, "low")
		high := low + rapid.Float64Range(0.1, 5).Draw(t, "width")
		f := custody.Judge(reading(rapid.Float64Range(low-3, high+3).Draw(t, "value"), rapid.Float64Range(0.01, 2).Draw(t, "U")), limits(low, high))
		const sure = 0.9772
		p := f.Conformance()
		if f.Verdict == custody.Accepted && p < 2*sure-1 || f.Verdict == custody.Rejected && p > 1-sure {
			t.Fatalf("%+v: conforms with %.4f", f, p)
		}
		if f.Would != nil {
			again := f.Reading
			again.U = f.Would.U
			if v := custody.Judge(again, custody.Limits{What: f.What, Low: f.Low, High: f.High}).Verdict; v == custody.Unproved {
				t.Fatalf("%s would not do: %+v", f.Would.Name, f)
			}
		}
	})
}
