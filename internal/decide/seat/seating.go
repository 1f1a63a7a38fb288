package seat

// Seating is who works which hole on a night, and what came of it for each.
type Seating struct {
	Game   string
	Seats  []Seat    // by period, then in the night's order of holes
	Kept   []Kept    // as the night says
	Unkept []Unkept  // as the night says
	People []Outcome // in the night's order of requests
	Value  float64   // what all seats are worth less the moves, in the unit of the night's worth
	Proof  Proof
}

// Outcome is what a night brought one person.
type Outcome struct {
	Who     string
	Worth   float64 // of their seats less their moves, in the unit of the night's worth
	Could   float64 // of the best that they could have had alone, in the same unit
	Weight  float64 // how much their night counted by the ledger, without unit, in (0, 1]
	Periods int     // seated
	Moves   int
	Why     Why // they have no seat; "" for who has one
}

// Share is what they had of what they could have had, in [0, 1].
func (o Outcome) Share() float64 { return max(0, o.share()) }

// share is below zero for who had to move for more than the seats are worth.
func (o Outcome) share() float64 {
	if o.Could <= 0 {
		return 0
	}
	return o.Worth / o.Could
}

// Why says why somebody has no seat.
type Why string

// The reasons.
const (
	NoHole    Why = "no hole" // there is none that they can work
	KeptAll   Why = "kept"    // those that they can work are kept for others
	CameLate  Why = "late"    // those who asked in time have all of worth
	Others    Why = "others"  // others have the holes that they can work, and all together have more that way
	MustFirst Why = "must"    // firm requests have all that they could work
)

// Whys lists all reasons.
func Whys() []Why { return []Why{NoHole, KeptAll, MustFirst, Others, CameLate} }

// Proof says how sure it is that no seating is better. Value and Bound count
// weighted nights: each person's share times their weight.
type Proof struct {
	By     Proved
	Value  float64     // nights, without unit
	Bound  float64     // nights, without unit: no seating has more
	Prices [][]float64 // by period and hole: what the seat brings those who do not have it, in nights, without unit
}

// Gap is how far the bound lies above the value, in nights, without unit.
func (p Proof) Gap() float64 { return max(0, p.Bound-p.Value) }

// with returns the proof of two searches one after the other.
func (p Proof) with(earlier Proof) Proof {
	p.Bound, p.Prices = p.Bound+earlier.Gap(), earlier.Prices
	for _, by := range []Proved{NotProved, BySearch} {
		if p.By == by || earlier.By == by {
			p.By = by
			break
		}
	}
	return p
}

// Holes returns the holes that somebody works, by period, "" for none.
func (s Seating) Holes(who string, periods int) []string {
	out := make([]string, periods)
	for _, seat := range s.Seats {
		if seat.Who == who {
			out[seat.Period-1] = seat.Hole
		}
	}
	return out
}
