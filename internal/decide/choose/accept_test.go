package choose_test

import (
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/glass"
)

// accepted takes a set over, with another standard hole in force where the
// document is kept, and returns the arena that is then read back.
func accepted(t testing.TB, doc *arena.Document, ans choose.Answer, n int, take []string) arena.Arena {
	t.Helper()
	edits := ans.Accept(n, take, true)
	if len(edits) > 0 {
		other := glass.Hole{Size: unit.Size{W: 8 * unit.Inch, H: 7 * unit.Inch}, Height: 1.6}
		next, _, err := edit.Editor{Standard: func(arena.Arena) glass.Hole { return other }}.Apply(doc, edits)
		if err != nil {
			t.Fatal(err)
		}
		doc = next
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// TestAcceptedIsWhatWasProved: whatever is asked for, a set that is taken over,
// whole or in part, passes a check by the rules that it was proved for, hole by
// hole as it was proved.
func TestAcceptedIsWhatWasProved(t *testing.T) {
	if testing.Short() {
		t.Skip("computes much, step after step; make test runs it without the race detector")
	}
	_, _, k := demo(t)
	checked := 0
	rapid.Check(t, func(rt *rapid.T) {
		name := rapid.SampledFrom([]string{examples.Demo, "brennholm.yaml", "sorrel-flats.yaml"}).Draw(rt, "arena")
		doc := read(t, name)
		a, err := doc.Check()
		if err != nil {
			t.Fatal(err)
		}
		set, err := rules.Shipped(rapid.SampledFrom([]string{"common-practice", "example-loose", "tempered-glass"}).Draw(rt, "rules"))
		if err != nil {
			t.Fatal(err)
		}
		sets, err := rules.InForce(set)
		if err != nil {
			t.Fatal(err)
		}
		o := few()
		o.Moments, o.Nodes, o.Alternatives = 120, 2, 1
		o.Step = unit.Length(rapid.Float64Range(0.2, 0.9).Draw(rt, "step"))
		o.Edge = unit.Length(rapid.Float64Range(0.02, 0.3).Draw(rt, "edge"))
		if rapid.Bool().Draw(rt, "heights") {
			o.Heights = []unit.Length{unit.Length(rapid.Float64Range(1.3, 1.8).Draw(rt, "height"))}
		}
		ans, err := choose.ForArena(t.Context(), a, sets, k, o)
		if err != nil {
			rt.Skip(err.Error())
		}
		n := rapid.IntRange(0, len(ans.Alternatives)).Draw(rt, "set")
		var take []string
		proved := map[unit.Length]glass.Hole{}
		for _, c := range ans.Set(n) {
			if rapid.IntRange(0, 5).Draw(rt, "take") > 0 || !c.New {
				take = append(take, c.Hole.ID)
				proved[c.Hole.Station] = c.Hole
			}
		}
		now := accepted(t, doc, ans, n, take)
		if len(ans.Holes) == 0 {
			return
		}
		checked++
		if len(now.Working()) != len(proved) {
			rt.Fatalf("%d holes stand, %d were taken", len(now.Working()), len(proved))
		}
		for _, h := range now.Working() {
			want := proved[h.Station]
			if want.Size != h.Size || want.Corner != h.Corner || want.Rounding != h.Rounding || want.Height != h.Height || want.Cover != h.Cover || want.Pane != h.Pane {
				rt.Errorf("written %+v\nproved  %+v", h, want)
			}
		}
		if v := sets.Check(now).Verdict; len(now.Working()) > 0 && v != rules.Pass {
			rt.Errorf("%s by %s: accepted, and then judged %s", name, set.ID, v)
		}
	})
	if checked < 10 {
		t.Errorf("only %d accepted sets were checked", checked)
	}
}

// TestAcceptedHolesKeepTheirSize is the fault as it was met: another set in
// force asks for holes of 8 x 7 in, and holes proved at 5.5 x 4.5 in stay so.
func TestAcceptedHolesKeepTheirSize(t *testing.T) {
	a, sets, k := demo(t)
	_, ans := answer(t, a, sets, k, few())
	var take []string
	for _, c := range ans.Set(0) {
		take = append(take, c.Hole.ID)
	}
	now := accepted(t, read(t, examples.Demo), ans, 0, take)
	for _, h := range now.Working() {
		if want := (unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}); h.Size != want {
			t.Errorf("hole %s is %s", h.ID, h.Size.Format(unit.Imperial))
		}
	}
	if len(now.Working()) != 8 || sets.Check(now).Verdict != rules.Pass {
		t.Errorf("%d holes, %s", len(now.Working()), sets.Check(now).Verdict)
	}
}
