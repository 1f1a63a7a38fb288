package sight_test

import (
	"context"
	"testing"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// BenchmarkReachCold maps one hole on a 0.1 m grid at two heights with six
// lenses, tracing included. Budget: 150 ms on two cores.
func BenchmarkReachCold(b *testing.B) {
	a, k := demo(b)
	heights := []unit.Length{sight.PuckHeight, sight.FaceHeight}
	for b.Loop() {
		m, err := sight.NewMapper(a, k)
		if err != nil {
			b.Fatal(err)
		}
		g, err := sight.NewGrid(a.Rink, sight.DefaultStep)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := m.Map(context.Background(), a.Holes[0], g, heights); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkReachWarm is the same with the lenses traced already.
func BenchmarkReachWarm(b *testing.B) {
	a, k := demo(b)
	heights := []unit.Length{sight.PuckHeight, sight.FaceHeight}
	m, err := sight.NewMapper(a, k)
	if err != nil {
		b.Fatal(err)
	}
	g, err := sight.NewGrid(a.Rink, sight.DefaultStep)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := m.Map(context.Background(), a.Holes[0], g, heights); err != nil {
			b.Fatal(err)
		}
	}
}

// demo returns the demo arena and six lenses of the generic kit.
func demo(t testing.TB) (arena.Arena, kit.Kit) {
	t.Helper()
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	a.Lenses = []string{"24-70", "70-200", "85-1.8", "135-2", "300-2.8", "400-2.8"}
	return a, k
}
