package rules_test

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// testArena is a marked rink with acrylic panes, 4 ft wide or a little less,
// all the way round, and no holes yet.
func testArena(t testing.TB, standard string) arena.Arena {
	t.Helper()
	r, err := rink.Standard(standard)
	if err != nil {
		t.Fatal(err)
	}
	a := arena.Arena{
		Name: "Test rink", Units: unit.Metric, Rink: r, NoZones: true,
		Boards: glass.Boards{Height: 42 * unit.Inch, Ledge: unit.Known(9 * unit.Inch), Setback: unit.Known(unit.Inch)},
	}
	const panes = 132
	width := r.Perimeter() / panes
	for i := range panes {
		a.Panes = append(a.Panes, glass.Pane{
			ID: "P" + string(rune('A'+i/26)) + string(rune('a'+i%26)), From: unit.Length(i) * width, Width: width,
			Height: 6 * unit.Foot, Thickness: unit.Known(unit.Inch / 2), Material: unit.Known(glass.Acrylic), Curved: true,
		})
	}
	return a
}

// at returns a hole that common practice likes, at an offset from a landmark.
func at(t testing.TB, a arena.Arena, id string, c rink.Corner, l rink.Landmark, offset unit.Length) glass.Hole {
	t.Helper()
	s, err := a.Rink.FromLandmark(c, l, offset)
	if err != nil {
		t.Fatal(err)
	}
	return holeAt(t, a, id, s)
}

func holeAt(t testing.TB, a arena.Arena, id string, s unit.Length) glass.Hole {
	t.Helper()
	p, ok := a.PaneAt(s)
	if !ok {
		t.Fatalf("no pane at %v", s)
	}
	return glass.Hole{
		ID: id, Pane: p.ID, Station: s, Height: 58 * unit.Inch, Size: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch},
		Corner: unit.Known(unit.Inch / 2), Rounding: unit.Known(unit.Inch / 8),
		Cover: unit.Known(glass.Cover{Present: true, Material: glass.Acrylic, Tether: unit.Known(true)}),
	}
}

// with returns the arena with holes.
func with(a arena.Arena, holes ...glass.Hole) arena.Arena {
	a.Holes = holes
	return a
}

// set returns a rule set with the given rules, written as YAML at no indent.
func set(t testing.TB, text string) rules.Sets {
	t.Helper()
	return read(t, "rules:\n"+text)
}

// read returns a rule set from what stands behind its head.
func read(t testing.TB, text string) rules.Sets {
	t.Helper()
	head := "rinkpane: rules 1\nid: own\nname: a set for a test\nstatus: test\n"
	s, err := rules.Read("own.yaml", strings.NewReader(head+text))
	if err != nil {
		t.Fatal(err)
	}
	return rules.Only(s)
}

func shipped(t testing.TB, ids ...string) rules.Sets {
	t.Helper()
	var out []rules.Set
	for _, id := range ids {
		s, err := rules.Shipped(id)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, s)
	}
	return rules.Only(out...)
}

// only returns the findings of one rule.
func only(rep rules.Report, rule string) []rules.Finding {
	var out []rules.Finding
	for _, f := range rep.Findings {
		if f.Rule == rule {
			out = append(out, f)
		}
	}
	return out
}

// number returns an amount as the rule books write it: lengths in a pane in
// millimetres, along the boards in metres; +Inf when there is none.
func number(m unit.Maybe[rules.Amount]) float64 {
	a, ok := m.Get()
	switch {
	case !ok:
		return math.Inf(1)
	case a.Of == rules.InPane:
		return a.N * 1e3
	}
	return a.N
}

func known(m unit.Maybe[rules.Amount]) bool {
	_, ok := m.Get()
	return ok
}
