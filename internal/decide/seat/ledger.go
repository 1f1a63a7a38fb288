package seat

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/unit"
)

// Account is what one person has asked for and had over a season, counted in
// nights: a night on which they had the best that they could have had alone is 1.
//
// # What is entered
//
// A request in time that could have had something counts as one night asked for,
// whatever came of it. A late request makes no claim: what it was given counts as
// asked for and as had, and when it was given nothing, nothing is entered. Who was
// given a seat and did not come has had it all the same; who was given none and
// did not come has neither asked nor had.
type Account struct {
	Who    string
	Asked  float64 // nights, without unit
	Had    float64 // nights, without unit; at most Asked
	Games  int     // requests entered, late and missed ones among them
	Seated int     // games with a seat
	Late   int
	Missed int // seats that were given and stayed empty
}

// Share is what was had of what was asked for, in [0, 1]; unknown for who never asked.
func (a Account) Share() unit.Maybe[float64] {
	if a.Asked <= 0 {
		return unit.Maybe[float64]{}
	}
	return unit.Known(a.Had / a.Asked)
}

// Ledger is a season's accounts. The zero value, and nil to read, is a season that
// has not begun.
type Ledger struct{ accounts map[string]Account }

// Accounts returns all accounts by name.
func (l *Ledger) Accounts() []Account {
	if l == nil {
		return nil
	}
	return slices.SortedFunc(maps.Values(l.accounts), func(a, b Account) int { return cmp.Compare(a.Who, b.Who) })
}

// Enter adds a night once it is seated.
func (l *Ledger) Enter(n *Night, s Seating) {
	if l.accounts == nil {
		l.accounts = map[string]Account{}
	}
	for i, o := range s.People {
		ask, a := n.Asks[i], l.accounts[o.Who]
		if a.Who = o.Who; ask.NoShow && o.Periods == 0 {
			continue
		}
		a.Games++
		switch {
		case ask.Late:
			a.Late++
			a.Asked += o.Share()
		case o.Could > 0:
			a.Asked++
		}
		a.Had += o.Share()
		if o.Periods > 0 {
			a.Seated++
		}
		if ask.NoShow {
			a.Missed++
		}
		l.accounts[o.Who] = a
	}
}

// with returns the ledger with one more night; the ledger itself stays as it is.
func (l *Ledger) with(n *Night, s Seating) Ledger {
	out := Ledger{accounts: map[string]Account{}}
	for _, a := range l.Accounts() {
		out.accounts[a.Who] = a
	}
	out.Enter(n, s)
	return out
}

// Level is what all together had of what all together asked for, in [0, 1]; 1 before
// anybody asked.
func (l *Ledger) Level() float64 {
	var all Account
	for _, a := range l.Accounts() {
		all.Asked, all.Had = all.Asked+a.Asked, all.Had+a.Had
	}
	return all.Share().Or(1)
}

// Owed is how many nights, without unit, somebody is behind the level of all; below
// zero for who is ahead of it.
func (l *Ledger) Owed(who string) float64 {
	a := l.accounts[who]
	return l.Level()*a.Asked - a.Had
}

// farthest is by how many nights, without unit, one may be behind another and
// still count for more.
const farthest = 8

// weights returns how much a night counts for each of those who ask, in (0, 1]: who
// is a night further behind counts twice as much.
//
//	weight = 2^(owed - most owed of those who ask),   at least 2^-farthest
func (l *Ledger) weights(n *Night) []float64 {
	if l == nil {
		l = &Ledger{}
	}
	w := make([]float64, len(n.Asks))
	level := l.Level()
	most := math.Inf(-1)
	for i, ask := range n.Asks {
		a := l.accounts[ask.Who]
		w[i] = level*a.Asked - a.Had
		most = max(most, w[i])
	}
	for i := range w {
		w[i] = math.Exp2(max(w[i]-most, -farthest))
	}
	return w
}
