package game

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
)

// bags lists every set of some lenses, each in the kit's order, but the empty one.
func bags(all []string) (out [][]string) {
	for mask := 1; mask < 1<<len(all); mask++ {
		var set []string
		for i, id := range all {
			if mask>>i&1 == 1 {
				set = append(set, id)
			}
		}
		out = append(out, set)
	}
	return out
}

func TestWorthNeverRisesWithALensLess(t *testing.T) {
	s := read(t, small, nil)
	all := bags([]string{"16-35", "24-70", "70-200", "300-2.8"})
	table, err := score(t.Context(), s.Arena, s.Kit, s.Holes, all, 500)
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		more := rapid.SampledFrom(slices.DeleteFunc(slices.Clone(all), func(b []string) bool { return len(b) < 2 })).Draw(t, "lenses")
		k := rapid.IntRange(0, len(more)-1).Draw(t, "left at home")
		less := slices.Delete(slices.Clone(more), k, k+1)
		g := s.Games[rapid.IntRange(0, len(s.Games)-1).Draw(t, "game")]
		follows, hole := rapid.SampledFrom(Follows()).Draw(t, "follows"), rapid.SampledFrom(s.Holes).Draw(t, "hole")
		for period := 1; period <= g.Periods; period++ {
			worth := func(lenses []string) View {
				return s.Worth(table, g, Ask{Person{Lenses: lenses}, Request{Follows: follows}, false}, period, hole).View
			}
			if m, l := worth(more), worth(less); l.Value > m.Value+1e-9 || l.Seen > m.Seen+1e-9 {
				t.Fatalf("%s, %s in period %d: %v with %v, %v with %v", hole, follows, period, l, less, m, more)
			}
		}
	})
}

func TestWorthFollowsTheEnds(t *testing.T) {
	s := read(t, small, nil)
	table, err := s.Score(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	value := func(ends play.Ends, follows Follow, period int) float64 {
		g := s.Games[0]
		g.Ends = ends
		return s.Worth(table, g, Ask{s.People[0], Request{Follows: follows}, false}, period, "B1").Value
	}
	b, a := play.EndsFrom(+1), play.EndsFrom(-1)
	for _, c := range []struct {
		follows, other Follow
	}{{Home, Away}, {HomeGoalkeeper, AwayGoalkeeper}} {
		for period := 1; period <= 3; period++ {
			if one, two := value(b, c.follows, period), value(a, c.follows, period+1); one != two {
				t.Errorf("%s: %v in period %d, %v after the change the other way round", c.follows, one, period, two)
			}
		}
	}
	// A fixed end does not care who attacks it first, but for the benches, which stand apart.
	if one, two := value(b, EndB, 1), value(a, EndB, 1); math.Abs(one-two) > 0.02 || one < 2*value(b, EndA, 1) {
		t.Errorf("end B from B1: %v and %v, end A %v", one, two, value(b, EndA, 1))
	}
	if both, home, away := value(b, Both, 1), value(b, Home, 1), value(b, Away, 1); both < min(home, away) || both > max(home, away) {
		t.Errorf("both teams %v, home %v, away %v", both, home, away)
	}
}

func TestWhatBarsAHoleIsSaid(t *testing.T) {
	s := read(t, small, nil)
	table, err := s.Score(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	g1, _ := s.Game("g1")
	g2, _ := s.Game("g2")
	ann, _ := s.Person("ann")
	bo, _ := s.Person("bo")
	seated, remote := ann, ann
	seated.Works = choose.Person{Posture: choose.Sits}
	remote.Works, remote.Camera = seated.Works, Remote
	for name, c := range map[string]struct {
		g    Game
		who  Person
		ask  Request
		hole string
		want string
	}{
		"a free hole":      {g1, ann, Request{Follows: Home}, "B1", "the goals of the team you follow: 36 % of them face this hole"},
		"both teams":       {g1, ann, Request{Follows: Both}, "B1", "the goals you follow: 42 % of them face this hole"},
		"a goalkeeper":     {g1, bo, Request{Follows: AwayGoalkeeper}, "B1", "the goalkeeper you follow: 42 % of the play before the goal is seen from this hole"},
		"said by them":     {g1, bo, Request{Follows: Home}, "A1", "bo cannot use A1"},
		"closed":           {g2, ann, Request{Follows: Home}, "A3", "A3 is closed: the inspection refused it"},
		"open another day": {g1, ann, Request{Follows: Away}, "A3", "the goals of the team you follow"},
		"no such period":   {g1, ann, Request{Follows: Home, Periods: []int{2}}, "B1", "Ann does not ask for period 1"},
		"too high to sit":  {g1, seated, Request{Follows: Home}, "B1", "Ann works from 1.06 m to 1.19 m above the ice; B1 is at 1.47 m"},
		"a remote camera":  {g1, remote, Request{Follows: Home}, "B1", "the goals of the team you follow"},
	} {
		c.ask.Who = c.who.ID
		got := s.Worth(table, c.g, Ask{c.who, c.ask, false}, 1, c.hole).Why().In(unit.Metric)
		if len(got) < len(c.want) || got[:len(c.want)] != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

func TestEveryPhaseIsCounted(t *testing.T) {
	if n := len(play.Phases()); n != phases {
		t.Errorf("play has %d phases, worth counts %d", n, phases)
	}
}
