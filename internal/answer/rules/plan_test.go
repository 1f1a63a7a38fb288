package rules_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// TestPlannersSeeTheSameRules: a plan passes Check exactly when every hole
// passes alone, no pair conflicts and no group is over its cap.
func TestPlannersSeeTheSameRules(t *testing.T) {
	base := testArena(t, "north-american")
	base.Zones = []arena.Zone{{ID: "tv", Kind: "broadcast", From: 25, To: 29}}
	sets := shipped(t, "common-practice", "tempered-glass").And(set(t, "- {kind: least-separation, least: 1 m}"))
	for i := 3; i < len(base.Panes); i += 7 {
		base.Panes[i].Material = unit.Known(glass.Tempered)
	}
	verdicts := map[rules.Status]int{}
	rapid.Check(t, func(t *rapid.T) {
		a := with(base, holesNearLandmarks(t, base)...)
		got := sets.Check(a).Verdict
		verdicts[got]++
		want := rules.Pass
		for i, h := range a.Holes {
			if rules.Verdict(sets.On(a).Alone(h)) != sets.On(a).Standing(h) {
				t.Fatal("Standing differs from Alone")
			}
			want = worse(want, sets.On(a).Standing(h))
			for _, k := range a.Holes[i+1:] {
				want = worse(want, rules.Verdict(sets.On(a).Conflict(h, k)))
			}
		}
		for _, g := range sets.On(a).Groups() {
			n := 0
			for _, h := range a.Holes {
				if g.Has(h) {
					n++
				}
			}
			if n > g.Most {
				want = rules.Fail
			}
		}
		if got != want {
			t.Fatalf("Check says %s, the parts say %s", got, want)
		}
	})
	if verdicts[rules.Pass] == 0 || verdicts[rules.Fail] == 0 {
		t.Errorf("verdicts met: %v", verdicts)
	}
}

func worse(a, b rules.Status) rules.Status {
	return rules.Verdict([]rules.Finding{{Status: a}, {Status: b}})
}

// holesNearLandmarks draws up to three holes, often on a permitted stretch.
func holesNearLandmarks(t *rapid.T, a arena.Arena) []glass.Hole {
	var out []glass.Hole
	for i := range rapid.IntRange(0, 3).Draw(t, "holes") {
		s, _ := a.Rink.Landmark(rapid.SampledFrom([]rink.Corner{rink.BBench, rink.BBox, rink.ABox}).Draw(t, "corner"), rapid.SampledFrom([]rink.Landmark{rink.GoalLine, rink.CircleBottom, rink.CircleTop}).Draw(t, "landmark"))
		s = a.Rink.Wrap(s + unit.Length(rapid.Float64Range(-1.2, 1.2).Draw(t, "offset")))
		p, _ := a.PaneAt(s)
		out = append(out, glass.Hole{
			ID: string(rune('a' + i)), Pane: p.ID, Station: s, Height: 1.5,
			Size:     unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch},
			Corner:   unit.Known(unit.Length(rapid.SampledFrom([]float64{0, 0.02}).Draw(t, "radius"))),
			Rounding: unit.Known[unit.Length](0.003),
			Cover:    unit.Known(glass.Cover{Present: true}),
		})
	}
	return out
}

// TestPermittedIsWhereAStandardHolePasses asks the rules at random stations and
// just inside and outside every end.
func TestPermittedIsWhereAStandardHolePasses(t *testing.T) {
	a := testArena(t, "international")
	a.Zones = []arena.Zone{{ID: "tv", Kind: "broadcast", From: 14, To: 14.6}}
	for i := 5; i < len(a.Panes); i += 3 {
		a.Panes[i].Material = unit.Known(glass.Tempered)
		a.Panes[i].Thickness = unit.Known[unit.Length](0.1) // so thick that the edge rule bites
	}
	a.Panes[20].Material = unit.Maybe[glass.Material]{}
	sets := shipped(t, "common-practice", "tempered-glass")
	permitted, _ := sets.On(a).Permitted()
	if len(permitted) < 12 {
		t.Fatalf("%d pieces permitted", len(permitted))
	}
	inside := func(s unit.Length) bool {
		for _, iv := range permitted {
			if a.Rink.Wrap(s-iv.From) <= iv.To-iv.From {
				return true
			}
		}
		return false
	}
	ask := func(s unit.Length) rules.Status {
		h := sets.Standard(a)
		h.Station = a.Rink.Wrap(s)
		p, ok := a.PaneAt(h.Station)
		if h.Pane = p.ID; !ok || glass.EdgesOf(a.Boards, p, h, a.Rink.Perimeter()).Least() < 0 {
			return rules.Fail
		}
		return sets.On(a).Standing(h)
	}
	for _, iv := range permitted {
		const step = 2e-4
		for s, want := range map[unit.Length]bool{iv.From - step: false, iv.From + step: true, iv.To - step: true, iv.To + step: false} {
			if iv.To-iv.From > 2*step && (ask(s) == rules.Pass) != want {
				t.Errorf("piece %v to %v: at %v the rules say %s", iv.From, iv.To, s, ask(s))
			}
		}
	}
	near := func(s unit.Length) bool { // within the search's accuracy of an end
		for _, iv := range permitted {
			for _, end := range [2]unit.Length{iv.From, iv.To} {
				if math.Abs(math.Remainder((s-end).Metres(), a.Rink.Perimeter().Metres())) < 2e-4 {
					return true
				}
			}
		}
		return false
	}
	rapid.Check(t, func(t *rapid.T) {
		s := unit.Length(rapid.Float64Range(0, a.Rink.Perimeter().Metres()).Draw(t, "station"))
		if !near(s) && inside(s) != (ask(s) == rules.Pass) {
			t.Fatalf("station %v: permitted %v, the rules say %s", s, inside(s), ask(s))
		}
	})
}

// TestPermittedFindsANarrowPiece: an edge rule that leaves 4 mm about the middle
// of each pane.
func TestPermittedFindsANarrowPiece(t *testing.T) {
	a := testArena(t, "north-american")
	sets := set(t, "- {kind: pane-edge, least: 1 mm}\n- {id: narrow, kind: pane-edge, least: "+
		((a.Panes[0].Width-plainHole(t).Size.W)/2-2*unit.Millimetre).Exact(unit.Metric)+"}")
	for i := range a.Panes {
		a.Panes[i].Height = 2 * unit.Metre // top and bottom far enough
	}
	a.Boards.Height = 0.5
	got, _ := sets.On(a).Permitted()
	if len(got) != len(a.Panes) {
		t.Fatalf("%d pieces in %d panes", len(got), len(a.Panes))
	}
	for _, iv := range got {
		if math.Abs((iv.To-iv.From).Metres()-0.004) > 2e-4 {
			t.Errorf("piece of %v, want 4 mm", iv.To-iv.From)
		}
	}
}

// plainHole is the standard hole without any rule.
func plainHole(t *testing.T) glass.Hole { return rules.Sets{}.Standard(testArena(t, "north-american")) }

func TestUndecidedWhereTheSurveyLacksTheThickness(t *testing.T) {
	a := testArena(t, "north-american")
	sets := shipped(t, "common-practice").And(set(t, "- {kind: pane-edge, least: 2 t}"))
	before, undecided := sets.On(a).Permitted()
	if len(undecided) != 0 {
		t.Errorf("undecided with everything known: %v", undecided)
	}
	for i := range a.Panes {
		a.Panes[i].Thickness = unit.Maybe[unit.Length]{}
	}
	permitted, undecided := sets.On(a).Permitted()
	if len(permitted) != 0 {
		t.Errorf("permitted without a thickness: %v", permitted)
	}
	if len(undecided) < len(before) {
		t.Errorf("%d pieces undecided, %d were permitted", len(undecided), len(before))
	}
}

func TestNothingIsPermittedUnderTheBook(t *testing.T) {
	a := testArena(t, "international")
	book := shipped(t, "international-2014")
	if got, _ := book.On(a).Permitted(); len(got) != 0 {
		t.Errorf("%v", got)
	}
	a.Dispensations = []arena.Dispensation{{Rule: "no-opening", By: "b", Reference: "r", Date: "2026-01-31"}}
	if got, _ := book.On(a).Permitted(); len(got) == 0 {
		t.Error("nothing is permitted with a dispensation for every hole")
	}
}

func TestStretchesOnTheBoards(t *testing.T) {
	a := testArena(t, "north-american")
	got := shipped(t, "common-practice").Stretches(a)
	if len(got) != 12 {
		t.Fatalf("%d stretches, want 3 in each of 4 corners", len(got))
	}
	for _, s := range got {
		mark, _ := a.Rink.Landmark(s.Corner, s.Landmark)
		if into := a.Rink.Wrap(mark - s.From + 1e-9); into > s.To-s.From+2e-9 {
			t.Errorf("%s %s does not touch its landmark", s.Corner, s.Name)
		}
		if s.From < 0 || s.From >= a.Rink.Perimeter() || s.Most != 1 || a.Rink.Corner((s.From+s.To)/2) != s.Corner {
			t.Errorf("%+v", s)
		}
	}
}
