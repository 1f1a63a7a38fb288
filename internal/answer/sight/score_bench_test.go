package sight

import (
	"context"
	"fmt"
	"syscall"
	"testing"
	"time"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
)

// ring returns a rink with n holes evenly round its boards, and a kit.
func ring(t testing.TB, n int) (arena.Arena, kit.Kit, []glass.Hole) {
	t.Helper()
	r, err := rink.Standard("north-american")
	if err != nil {
		t.Fatal(err)
	}
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	a := arena.Arena{Name: "ring", Rink: r, Boards: glass.Boards{
		Height: 42 * unit.Inch, Setback: unit.Known(1.5 * unit.Inch), Ledge: unit.Known(9 * unit.Inch),
	}}
	var holes []glass.Hole
	for i := range n {
		id := fmt.Sprintf("P%03d", i)
		at := r.Perimeter() * (unit.Length(i) + 0.5) / unit.Length(n)
		a.Panes = append(a.Panes, glass.Pane{ID: id, From: at - 0.1, Width: 0.2, Height: 6 * unit.Foot, Thickness: unit.Known(5.0 / 8 * unit.Inch)})
		holes = append(holes, glass.Hole{ID: "H" + id, Pane: id, Station: at, Height: 58 * unit.Inch, Size: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}})
	}
	return a, k, holes
}

func momentsOf(t testing.TB, a arena.Arena, seed uint64, n int) *play.Set {
	t.Helper()
	s, err := play.Sample(t.Context(), a.Rink, play.DefaultAssumptions(), seed, n)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func scorer(t testing.TB, a arena.Arena, k kit.Kit) *Scorer {
	t.Helper()
	s, err := NewScorer(a, k, DefaultJudgement())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// processor returns the processor time that the test has used so far: on a busy
// machine it tells more than the clock.
func processor(t testing.TB) time.Duration {
	var r syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &r); err != nil {
		t.Fatal(err)
	}
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}

// The size that the house promises: 160 holes and 20,000 moments.
func BenchmarkScore(b *testing.B) {
	for _, n := range []int{2_000, 20_000} {
		b.Run(fmt.Sprintf("160x%d", n), func(b *testing.B) {
			a, k, holes := ring(b, 160)
			set, s := momentsOf(b, a, 1, n), scorer(b, a, k)
			b.ReportAllocs()
			begun := processor(b)
			for b.Loop() {
				if _, err := s.Score(context.Background(), holes, set, nil); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64((processor(b)-begun).Nanoseconds())/float64(b.N)/160/float64(n), "cpu-ns/view")
		})
	}
}

// What the making of a scorer's aims costs, once for each shape of hole.
func BenchmarkScoreTrace(b *testing.B) {
	a, k, holes := ring(b, 1)
	o, err := a.OpeningOf(holes[0])
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := scorer(b, a, k).tracer.trace(o); err != nil {
			b.Fatal(err)
		}
	}
}
