package plan_test

import (
	"context"
	"reflect"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/kit"
)

func liveMaker(t testing.TB) plan.Maker {
	t.Helper()
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	set, err := rules.Shipped(rules.Default)
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	return plan.Maker{Kit: k, Rules: sets}
}

func liveDemo(t testing.TB) *arena.Document {
	t.Helper()
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// TestLiveAgreesWithMake compares the quick answer with the whole plan, hole by
// hole: findings, places, limits of every lens, the wedge of all lenses.
func TestLiveAgreesWithMake(t *testing.T) {
	maker, doc := liveMaker(t), liveDemo(t)
	whole, err := maker.Make(context.Background(), doc)
	if err != nil {
		t.Fatal(err)
	}
	live := plan.NewLive(maker)
	if len(whole.Holes) < 4 {
		t.Fatalf("only %d holes", len(whole.Holes))
	}
	for _, h := range whole.Holes {
		best, _ := h.BestFit()
		now, err := live.Try(doc, plan.Question{Hole: h.ID, Lens: best.Lens.ID, Focal: best.Focal, All: true})
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(now.Proof, whole.Proof) {
			t.Errorf("%s: the proof differs", h.ID)
		}
		fits := append([]plan.LensFit{}, h.Fits...)
		for i := range fits {
			fits[i].Framing = 0 // needs the map
		}
		if !reflect.DeepEqual(now.Picked.Fits, fits) {
			t.Errorf("%s: the limits differ:\n%+v\n%+v", h.ID, now.Picked.Fits, fits)
		}
		if !reflect.DeepEqual(now.Picked.SurveyedHole, h.SurveyedHole) || now.Picked.Lens != h.Best.Or(-1) {
			t.Errorf("%s: it stands elsewhere, or lens %d is picked", h.ID, now.Picked.Lens)
		}
		if len(now.Picked.Light) == 0 || !reflect.DeepEqual(now.Picked.Light, h.Light) {
			t.Errorf("%s: the light differs", h.ID)
		}
		if len(now.Picked.Wedges) != 2 || len(now.Picked.Wedges[1].Polygon()) < 20 {
			t.Errorf("%s: wedges %d", h.ID, len(now.Picked.Wedges))
		}
	}
}

func BenchmarkTryMove(b *testing.B) {
	maker, doc := liveMaker(b), liveDemo(b)
	live := plan.NewLive(maker)
	a, err := doc.Check()
	if err != nil {
		b.Fatal(err)
	}
	at := a.Holes[0].Station.Metres()
	for b.Loop() {
		at += 0.004
		next, _, err := edit.Editor{}.Apply(doc, []edit.Edit{{Do: edit.Move, Hole: a.Holes[0].ID, To: &edit.Spot{Station: &at}}})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := live.Try(next, plan.Question{Hole: a.Holes[0].ID}); err != nil {
			b.Fatal(err)
		}
		if at > a.Holes[0].Station.Metres()+0.2 {
			at = a.Holes[0].Station.Metres()
		}
	}
}
