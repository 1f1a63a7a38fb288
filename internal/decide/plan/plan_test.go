package plan

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/survey/kit"
)

// TestEveryExamplePlans reads the whole plan of each example: nothing that a
// page or a table prints is missing or out of range.
func TestEveryExamplePlans(t *testing.T) {
	for _, name := range exampleNames(t) {
		p := planOf(t, name)
		if len(p.Holes) == 0 || len(p.Findings) == 0 {
			t.Errorf("%s: %d holes, %d findings", name, len(p.Holes), len(p.Findings))
		}
		if p.Survey.Area <= 0 || p.Survey.Perimeter <= 0 || p.Survey.Panes == 0 || p.Survey.Name == "" {
			t.Errorf("%s: survey %+v", name, p.Survey)
		}
		for _, h := range p.Holes {
			checkHole(t, name, p, h)
		}
	}
}

func checkHole(t *testing.T, name string, p Plan, h Hole) {
	t.Helper()
	if len(h.Fits) == 0 || h.Status == "" || h.Size.W <= 0 || h.Size.H <= 0 || h.Opening.Thick.Value <= 0 {
		t.Errorf("%s, %s: %+v", name, h.ID, h)
	}
	// The whole frame never sees more than its centre, and is told for the demo's shape.
	for _, pair := range [][2]float64{{h.Reach.Whole.Or(2), h.Reach.Share}, {h.Reach.WholeFace.Or(2), h.Reach.FaceShare}} {
		if pair[0] > pair[1] || pair[0] < pair[1]/2 {
			t.Errorf("%s, %s: whole frame %g, centre %g", name, h.ID, pair[0], pair[1])
		}
	}
	for _, share := range []float64{h.Reach.Share, h.Reach.FaceShare} {
		if !(share >= 0 && share <= 1) {
			t.Errorf("%s, %s: share %g", name, h.ID, share)
		}
	}
	best, ok := h.BestFit()
	if !ok {
		for _, f := range h.Fits {
			if f.Framing > 0 {
				t.Errorf("%s, %s: no best lens, but %s frames %g", name, h.ID, f.Lens.ID, f.Framing)
			}
		}
		return
	}
	for _, f := range h.Fits {
		if f.Framing > best.Framing {
			t.Errorf("%s, %s: best is %s with %g, %s frames %g", name, h.ID, best.Lens.ID, best.Framing, f.Lens.ID, f.Framing)
		}
		if f.Framing > h.Reach.FaceShare {
			t.Errorf("%s, %s: %s frames %g of the ice, all lenses see %g", name, h.ID, f.Lens.ID, f.Framing, h.Reach.FaceShare)
		}
	}
	if _, lit := h.SlotLight(); lit != p.Light.Known {
		t.Errorf("%s, %s: light of the slot %v, light known %v", name, h.ID, lit, p.Light.Known)
	}
}

// TestExamplesTeach keeps the examples different from one another: one keeps
// every rule, one breaks a rule, one lacks numbers.
func TestExamplesTeach(t *testing.T) {
	seen := map[rules.Status]bool{}
	for _, name := range exampleNames(t) {
		proof, err := maker(t).Prove(document(t, name))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range proof.Findings {
			seen[f.Status] = true
		}
		if name == examples.Demo && proof.Verdict == rules.Fail {
			t.Errorf("the demo arena breaks a rule")
		}
	}
	for _, s := range []rules.Status{rules.Pass, rules.Fail, rules.Unknown} {
		if !seen[s] {
			t.Errorf("no example shows a finding of %s", s)
		}
	}
}

func TestRevisionIsTheHashOfTheFile(t *testing.T) {
	text, err := examples.Files.ReadFile(examples.Demo)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := planOf(t, examples.Demo).Revision, fmt.Sprintf("%x", sha256.Sum256(text)); got != want {
		t.Errorf("revision %s, sha256sum of the file %s", got, want)
	}
}

func TestMakeEndsWithItsContext(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := maker(t).Make(ctx, document(t, examples.Demo)); !errors.Is(err, context.Canceled) {
		t.Errorf("a cancelled plan gave %v", err)
	}
}

func TestMakeNeedsABody(t *testing.T) {
	m := maker(t)
	m.Kit = kit.Kit{Lenses: m.Kit.Lenses}
	if _, err := m.Make(t.Context(), document(t, examples.Demo)); err == nil {
		t.Error("a kit without a body made a plan")
	}
}
