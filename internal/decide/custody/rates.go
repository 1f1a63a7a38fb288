package custody

import (
	"cmp"
	"slices"
	"time"

	"example.org/rinkpane/internal/measure/chance"
	"example.org/rinkpane/internal/measure/unit"
)

// Rate is how often something happened at a hole in a phase.
type Rate struct {
	Hole      string
	Phase     Phase
	Incidents int
	Open      time.Duration
	// PerOpen is incidents per thousand hours that the hole was open, with its exact
	// two-sided 95 % interval ([chance.Garwood]); unknown when it was never open.
	PerOpen unit.Maybe[PerThousand]
}

// PerThousand is a rate per thousand open hours, with its interval.
type PerThousand struct{ Rate, Low, High float64 }

const (
	confidence   = 0.95
	thousandHour = 1000 * time.Hour
)

// RatesOf returns the rates of every hole and phase that was open or saw an incident
// within the window, by hole and then in the phases' order.
func RatesOf(h History, window Window) []Rate {
	type key struct {
		hole  string
		phase Phase
	}
	counts := map[key]int{}
	phase := Closed
	for _, e := range h {
		switch f := e.Fact.(type) {
		case Began:
			phase = f.Phase
		case Incident:
			if window.Contains(e.When) {
				counts[key{f.Hole, phase}]++
			}
		}
	}
	var out []Rate
	for _, x := range Fold(h, window, window.To).Holes {
		for _, p := range Phases() {
			if n, open := counts[key{x.ID, p}], x.Open[p]; n > 0 || open > 0 {
				out = append(out, rateOf(x.ID, p, n, open))
			}
		}
	}
	return out
}

// RatesByHole returns the rates of holes over all phases, of rates by hole and phase in
// their order; Phase is "".
func RatesByHole(rates []Rate) []Rate {
	var out []Rate
	for _, r := range rates {
		if n := len(out); n == 0 || out[n-1].Hole != r.Hole {
			out = append(out, Rate{Hole: r.Hole})
		}
		last := &out[len(out)-1]
		*last = rateOf(r.Hole, "", last.Incidents+r.Incidents, last.Open+r.Open)
	}
	return out
}

func rateOf(hole string, p Phase, n int, open time.Duration) Rate {
	r := Rate{Hole: hole, Phase: p, Incidents: n, Open: open}
	seen := chance.Rate{Events: n, Exposure: float64(open) / float64(thousandHour)}
	if iv, err := seen.Interval(confidence); err == nil {
		r.PerOpen = unit.Known(PerThousand{seen.Value(), iv.Low, iv.High})
	}
	return r
}

// Outlier is how sure it is that a hole has more incidents than its open time asks for.
type Outlier struct {
	Hole      string
	Incidents int
	Open      time.Duration
	Expected  float64 // count, were all holes alike
	// P is the probability of so many incidents or more, were all holes alike; see
	// [chance.AtLeast]. Adjusted is the same after Holm for the number of holes.
	P, Adjusted float64
}

// Above reports whether the hole's rate is above that of the rest.
func (o Outlier) Above() bool { return o.Adjusted < 1-confidence }

// Outliers compares each hole's incidents with its share of all holes' open time: given
// n incidents in all, a hole with the share s of it has k or more with the binomial
// probability P(K >= k | n, s), which is exact for Poisson counts of one rate (Przyborowski
// and Wilenski, Biometrika 31 (1940) 313). Holes that were never open are left out, as
// are incidents while a hole was closed all the time. The surest come first.
func Outliers(rates []Rate) []Outlier {
	var out []Outlier
	var all Outlier
	for _, r := range rates {
		if r.Open == 0 {
			continue
		}
		if len(out) == 0 || out[len(out)-1].Hole != r.Hole {
			out = append(out, Outlier{Hole: r.Hole})
		}
		o := &out[len(out)-1]
		o.Incidents, o.Open = o.Incidents+r.Incidents, o.Open+r.Open
		all.Incidents, all.Open = all.Incidents+r.Incidents, all.Open+r.Open
	}
	p := make([]float64, len(out))
	for i := range out {
		share := float64(out[i].Open) / float64(all.Open)
		out[i].Expected = share * float64(all.Incidents)
		p[i] = chance.AtLeast(out[i].Incidents, all.Incidents, share)
	}
	for i, adjusted := range chance.Holm(p) {
		out[i].P, out[i].Adjusted = p[i], adjusted
	}
	slices.SortStableFunc(out, func(a, b Outlier) int { return cmp.Compare(a.P, b.P) })
	return out
}
