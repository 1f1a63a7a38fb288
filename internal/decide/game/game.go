package game

import (
	"slices"
	"strconv"
	"time"

	"example.org/rinkpane/internal/survey/play"
)

// Periods is how many periods a game has before any overtime.
const Periods = 3

// Game is one game at the season's rink.
type Game struct {
	ID     string   // unique; of a calendar its UID, with the date of the series' instance
	Series string   // the games it belongs to, "" for none
	Marks  []string // what else rules may ask of it: televised
	// Sequence counts the changes of its date, as calendars do (RFC 5545, 3.8.7.4).
	Sequence   int
	Start      time.Time // first puck drop: the rink's wall clock, its zone without meaning, unless Universal
	Universal  bool      // times are in universal time
	Home, Away string
	Periods    int // with overtimes; 3 usually
	Ends       play.Ends
	// EndsAssumed says that only the arena, not the game, told who defends which end first.
	EndsAssumed bool
	Day         []Stage // of the day, in the order of time
	Off         bool    // called off: it keeps its id and nobody is seated
}

// Stage is a part of a game's day, with its begin.
type Stage struct {
	Name string // practice, warm-up, period-1 ..., lock-up
	At   time.Time
}

// The stages beside the periods.
const (
	Practice = "practice"
	WarmUp   = "warm-up"
	LockUp   = "lock-up"
)

// stageNames lists the stages that a document may time, in the order of a day.
func stageNames() []string {
	out := []string{Practice, WarmUp}
	for p := 1; p <= play.MostPeriods; p++ {
		out = append(out, PeriodStage(p))
	}
	return append(out, LockUp)
}

// PeriodStage names the stage that a period is.
func PeriodStage(period int) string { return "period-" + strconv.Itoa(period) }

// Team returns the name of a team: 0 home, 1 away.
func (g Game) Team(n int) string { return [2]string{g.Home, g.Away}[n] }

// At returns when a stage begins; ok is false where nobody said.
func (g Game) At(stage string) (at time.Time, ok bool) {
	for _, s := range g.Day {
		if s.Name == stage {
			return s.At, true
		}
	}
	return time.Time{}, false
}

// named reports whether some names, each a mark or a series, name the game; none name
// every game.
func (g Game) named(names []string) bool {
	return len(names) == 0 || slices.ContainsFunc(names, func(n string) bool { return n == g.Series || slices.Contains(g.Marks, n) })
}

// Teams names both teams, the home team first.
func (g Game) Teams() string { return g.Home + " v " + g.Away }

// EndName names an end: +1 is B, -1 A.
func EndName(end int) string {
	if end > 0 {
		return "B"
	}
	return "A"
}
