package play_test

import (
	"bytes"
	"math"
	"strings"
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

// TestAnyCrewOfOfficials: so many referees and linesmen as are said stand on the ice, and
// are written as what they are; a file of them reads back.
func TestAnyCrewOfOfficials(t *testing.T) {
	known := unit.Known[int]
	for _, c := range []struct {
		g                  play.Game
		referees, linesmen int
	}{
		{play.Game{}, 2, 2}, {play.Game{Officials: 3}, 1, 2}, {play.Game{Officials: 2}, 1, 1},
		{play.Game{Referees: known(3)}, 3, 1}, {play.Game{Referees: known(3), Linesmen: known(0)}, 3, 0},
		{play.Game{Referees: known(1), Linesmen: known(3)}, 1, 3}, {play.Game{Referees: known(2), Linesmen: known(0)}, 2, 0},
		{play.Game{Referees: known(1), Linesmen: known(0)}, 1, 0}, {play.Game{Officials: 3, Referees: known(2)}, 2, 1},
	} {
		var file bytes.Buffer
		set := games(t, c.g)
		if err := set.WriteMoments(&file); err != nil {
			t.Fatal(err)
		}
		if r, l := strings.Count(file.String(), ",referee,"), strings.Count(file.String(), ",linesman,"); r != c.referees*set.Len() || l != c.linesmen*set.Len() {
			t.Errorf("%+v: %d referees and %d linesmen in %d moments", c.g, r, l, set.Len())
		}
		r, err := rink.Standard(rink.International)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := play.ReadTracks("moments.csv", &file, r); err != nil {
			t.Errorf("%+v: %v", c.g, err)
		}
	}
	for _, g := range []play.Game{{Referees: known(3), Linesmen: known(2)}, {Referees: known(0), Linesmen: known(0)}, {Referees: known(5)}, {Linesmen: known(-1)}} {
		if g.Check() == nil {
			t.Errorf("%+v passed", g)
		}
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
	goals := set.Layout.Goals()
	if len(goals) != 4 {
		t.Fatalf("%d goals, expected two in each end zone", len(goals))
	}
	for _, g := range goals {
		if math.Abs(g.Line.X) > 23 || math.Abs(math.Abs(g.Line.Y)-13) > 0.01 || g.In.X != 0 || g.In.Y*g.Line.Y < 0 {
			t.Errorf("a goal at %v opens away from %v: goals at the ends hide players of a game across", g.Line, g.In)
		}
	}
	for _, s := range set.Shots(3) {
		if math.Sin(s.Azimuth)*float64(s.Side) < 0.2 && math.Abs(s.Y) < 8 {
			t.Errorf("a shot from %g, %g flies toward %.0f degrees", s.X, s.Y, s.Azimuth*180/math.Pi)
		}
	}
}
