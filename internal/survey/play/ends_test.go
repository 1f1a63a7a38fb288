package play

import (
	"testing"

	"pgregory.net/rapid"
)

func TestEndsFollowWhatIsSaid(t *testing.T) {
	for name, c := range map[string]struct {
		ends Ends
		home []int // by period
	}{
		"nobody says":            {Ends{}, []int{1, -1, 1, -1}},
		"home defends B first":   {EndsFrom(-1), []int{-1, 1, -1, 1}},
		"no change for overtime": {Ends{1, -1, 1, 1}, []int{1, -1, 1, 1, -1}},
		"ends are never changed": {Ends{-1, -1, -1}, []int{-1, -1, -1, 1}},
	} {
		for k, want := range c.home {
			if got := c.ends.Attacks(0, k+1); got != want {
				t.Errorf("%s: home, period %d: end %d, want %d", name, k+1, got, want)
			}
			if got := c.ends.Attacks(1, k+1); got != -want {
				t.Errorf("%s: away, period %d: end %d, want %d", name, k+1, got, -want)
			}
		}
	}
}

// swapped returns the ends of the same game played the other way round.
func (e Ends) swapped() Ends {
	e[0] = int8(e.Attacks(0, 1))
	for p := range e {
		e[p] = -e[p]
	}
	return e
}

// anyEnds draws ends that are said, in part or not at all.
func anyEnds(t *rapid.T) (e Ends) {
	for k := range e {
		e[k] = int8(rapid.IntRange(-1, 1).Draw(t, "end"))
	}
	return e
}

func TestEndsSwappedTwiceAreTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyEnds(t)
		for period := 1; period <= MostPeriods; period++ {
			for team := range 2 {
				once, twice := e.swapped().Attacks(team, period), e.swapped().swapped().Attacks(team, period)
				if want := e.Attacks(team, period); twice != want || once != -want {
					t.Fatalf("team %d, period %d: end %d, swapped %d, twice %d", team, period, want, once, twice)
				}
			}
		}
	})
}

func TestSamplerPlaysTowardTheEndsOfTheGame(t *testing.T) {
	a := DefaultAssumptions()
	a.Game.Ends = Ends{-1, -1, 1}
	s := sample(t, standard(t, "north-american"), a, 5, 2000)
	seen := map[int]int{}
	for i := range s.Len() {
		period, team := int(s.Period[i]), int(s.Team[i])
		seen[period]++
		if want := a.Game.Ends.Attacks(team, period); int(s.End[i]) != want {
			t.Fatalf("moment %d, team %d in period %d attacks %d, want %d", i, team, period, s.End[i], want)
		}
	}
	if len(seen) != 3 {
		t.Errorf("moments in periods %v, want 3 of them", seen)
	}
}
