package sight_test

import (
	"context"
	"testing"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/rink"
)

var bothHeights = []unit.Length{sight.PuckHeight, sight.FaceHeight}

// bare is an arena with one pane wherever it is asked, and six lenses.
func bare(t testing.TB, standard string) (arena.Arena, kit.Kit) {
	t.Helper()
	r, err := rink.Standard(standard)
	if err != nil {
		t.Fatal(err)
	}
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	a := arena.Arena{
		Name: "Test rink", Rink: r, Lenses: []string{"24-70", "70-200", "85-1.8", "135-2", "300-2.8", "400-2.8"},
		Boards: glass.Boards{Height: 1.07, Setback: unit.Known[unit.Length](0.05)},
	}
	return a, k
}

// hole adds a pane and returns a hole in the middle of it.
func hole(a *arena.Arena, id string, station, height unit.Length) glass.Hole {
	station = a.Rink.Wrap(station)
	a.Panes = append(a.Panes, glass.Pane{
		ID: "pane-" + id, From: a.Rink.Wrap(station - 0.6), Width: 1.2, Height: 2, Thickness: unit.Known[unit.Length](0.0127),
	})
	return glass.Hole{
		ID: id, Pane: "pane-" + id, Station: station, Height: height,
		Size: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}, Corner: unit.Known[unit.Length](0.0127),
	}
}

func mapped(t testing.TB, a arena.Arena, k kit.Kit, h glass.Hole, step unit.Length) sight.Reach {
	t.Helper()
	m, err := sight.NewMapper(a, k)
	if err != nil {
		t.Fatal(err)
	}
	g, err := sight.NewGrid(a.Rink, step)
	if err != nil {
		t.Fatal(err)
	}
	r, err := m.Map(context.Background(), h, g, bothHeights)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func opening(t testing.TB, a arena.Arena, h glass.Hole) arena.Opening {
	t.Helper()
	o, err := a.OpeningOf(h)
	if err != nil {
		t.Fatal(err)
	}
	return o
}
