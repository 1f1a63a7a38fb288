package rules_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// moved returns the arena with every station changed by turn, and every piece
// of boards run the other way when mirror is set.
func moved(a arena.Arena, turn func(unit.Length) unit.Length, mirror bool) arena.Arena {
	b := a
	b.Panes, b.Holes, b.Zones = nil, nil, nil
	for _, p := range a.Panes {
		from := p.From
		if mirror {
			from = p.To()
		}
		p.From = a.Rink.Wrap(turn(from))
		b.Panes = append(b.Panes, p)
	}
	for _, h := range a.Holes {
		h.Station = a.Rink.Wrap(turn(h.Station))
		b.Holes = append(b.Holes, h)
	}
	for _, z := range a.Zones {
		if mirror {
			z.From, z.To = z.To, z.From
		}
		z.From, z.To = a.Rink.Wrap(turn(z.From)), a.Rink.Wrap(turn(z.To))
		b.Zones = append(b.Zones, z)
	}
	return b
}

// TestMovedArenaKeepsItsFindings: turned by half a turn, mirrored along the
// rink's axes or told in the other units, an arena has the same findings with
// the same margins.
func TestMovedArenaKeepsItsFindings(t *testing.T) {
	base := testArena(t, "north-american")
	base.Zones = []arena.Zone{{ID: "tv", Kind: "broadcast", From: 25, To: 29}, {ID: "home", Kind: "bench", From: base.Rink.Perimeter() - 3, To: 4}}
	for i := 1; i < len(base.Panes); i += 3 {
		base.Panes[i].Material = unit.Known(glass.Tempered)
	}
	sets := shipped(t, "common-practice", "tempered-glass", "example-loose").And(set(t, "- {kind: least-separation, least: 1 m, between: rims}"))
	half := base.Rink.Perimeter() / 2
	seen := 0
	rapid.Check(t, func(t *rapid.T) {
		a := with(base, holesNearLandmarks(t, base)...)
		want := sets.Check(a)
		imperial := a
		imperial.Units = unit.Imperial
		for name, b := range map[string]arena.Arena{
			"half turn":               moved(a, func(s unit.Length) unit.Length { return s + half }, false),
			"mirrored, ends swapped":  moved(a, func(s unit.Length) unit.Length { return 2*half - s }, true),
			"mirrored, sides swapped": moved(a, func(s unit.Length) unit.Length { return half - s }, true),
			"in feet":                 imperial,
		} {
			got := sets.Check(b)
			if len(got.Findings) != len(want.Findings) || got.Verdict != want.Verdict {
				t.Fatalf("%s: %s with %d findings, want %s with %d", name, got.Verdict, len(got.Findings), want.Verdict, len(want.Findings))
			}
			for i, f := range want.Findings {
				if f.Of == rules.HoleCount {
					continue // the corners change places
				}
				seen++
				g := got.Findings[i]
				if g.Status != f.Status || known(g.Margin) != known(f.Margin) || known(f.Margin) && math.Abs(number(g.Margin)-number(f.Margin)) > 1e-6 {
					t.Fatalf("%s: rule %s\n%+v\n%+v", name, f.Rule, f, g)
				}
			}
		}
	})
	if seen < 1000 {
		t.Errorf("%d findings compared", seen)
	}
}

// TestMoreGlassNeverBreaksADistance: moving a hole toward the middle of its pane
// never lessens the margin of an edge or corner rule.
func TestMoreGlassNeverBreaksADistance(t *testing.T) {
	a := testArena(t, "north-american")
	p := a.Panes[3]
	s := set(t, "- {kind: pane-edge, least: 75 mm}\n- {kind: pane-corner, least: 75 mm}")
	rapid.Check(t, func(t *rapid.T) {
		off := rapid.Float64Range(0, (p.Width/2).Metres()).Draw(t, "from the middle")
		nearer := off * rapid.Float64Range(0, 1).Draw(t, "share")
		ask := func(off float64) []rules.Finding {
			h := s.Standard(a)
			h.Pane, h.Station = p.ID, p.From+p.Width/2+unit.Length(off)
			return s.On(a).Alone(h)
		}
		far, near := ask(off), ask(nearer)
		for i := range far {
			if number(near[i].Margin) < number(far[i].Margin)-1e-9 {
				t.Fatalf("%s: margin %v at %v m from the middle, %v at %v m", near[i].Rule, number(near[i].Margin), nearer, number(far[i].Margin), off)
			}
		}
	})
}
