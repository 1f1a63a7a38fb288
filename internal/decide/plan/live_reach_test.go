package plan_test

import (
	"context"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// TestLiveReachAgreesWithMake compares the reach map of a page with the plan's
// shares, and its cells with their sum.
func TestLiveReachAgreesWithMake(t *testing.T) {
	maker, doc := liveMaker(t), liveDemo(t)
	whole, err := maker.Make(context.Background(), doc)
	if err != nil {
		t.Fatal(err)
	}
	live := plan.NewLive(maker)
	for _, h := range whole.Holes[:2] {
		for face, want := range map[bool]float64{false: h.Reach.Share, true: h.Reach.FaceShare} {
			m, err := live.Reach(t.Context(), doc, plan.ReachQuestion{Hole: h.ID, Face: face})
			if err != nil {
				t.Fatal(err)
			}
			ice, seen, layer := 0, 0, m.Layers[0]
			for row := range m.Grid.Rows {
				first, last := m.Grid.Run(row)
				for column := first; column < last; column++ {
					ice++
					if layer.Count(m.Grid.Index(column, row)) > 0 {
						seen++
					}
				}
			}
			if layer.Share != want || math.Abs(float64(seen)/float64(ice)-want) > 1e-12 || ice != m.Grid.Cells() || ice < 20_000 {
				t.Errorf("%s, faces %v: share %g, %d of %d cells, expected %g", h.ID, face, layer.Share, seen, ice, want)
			}
		}
	}
}

// TestLiveWedgesAreThoseOfSight compares both outlines with package sight's own.
func TestLiveWedgesAreThoseOfSight(t *testing.T) {
	maker, doc := liveMaker(t), liveDemo(t)
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	mapper, err := sight.NewMapper(a, maker.Kit)
	if err != nil {
		t.Fatal(err)
	}
	hole := a.Holes[0]
	now, err := plan.NewLive(maker).Try(doc, plan.Question{Hole: hole.ID})
	if err != nil {
		t.Fatal(err)
	}
	if len(now.Picked.Wedges) != 2 {
		t.Fatalf("%d wedges", len(now.Picked.Wedges))
	}
	for _, w := range now.Picked.Wedges {
		own, err := mapper.WedgeOf(hole, sight.PuckHeight, w.Lens, w.Focal)
		if err != nil {
			t.Fatal(err)
		}
		points, got := own.Polygon(), w.Polygon()
		if len(points) < 20 || !slices.Equal(points, got) {
			t.Fatalf("lens %q: %d points, expected %d", w.Lens, len(got), len(points))
		}
	}
	if _, err := mapper.WedgeOf(hole, sight.PuckHeight, "no such lens", 0); err == nil {
		t.Error("a lens that nobody has was aimed")
	}
}

// TestLiveKeepsGroundApart asks about arenas in turn that differ in one pane:
// what was kept for one must not answer for another.
func TestLiveKeepsGroundApart(t *testing.T) {
	live, doc := plan.NewLive(liveMaker(t)), liveDemo(t)
	thin, err := doc.Set("glass.thickness", form.Text("3/8 in"))
	if err != nil {
		t.Fatal(err)
	}
	var first []plan.Now
	for range 2 {
		for i, d := range []*arena.Document{doc, thin} {
			now, err := live.Try(d, plan.Question{Hole: "B1"})
			if err != nil {
				t.Fatal(err)
			}
			if len(first) < 2 {
				first = append(first, now)
				continue
			}
			if now.Picked.Fits[0].Pan.Body != first[i].Picked.Fits[0].Pan.Body {
				t.Errorf("arena %d: %v, then %v", i, first[i].Picked.Fits[0].Pan.Body, now.Picked.Fits[0].Pan.Body)
			}
		}
	}
	if first[0].Picked.Fits[0].Pan.Body.Or(9) >= first[1].Picked.Fits[0].Pan.Body.Or(0) {
		t.Error("a thinner pane does not let the lens turn farther")
	}
}

func TestLiveSaysWhatIsNotThere(t *testing.T) {
	live, doc := plan.NewLive(liveMaker(t)), liveDemo(t)
	for says, q := range map[string]plan.Question{
		"no hole": {Hole: "nobody"}, "no lens": {Hole: "B1", Lens: "nothing"}, "at 1 mm": {Hole: "B1", Lens: "70-200", Focal: unit.Millimetre},
	} {
		if _, err := live.Try(doc, q); !errors.Is(err, plan.ErrAsked) || !strings.Contains(err.Error(), says) {
			t.Errorf("%+v: %v", q, err)
		}
	}
	for _, q := range []plan.ReachQuestion{{Hole: "nobody"}, {Hole: "B1", Step: 0.01}, {Hole: "B1", Step: 9}, {Hole: "B1", Step: unit.Length(math.NaN())}} {
		if _, err := live.Reach(t.Context(), doc, q); !errors.Is(err, plan.ErrAsked) {
			t.Errorf("%+v: %v", q, err)
		}
	}
	off, err := doc.Set("holes[B1].state", form.Text("off"))
	if err != nil {
		t.Fatal(err)
	}
	if now, err := live.Try(off, plan.Question{Hole: "B1"}); err != nil || now.Picked != nil {
		t.Errorf("a hole turned off: %+v, %v", now.Picked, err)
	}
}
