package game

import "example.org/rinkpane/internal/survey/play"

// kind is what a follower waits for: a team's attacks toward an end, or the goalkeeper who
// faces them.
type kind struct {
	team   int // 0 home, 1 away
	end    int // +1 is B, -1 A
	keeper bool
}

// kinds is how many kinds there are.
const kinds = 8

// index counts the kinds from 0.
func (k kind) index() int {
	i := k.team
	if k.end > 0 {
		i += 2
	}
	if k.keeper {
		i += 4
	}
	return i
}

// awaits reports whether a picture of a phase is one of the kind: a goalkeeper is not
// waited for while the others celebrate.
func (k kind) awaits(p play.Phase) bool {
	return !k.keeper || p != play.Celebration && p != play.Bench
}

// watched returns the moments with the subject that the kind is about; the people stay
// where they are.
func watched(set *play.Set, keeper bool) *play.Set {
	if !keeper {
		return set
	}
	out := *set
	out.Subject = make([]uint8, set.Len())
	for m := range out.Subject {
		out.Subject[m] = play.DefenderGoalie
	}
	return &out
}

// phases is how many phases of play there are.
const phases = 6
