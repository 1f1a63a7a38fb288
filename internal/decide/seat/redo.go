package seat

import (
	"cmp"
	"slices"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
)

// Standing is what a plan says of a hole by the time that somebody sits there.
type Standing struct {
	Along   unit.Length // station of the hole's centre along the boards
	Height  unit.Length // of its centre above the ice
	Off     bool        // not cut, or not in service
	Refused bool        // the rules do not allow it
}

// Stirred is by how much a hole may move before a seat at it is told to be given anew:
// the shaft of a monopod or the next zip of a jacket; own choice.
const Stirred = 6 * unit.Inch

// Redo is a seat that a changed plan touches: it is told, never moved.
type Redo struct {
	Game string
	Seat Seat
	Why  Touched
	By   unit.Length // how far the hole moved, where it did
}

// Touched says what became of a hole that somebody sits at.
type Touched string

// What can become of it.
const (
	Gone    Touched = "gone"
	IsOff   Touched = "off"
	Refused Touched = "refused"
	Moved   Touched = "moved"
)

// Touch lists the seats of a season that a change of the plan touches, game by game
// (see [Stale]); not nil.
func (a *Answer) Touch(was, is map[string]Standing, around, tolerance unit.Length) {
	a.Redo = []Redo{}
	for _, n := range a.Season.Nights {
		if a.Only != "" && a.Only != n.Game {
			continue
		}
		for _, r := range Stale(n.Seats, was, is, around, tolerance) {
			r.Game = n.Game
			a.Redo = append(a.Redo, r)
		}
	}
}

// Stale lists the seats that must be looked at again since the plan changed from
// was to is, by hole: holes that are gone, off, refused by the rules since, or moved by
// more than a tolerance along the boards, whose length is given, or in height.
func Stale(seats []Seat, was, is map[string]Standing, around, tolerance unit.Length) (out []Redo) {
	for _, s := range seats {
		now, there := is[s.Hole]
		before := was[s.Hole]
		by := now.from(before, around)
		switch {
		case !there:
			out = append(out, Redo{Seat: s, Why: Gone})
		case now.Off:
			out = append(out, Redo{Seat: s, Why: IsOff})
		case now.Refused && !before.Refused:
			out = append(out, Redo{Seat: s, Why: Refused})
		case by > tolerance:
			out = append(out, Redo{Seat: s, Why: Moved, By: by})
		}
	}
	slices.SortStableFunc(out, func(a, b Redo) int {
		return cmp.Or(strings.Compare(a.Seat.Hole, b.Seat.Hole), cmp.Compare(a.Seat.Period, b.Seat.Period))
	})
	return out
}

// from returns how far a hole stands from where it stood: along the boards the
// shorter way round, or in height, whichever is more.
func (p Standing) from(was Standing, around unit.Length) unit.Length {
	along := max(p.Along-was.Along, was.Along-p.Along)
	if around > 0 {
		along = min(along, around-along)
	}
	return max(along, p.Height-was.Height, was.Height-p.Height)
}
