package puck

import (
	"fmt"
	"math"
)

// Interval says in plain sentences what the two figures of every rate are: rates rest on own
// judgement and deserve no narrower one.
func Interval() string {
	return fmt.Sprintf("Every rate is an interval, as how often pucks are struck is own judgement: its low end counts pucks that pass without touching; its high end counts all whose centre meets the opening, where a lens may stand, times %d, because games send so many more pucks over the glass than the model. It is no statistic, and no count of pucks through such holes is published: plan with the high end.", gamesOverModel)
}

// Games is in how many games with all covers out one puck comes through, on average.
type Games struct {
	// Often and Seldom are the interval's ends, by the high and by the low count of pucks.
	// [Interval] says what they are.
	Often, Seldom float64
	// Middle is the ends' geometric mean: the interval spans powers of ten, and nothing
	// says on which side of it the truth lies.
	Middle float64
}

// Expected sums the pucks that come through holes while their covers are out, by the low
// and by the high count; of says in which play.
func Expected(guards []Guard, of func(Guard) Passes) (low, high float64) {
	for _, g := range guards {
		p := of(g)
		low, high = low+p.Expected, high+p.ExpectedHigh
	}
	return low, high
}

// Together returns how often a puck comes through any of the holes, a game being the
// minutes of play that the guards were made for; ok is false when none ever does.
func Together(guards []Guard) (g Games, ok bool) {
	low, high := Expected(guards, func(g Guard) Passes { return g.Game })
	if low <= 0 || high <= 0 {
		return Games{}, false
	}
	return Games{Often: 1 / high, Seldom: 1 / low, Middle: 1 / math.Sqrt(low*high)}, true
}
