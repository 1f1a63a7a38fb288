package play_test

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
)

func games(t *testing.T, g play.Game) *play.Set {
	t.Helper()
	r, err := rink.Standard(rink.International)
	if err != nil {
		t.Fatal(err)
	}
	a := play.DefaultAssumptions()
	a.Game = g
	set, err := play.Sample(t.Context(), r, a, 7, 600)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

// TestOfficialsOnTheIce: with three or two officials the others stand nowhere, and
// everybody else stands as with four.
func TestOfficialsOnTheIce(t *testing.T) {
	usual := games(t, play.Game{})
	for officials, gone := range map[int][]int{2: {13, 15}, 3: {13}, 4: nil} {
		set := games(t, play.Game{Officials: officials})
		for i := range set.Len() {
			m, was := set.At(i), usual.At(i)
			for k, p := range m.People {
				off := false
				for _, g := range gone {
					off = off || g == k
				}
				if (p.Height == 0) != off || !off && p != was.People[k] {
					t.Fatalf("%d officials, moment %d, place %d: %+v, was %+v", officials, i, k, p, was.People[k])
				}
			}
		}
	}
	if (play.Game{Officials: 5}).Check() == nil || (play.Game{Officials: 1}).Check() == nil {
		t.Error("5 or 1 officials passed")
	}
}

// TestBenchesOnOppositeSides: each team's line glides past its own bench.
func TestBenchesOnOppositeSides(t *testing.T) {
	set := games(t, play.Game{Opposite: true, Home: unit.Known(play.Bank{Middle: 6, Half: 5}), Guests: unit.Known(play.Bank{Middle: -8, Half: 4})})
	met := [2]int{}
	for i := range set.Len() {
		m := set.At(i)
		if m.Phase != play.Bench {
			continue
		}
		p := m.People[0]
		met[m.Team]++
		if m.Team == 0 && (p.Y > -10 || p.X < -2 || p.X > 14) || m.Team == 1 && (p.Y < 10 || p.X < -15 || p.X > -1) {
			t.Errorf("team %d glides past at %g, %g", m.Team, p.X, p.Y)
		}
	}
	if met[0] < 5 || met[1] < 5 {
		t.Errorf("met %v benches", met)
	}
}

// TestGamesAcrossTheIce: everybody stands in an end zone, and goes at nets at the side boards.
func TestGamesAcrossTheIce(t *testing.T) {
	set := games(t, play.Game{CrossIce: true})
	along := 0
	for i := range set.Len() {
		m := set.At(i)
		for k, p := range m.People {
			if math.Abs(p.X) < 30-22.86-0.2 || math.Abs(p.X) > 30 || math.Abs(p.Y) > 15 {
				t.Fatalf("moment %d, place %d stands at %g, %g", i, k, p.X, p.Y)
			}
		}
		if g := m.People[play.DefenderGoalie]; math.Abs(g.Y) > 10 {
			along++
		}
	}
	if along < set.Len()*9/10 {
		t.Errorf("the goalkeeper stands at the side boards in %d of %d moments", along, set.Len())
	}
	if set.Layout.GoalHeight != 0 {
		t.Error("goal frames at the ends hide players of a game across")
	}
}
