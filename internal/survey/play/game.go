package play

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// Game is what a rink says of the games on it. The zero value is the usual game: four
// officials, both benches on one side, goals at the ends.
type Game struct {
	// Officials is how many are on the ice: 4 is two referees and two linesmen, 3 one
	// referee and two linesmen, 2 one of each; 0 counts as 4.
	Officials int
	// Referees and Linesmen are how many of each, where that is said in place of Officials.
	Referees, Linesmen unit.Maybe[int]
	Opposite           bool // the guests' bench stands across, on the box side
	// Home and Guests are where the benches stand, where the rink says it.
	Home, Guests unit.Maybe[Bank]
	// Ends is who plays toward which end, period by period.
	Ends Ends
	// CrossIce is for small games across an end zone, nets at the side boards.
	CrossIce bool
}

// Bank is a bench along the boards.
type Bank struct {
	Middle float64 // x of its middle, metres in the rink's frame
	Half   float64 // half its length, metres
}

// bank is a team's bench with its side: the y sign of its boards in the rink's frame.
type bank struct {
	Bank
	side float64
}

// banks returns the benches of home team and guests.
func (g Game) banks(l Layout) [2]bank {
	middle, half := (l.BenchNear+l.BenchFar)/2, (l.BenchFar-l.BenchNear)/2
	if g.CrossIce { // the benches lie along the rink, the game across it
		g.Home, g.Guests = unit.Maybe[Bank]{}, unit.Maybe[Bank]{}
	}
	out := [2]bank{{g.Home.Or(Bank{-middle, half}), -1}, {g.Guests.Or(Bank{middle, half}), -1}}
	if g.Opposite {
		out[1].side = 1
	}
	return out
}

// away is how far beyond the boards who is not in the game stands, metres; such a
// person has no height, hides nothing and is not drawn.
const away = 60.0

// netFromBoards is how far from the side boards the nets of a game across the ice
// stand, metres: room to skate behind them (common practice, no published source).
const netFromBoards = 2.0

// across is an end zone as a small rink of its own, turned by a quarter.
type across struct {
	small  Layout
	middle float64 // x of the zone's middle, metres from centre ice
}

// acrossOf returns the small rink between the end boards and the blue line, its length
// across the ice. Its markings are in proportion; its corners round all four, on
// the safe side of the boards' two.
func acrossOf(l Layout) across {
	deep := l.HalfLength - l.BlueX
	r, err := rink.New(rink.Dimensions{Length: unit.Length(2 * l.HalfWidth), Width: unit.Length(deep), CornerRadius: unit.Length(math.Min(l.CornerRadius, deep/2))})
	if err != nil {
		return across{}
	}
	small := LayoutOf(r)
	small.GoalX = small.HalfLength - netFromBoards
	return across{small, l.BlueX + deep/2}
}

// turned lays a moment of the small rink into an end zone: a quarter turn, which
// zone by the end that was attacked.
func (a across) turned(m Moment) Moment {
	end := float64(m.End)
	m.Puck.X, m.Puck.Y = end*a.middle-m.Puck.Y, m.Puck.X
	for i := range m.People {
		p := &m.People[i]
		if p.Height > 0 {
			p.X, p.Y, p.Heading = end*a.middle-p.Y, p.X, wrap(p.Heading+math.Pi/2)
		}
	}
	return m
}
