package edit

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
)

// errNowhere answers a move, an addition or a copy without a place.
var errNowhere = errors.New("to: give station_m, or corner and landmark with offset_m")

// still reports whether the spot says nothing of the place along the boards.
func (s Spot) still() bool { return s.Station == nil && s.Corner == "" && s.Landmark == "" }

// place returns the spot as a place of an arena file, numbers rounded. A
// station is told by its nearest landmark, as people do, unless the document
// has the hole by its plain station.
func (s Spot) place(a arena.Arena, plain bool) (arena.Place, error) {
	if s.Station != nil {
		if s.Corner != "" || s.Landmark != "" {
			return arena.Place{}, errors.New("to: both station_m and a landmark are given; keep one of them")
		}
		return s.atStation(a, plain)
	}
	c, err := rink.ParseCorner(s.Corner)
	if err != nil {
		return arena.Place{}, fmt.Errorf("to: %w", err)
	}
	known := rink.Landmarks()
	l := rink.Landmark(s.Landmark)
	if !slices.Contains(known[:], l) {
		return arena.Place{}, fmt.Errorf("to: landmark %.40q: write one of %v", s.Landmark, known)
	}
	off, err := round(s.Offset, a.Units)
	if err != nil {
		return arena.Place{}, fmt.Errorf("offset_m: %w", err)
	}
	if _, err := a.Rink.FromLandmark(c, l, off); err != nil {
		return arena.Place{}, err
	}
	return arena.FromLandmark(c, l, off), nil
}

func (s Spot) atStation(a arena.Arena, plain bool) (arena.Place, error) {
	at, err := round(*s.Station, a.Units)
	if err != nil {
		return arena.Place{}, fmt.Errorf("station_m: %w", err)
	}
	if plain {
		// Rounded up past the boards' end a station would be no station: it is 0.
		return arena.AtStation(a.Rink.Wrap(at)), nil
	}
	p := a.PlaceOf(a.Rink.Wrap(unit.Length(*s.Station)))
	if _, is := p.Station.Get(); is {
		return arena.AtStation(a.Rink.Wrap(at)), nil
	}
	p.Offset, err = round(p.Offset.Metres(), a.Units)
	return p, err
}

// farthest is the greatest length that a drag can mean; a rink is some 60 m long.
const farthest = 10_000 * unit.Metre

// round returns a number of metres as a length that people measure
// ([unit.Length.Measured]), so that the document has it short.
func round(metres float64, sys unit.System) (unit.Length, error) {
	if math.IsNaN(metres) || math.Abs(metres) > float64(farthest) {
		return 0, fmt.Errorf("%g is no length on a rink, in metres", metres)
	}
	return unit.Length(metres).Measured(sys), nil
}
