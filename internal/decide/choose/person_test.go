package choose

import (
	"math"
	"slices"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

func TestWhereAPersonWorks(t *testing.T) {
	surveyed := arena.Arena{Boards: glass.Boards{Floor: unit.Known(-0.1 * unit.Metre)}}
	for _, c := range []struct {
		eye             string
		arena           arena.Arena
		best, low, high float64 // metres
		assumed         bool
	}{
		{"standing", arena.Arena{}, 1.54, 1.29, 1.58, true},
		{"standing", surveyed, 1.44, 1.19, 1.48, false},
		{"sitting", surveyed, 1.045, 0.965, 1.085, false},
		{"wheelchair", arena.Arena{}, 1.1338, 1.0338, 1.1838, true},
		{"1.7 m", arena.Arena{}, 1.64, 1.39, 1.68, true},
	} {
		p, err := ParseEye(c.eye)
		w := p.At(c.arena)
		for k, got := range [...]unit.Length{w.Best, w.Low, w.High} {
			if want := [...]float64{c.best, c.low, c.high}[k]; err != nil || math.Abs(got.Metres()-want) > 1e-4 || w.FloorAssumed != c.assumed {
				t.Errorf("%s: %.4f m, want %.4f (%v)", c.eye, got.Metres(), want, err)
			}
		}
	}
	for _, bad := range []string{"", "kneeling", "12", "3 m", "100 mm"} {
		if _, err := ParseEye(bad); err == nil {
			t.Errorf("%q is no eye height", bad)
		}
	}
}

// A person keeps clear of the bench by half the elbow room, the head 32 mm beside
// the hole to the left for the right eye.
func TestElbowRoom(t *testing.T) {
	r, err := rink.Standard("north-american")
	if err != nil {
		t.Fatal(err)
	}
	a := arena.Arena{Rink: r, Zones: []arena.Zone{{Kind: "bench", From: 10, To: 20}, {Kind: "gate", From: 40, To: 41}}}
	for _, c := range []struct {
		station unit.Length
		left    bool
		crowds  bool
	}{
		{9.6, false, false}, {9.8, false, true}, {9.71, false, false}, {9.71, true, true}, {15, false, true},
		{20.29, false, true}, {20.29, true, false}, {40.5, false, false}, {60, false, false},
	} {
		if got := (Person{Elbow: 0.6, LeftEye: c.left}).Crowds(a, c.station); got != c.crowds {
			t.Errorf("at %g m, left eye %v: crowded %v", c.station, c.left, got)
		}
	}
	if (Person{}).Crowds(a, 15) {
		t.Error("nobody asked about elbows")
	}
}

// What eases a set keeps it legal, brings every hole nearer to where the person
// works, and costs no more than the moments leave open.
func TestEasedIsLegalAndWithinTheMargin(t *testing.T) {
	moved := 0
	for seed := range uint64(20) {
		p := instance(seed, 12, 120)
		p.In, p.Exact, p.Count = nil, false, 4
		s := studied(t, p)
		s.open = 12
		for i := range s.places { // four stations with three heights each
			h := &s.places[i]
			h.Lifted, h.Hole.Pane, h.Hole.Station = true, string(rune('a'+i/3)), unit.Length(i/3)
			h.Hole.Height = unit.Length(1.44 + 0.1*float64(i%3))
		}
		set := s.solver.Solve(t.Context(), 0, nil).Set
		if set == nil {
			continue
		}
		got := s.eased(&s.problem, set)
		if !s.problem.Allows(got) || len(got) != len(set) || s.solver.Value(got) < s.solver.Value(set)-s.solver.margin(set, nil) {
			t.Errorf("seed %d: %v is no easing of %v", seed, got, set)
		}
		away := func(set []int) (sum float64) {
			for _, i := range set {
				sum += math.Abs(s.places[i].Hole.Height.Metres() - 1.54)
			}
			return sum
		}
		if away(got) > away(set)+1e-12 {
			t.Errorf("seed %d: %v lies farther from ease than %v", seed, got, set)
		}
		if !slices.Equal(got, set) {
			moved++
		}
	}
	if moved < 5 {
		t.Errorf("only %d sets were eased", moved)
	}
}
