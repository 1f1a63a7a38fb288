package seat

import "time"

// Night is one game's holes and the people who ask for them.
type Night struct {
	Game  string
	Holes []string
	Asks  []Ask // each person once
	// Worth is by period, ask and hole what the hole is worth to them, 0 or more,
	// without unit; [Impossible] where they cannot work it or did not ask.
	Worth [][][]float64
	Fixed []Seat // given by hand: they stay, and the rest is solved around them
	Kept  []Kept // holes that only some may have
	// Unkept is what rules would keep and cannot: nothing follows from it, it is told.
	Unkept []Unkept
	// Move is what it costs to change holes between two periods in a row, in the
	// unit of Worth; 0 or more, and for nobody more than their best night is worth.
	Move float64
	// Whole says that everybody keeps one hole from the first period to the last.
	Whole bool
}

// Impossible is the worth, without unit, of a hole that somebody cannot work; any
// number below zero says the same.
const Impossible = -1.0

// Ask is one person's request for a night.
type Ask struct {
	Who    string
	Must   bool // firm: goes before every wish
	Late   bool // came after the closing time: is seated in what the others leave
	NoShow bool // known after the game: was given a seat and did not come
	// Asked is when they asked, which counts for first come, first served only.
	Asked time.Time
}

// Seat says who works a hole in a period.
type Seat struct {
	Period    int // from 1
	Hole, Who string
}

// Kept keeps a hole for some: a broadcaster's corner. Nobody else is given it, and
// it stays empty when none of them takes it.
type Kept struct {
	Hole   string
	Period int      // from 1; 0 for every period
	For    []string // who may have it
	Rule   string   // that keeps it, for people
}

// Unkept is so many holes that a rule would keep for some, of those at a place, where
// others have all the rest by hand, or none can be worked.
type Unkept struct {
	Period int
	Where  string
	Lacks  int
	For    []string
	Rule   string
}
