package choose

import (
	"context"
	"errors"
	"testing"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// laid is the demo arena with places at a step, under a shipped rule set.
func laid(t *testing.T, set string, o Options) *Study {
	t.Helper()
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	s, err := rules.Shipped(set)
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(s)
	if err != nil {
		t.Fatal(err)
	}
	l, err := lay(t.Context(), a, sets, o)
	if err != nil {
		t.Fatal(err)
	}
	open, barred := l.sorted()
	return &Study{arena: a, sets: sets, rules: l.rules, opt: o, places: append(open, barred...), open: len(open)}
}

// TestNeighboursMissNoPair: what is found by place is what asking every pair finds.
func TestNeighboursMissNoPair(t *testing.T) {
	found := 0
	for _, set := range []string{"example-loose", "tempered-glass", "common-practice"} {
		o := DefaultOptions()
		o.Step = 600 * unit.Millimetre
		s := laid(t, set, o)
		near := map[[2]int]bool{}
		if err := s.neighbours(t.Context(), func(i, j int) { near[[2]int{i, j}] = true }); err != nil {
			t.Fatal(err)
		}
		for i := range s.places {
			for j := i + 1; j < len(s.places); j++ {
				for _, f := range s.rules.Conflict(s.places[i].Hole, s.places[j].Hole) {
					if f.Status == rules.Pass {
						continue
					}
					if found++; !near[[2]int{i, j}] {
						t.Fatalf("%s: %s and %s are no neighbours, yet %s", set, s.id(i), s.id(j), f.Status)
					}
				}
			}
		}
		if all := len(s.places) * (len(s.places) - 1) / 2; len(near) > all/10 {
			t.Errorf("%s: %d of %d pairs are asked about", set, len(near), all)
		}
	}
	if found < 50 {
		t.Errorf("only %d pairs clash", found)
	}
}

// TestEveryStageObeysItsContext asks for many places, whose pairing once took a minute and heard no
// Ctrl-C, and gives it up as each stage begins.
func TestEveryStageObeysItsContext(t *testing.T) {
	s := laid(t, "common-practice", DefaultOptions())
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	for _, stage := range []string{"placing", "pairing", "scoring"} {
		ctx, cancel := context.WithCancel(t.Context())
		o := DefaultOptions()
		o.Step, o.Heights = 20*unit.Millimetre, []unit.Length{1.4, 1.5}
		var begun time.Time
		o.Tell = func(r Report) {
			if r.Stage == stage && begun.IsZero() {
				begun = time.Now()
				cancel()
			}
		}
		_, err := Prepare(ctx, s.arena, s.sets, k, o)
		cancel()
		if !errors.Is(err, context.Canceled) || begun.IsZero() {
			t.Errorf("%s: %v", stage, err)
		}
		if took := time.Since(begun); took > 5*time.Second {
			t.Errorf("%s: went on for %v", stage, took)
		}
	}
}

// A study too large for a usual machine is refused with the cure.
func TestTooManyScoresAreRefused(t *testing.T) {
	s := laid(t, "common-practice", DefaultOptions())
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	o := DefaultOptions()
	o.Moments, o.Step, o.Heights = 200_000, 10*unit.Millimetre, []unit.Length{1.4, 1.5}
	if _, err := Prepare(t.Context(), s.arena, s.sets, k, o); err == nil {
		t.Error("nothing was refused")
	}
}
