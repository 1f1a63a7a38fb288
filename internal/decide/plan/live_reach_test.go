package plan_test

import (
	"context"
	"errors"
	"math"
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
			ice, seen := 0, 0
			for _, c := range m.Cells {
				if c != plan.OffIce {
					ice++
				}
				if c != plan.OffIce && c > 0 {
					seen++
				}
			}
			if m.Share != want || math.Abs(float64(seen)/float64(ice)-want) > 1e-12 || len(m.Cells) != m.Columns*m.Rows || ice < 20_000 {
				t.Errorf("%s, faces %v: share %g, %d of %d cells, expected %g", h.ID, face, m.Share, seen, ice, want)
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
		own, err := mapper.WedgeOf(hole, sight.PuckHeight, w.Lens, unit.Length(w.Focal)*unit.Millimetre)
		if err != nil {
			t.Fatal(err)
		}
		points := own.Polygon()
		if len(points) != len(w.Points) || len(points) < 20 {
			t.Fatalf("lens %q: %d points, expected %d", w.Lens, len(w.Points), len(points))
		}
		for i, p := range points {
			if math.Abs(p.X-w.Points[i][0]) > 0.0006 || math.Abs(p.Y-w.Points[i][1]) > 0.0006 {
				t.Fatalf("lens %q, point %d: %v, expected %v", w.Lens, i, w.Points[i], p)
			}
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
			if *now.Picked.Fits[0].PanBody != *first[i].Picked.Fits[0].PanBody {
				t.Errorf("arena %d: %g, then %g", i, *first[i].Picked.Fits[0].PanBody, *now.Picked.Fits[0].PanBody)
			}
		}
	}
	if *first[0].Picked.Fits[0].PanBody >= *first[1].Picked.Fits[0].PanBody {
		t.Error("a thinner pane does not let the lens turn farther")
	}
}

func TestLiveSaysWhatIsNotThere(t *testing.T) {
	live, doc := plan.NewLive(liveMaker(t)), liveDemo(t)
	for says, q := range map[string]plan.Question{
		"no hole": {Hole: "nobody"}, "no lens": {Hole: "B1", Lens: "nothing"}, "at 1 mm": {Hole: "B1", Lens: "70-200", Focal: 1},
	} {
		if _, err := live.Try(doc, q); !errors.Is(err, plan.ErrAsked) || !strings.Contains(err.Error(), says) {
			t.Errorf("%+v: %v", q, err)
		}
	}
	for _, q := range []plan.ReachQuestion{{Hole: "nobody"}, {Hole: "B1", Step: 0.01}, {Hole: "B1", Step: 9}, {Hole: "B1", Step: math.NaN()}} {
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
