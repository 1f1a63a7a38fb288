package custody

import (
	"math"
	"math/rand/v2"

	"example.org/rinkpane/internal/measure/unit"
)

// demoFinding is how an invented inspection comes out.
type demoFinding int

const (
	asDrawn demoFinding = iota
	tooWide
	byRule // measured with a steel rule, which cannot tell
)

// inspected tells an inspection of a hole: invented measurements about what its drawing
// allows, each with the coarsest usual instrument that can prove it.
func (t *telling) inspected(hole string, how demoFinding) Inspected {
	lot := rand.New(rand.NewPCG(t.Seed, uint64(len(t.events)))) // apart, so that the season stays the same
	f := Inspected{Hole: hole, Revision: t.Revision, Words: "Invented, for the demo.",
		Seen: []Seen{{What: NoCracks, Right: true}, {What: Snug, Right: true}, {What: Tethered, Right: true}}}
	for _, l := range t.Drawn[hole] {
		low, isLow := l.Low.Get()
		high, isHigh := l.High.Get()
		if !isLow || !isHigh {
			continue
		}
		middle, half := (low+high)/2, (high-low)/2
		u := demoInstrument(l.What, half)
		value := middle + (half-u)*unit.Length(lot.Float64()-0.5)
		switch {
		case how == tooWide && l.What == Width:
			value = high + 6*u
		case how == byRule && l.What == Width:
			u, value = 0.5*unit.Millimetre, middle
			if half > u {
				value = high - u/2
			}
		}
		f.Measured = append(f.Measured, Measured{What: l.What, Value: math.Round(value.Metres()*20_000) / 20, U: math.Round(u.Metres()*1e6) / 1e3})
	}
	f.Verdict = Inspect(hole, t.Drawn[hole], Readings(f.Measured), f.Seen).Verdict
	return f
}

// demoInstrument is the uncertainty of the coarsest usual instrument for a quantity that
// leaves half of its tolerance, else that of the finest.
func demoInstrument(q Quantity, half unit.Length) (u unit.Length) {
	for _, i := range Instruments() {
		for _, of := range i.For {
			if of == q {
				u = i.U
			}
		}
		if u > 0 && u <= half/2 {
			break
		}
	}
	return u
}
