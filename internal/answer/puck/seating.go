package puck

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Seating is how the rows of seats stand behind the glass, along the floor. Rows are
// counted from 1, that next to the glass.
type Seating struct {
	First unit.Length // from the glass to the first row's front, 0 or more
	Deep  unit.Length // of one row, above 0
}

// UsualSeating is round in the units that an arena is surveyed in: rows 33 in or 850 mm deep
// (common practice in arenas, no published source), the first 4 ft or 1.2 m behind the glass
// (own judgement).
func UsualSeating(sys unit.System) Seating {
	if sys == unit.Imperial {
		return Seating{First: 4 * unit.Foot, Deep: 33 * unit.Inch}
	}
	return Seating{First: 1.2, Deep: 0.85}
}

func (s Seating) check() error {
	if !(s.First >= 0 && s.First < maxOpening) || !(s.Deep >= 0.2 && s.Deep < maxOpening) {
		return fmt.Errorf("rows of seats %g m deep, the first %g m behind the glass: give a depth from 0.2 to 100 m and a distance from 0 to 100 m", s.Deep.Metres(), s.First.Metres())
	}
	return nil
}

// Row returns the last row that a distance behind the glass touches, rounded up; 0 when it
// ends before the first. A slope of the rows is left out: there a puck comes down earlier.
func (s Seating) Row(l unit.Length) int {
	return max(0, int(math.Ceil(float64((l-s.First)/s.Deep)-touch.Metres())))
}

// Aside returns how far to either side of the hole the sector reaches along the glass:
// toward falling and toward rising station, each 0 or more.
//
//	Clear x sin(bearing)
func (s Sector) Aside() (falling, rising unit.Length) {
	at := func(a unit.Angle) unit.Length { return max(0, s.Clear*unit.Length(math.Sin(a.Radians()))) }
	return at(-s.From), at(s.To)
}
