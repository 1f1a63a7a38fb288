package rules

import (
	"strconv"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// Quantity says what a rule measures.
type Quantity int

// The quantities.
const (
	NoAmount    Quantity = iota // the rule asks yes or no
	AlongBoards                 // a length along the boards
	InPane                      // a length within a pane, or above the ice
	HoleCount                   // a number of holes
	Share                       // a part of a whole, 0 to 1
)

// Amount is what a rule measured, or its limit, or the margin between them.
type Amount struct {
	Of Quantity
	N  float64 // metres, holes, or a share, as Of says
}

// Say prints the amount: "12.7 mm", "3 holes", "0.218".
func (a Amount) Say(sys unit.System) string {
	switch a.Of {
	case AlongBoards, InPane:
		return unit.Length(a.N).Format(sys)
	case HoleCount:
		return say.Count(int(a.N), "hole")
	}
	return strconv.FormatFloat(a.N, 'g', 3, 64)
}

// Spare says how far a finding is from its limit: "12.7 mm to spare", "1 hole
// too many"; it is zero when the finding has no margin.
func (f Finding) Spare() say.Sentence {
	m, ok := f.Margin.Get()
	size := Amount{m.Of, max(m.N, -m.N)}
	switch {
	case !ok:
		return say.Sentence{}
	case m.N < 0 && m.Of == HoleCount:
		return say.Make("%s too many", size)
	case m.N < 0:
		return say.Make("%s short", size)
	case m.N == 0:
		return say.Make("exactly at the limit")
	}
	return say.Make("%s to spare", size)
}
