package choose

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/play"
)

// studied makes a study of a small instance, its moments of all kinds in turn.
func studied(t *testing.T, p Problem) *Study {
	t.Helper()
	s := &Study{solver: solver(t, p), problem: p, opt: Options{Second: p.Second}}
	moments := play.NewSet(play.Layout{}, p.Moments)
	for m := range p.Moments {
		moments.Phase[m], moments.PuckX[m] = play.Phase(m%6), float32(m%2*2-1)
		s.kinds = append(s.kinds, kindOf(moments, m))
	}
	for i := range p.Candidates() {
		s.places = append(s.places, Candidate{Hole: glass.Hole{ID: fmt.Sprint(i)}})
	}
	return s
}

// Each hole's role, moment by moment from the stated scores.
func TestRolesAreWhatTheScoresSay(t *testing.T) {
	compared := 0
	for seed := range uint64(20) {
		p := instance(seed, 8, 90)
		s := studied(t, p)
		set := []int{0, 2, 3, 6}
		worth := s.solver.Worth(set)
		for k, got := range s.roles(set) {
			var best, only float64
			for m, w := range s.solver.weight {
				mine := p.Row(set[k])[m]
				first, alone := mine > 0, mine >= SeenFrom
				for j, i := range set {
					x := p.Row(i)[m]
					first = first && (j == k || x < mine || x == mine && j > k)
					alone = alone && (j == k || x < SeenFrom)
				}
				if first {
					best += w
				}
				if alone {
					only += w
				}
			}
			if math.Abs(sum(got.best)-best) > 1e-9 || math.Abs(sum(got.only)-only) > 1e-9 || math.Abs(sum(got.lost)-worth[k]) > 1e-9 {
				t.Fatalf("seed %d, member %d: best %.9f only %.9f lost %.9f, want %.9f %.9f %.9f",
					seed, k, sum(got.best), sum(got.only), sum(got.lost), best, only, worth[k])
			}
			compared++
		}
	}
	if compared < 80 {
		t.Errorf("only %d roles compared", compared)
	}
}

// A sentence calls a kind of moment most of something only when it is more
// than half of it.
func TestMostMeansMoreThanHalf(t *testing.T) {
	s := studied(t, instance(1, 4, 30))
	r := role{next: make([]float64, 1)}
	r.best[0] = 0.5
	r.only[0], r.only[2], r.only[4] = 0.04, 0.03, 0.03
	r.lost[0], r.lost[2] = 0.06, 0.04
	got := s.sentence([]int{0}, 0, sum(r.lost), &r).In(unit.Metric)
	for _, want := range []string{"alone in seeing 10 %, 40 % of it rush at end A", "is lost, most of it rush at end A"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q lacks %q", got, want)
		}
	}
	r.lost[2] = 0
	if got := s.sentence([]int{0}, 0, sum(r.lost), &r).In(unit.Metric); !strings.Contains(got, "all of it rush at end A") {
		t.Errorf("%q: all is lost in one kind of moment", got)
	}
}

// What a set sees and misses as a whole, moment by moment from the stated scores.
func TestStoryIsWhatTheScoresSay(t *testing.T) {
	missing := 0
	for seed := range uint64(20) {
		p := instance(seed, 8, 90)
		s := studied(t, p)
		set := []int{1, 4}
		seen, missed := 0.0, map[string]float64{}
		for m, w := range s.solver.weight {
			if max(p.Row(1)[m], p.Row(4)[m]) >= SeenFrom {
				seen += w
			} else {
				missed[kindName(int(s.kinds[m]))] += w
			}
		}
		got := s.story(set)
		if math.Abs(got.Seen-seen) > 1e-9 || len(got.Each) != len(set) {
			t.Errorf("seed %d: sees %.9f, want %.9f", seed, got.Seen, seen)
		}
		for kind, w := range missed {
			if missing++; got.Misses == "" || w > missed[got.Misses]+1e-9 && kind != "bench" && got.Misses != "bench" {
				t.Errorf("seed %d: misses %q most, want %q", seed, got.Misses, kind)
			}
		}
	}
	if missing < 10 {
		t.Fatalf("only %d kinds of moments are missed", missing)
	}
}
