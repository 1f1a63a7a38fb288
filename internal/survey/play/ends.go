package play

// MostPeriods is the most periods that a game may have: three, and overtimes.
const MostPeriods = 9

// Ends says toward which end the home team plays in each period, from the first: +1 for
// end B, -1 for end A, 0 where nobody said it. A period that is not said follows the one
// before it by a change of ends; where nothing is said at all, the home team begins
// toward end B. The zero value is the usual game: B, A, B.
type Ends [MostPeriods]int8

// EndsFrom returns the ends of a game in which the home team begins toward an end (+1 for
// B, -1 for A) and ends change after every period.
func EndsFrom(first int) Ends { return Ends{int8(first)} }

// Said reports whether anybody said toward which end the home team begins.
func (e Ends) Said() bool { return e[0] != 0 }

// Attacks returns the end (+1 for B, -1 for A) toward which a team (0 home, 1 away) plays
// in a period, counted from 1.
func (e Ends) Attacks(team, period int) int {
	home := -1 // before the first period, so that it is B's turn
	for p := range max(0, min(period, MostPeriods)) {
		if home = -home; e[p] != 0 {
			home = int(e[p])
		}
	}
	if team == 1 {
		return -home
	}
	return home
}

// attacker returns the team (0 home, 1 away) that plays toward an end in a period.
func (e Ends) attacker(end, period int) int {
	if e.Attacks(0, period) == end {
		return 0
	}
	return 1
}

// periodOf returns a period in which a team attacks an end, 1 where there is none.
func (e Ends) periodOf(team, end int) int {
	for period := 1; period <= MostPeriods; period++ {
		if e.Attacks(team, period) == end {
			return period
		}
	}
	return 1
}
