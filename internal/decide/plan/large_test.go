package plan

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// largest reads an arena as large as a document may be.
func largest(t testing.TB, shapes, working int) *arena.Document {
	t.Helper()
	doc, err := arena.Read("largest.yaml", strings.NewReader(examples.Largest(shapes, working)))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// TestTheLargestArenaIsWithinTheLimits: as many holes and readings as may be, legal
// or not, in the size that was found to run away.
func TestTheLargestArenaIsWithinTheLimits(t *testing.T) {
	for _, x := range [][2]int{{1, arena.MaxHoles}, {arena.MaxHoles, arena.MaxHoles}, {1, 8}} {
		doc := largest(t, x[0], x[1])
		a, err := doc.Check()
		if err != nil {
			t.Fatal(err)
		}
		if n := len(doc.Bytes()); n < 250_000 || len(a.Panes) != 260 || len(a.Holes) != arena.MaxHoles || len(a.Working()) != x[1] || len(a.Light.Readings) != arena.MaxReadings {
			t.Errorf("%v: %d bytes, %d panes, %d holes, %d at work, %d readings", x, n, len(a.Panes), len(a.Holes), len(a.Working()), len(a.Light.Readings))
		}
	}
}

// TestHolesOfOneShapeShareTheWork counts the lens limits that 200 holes ask for:
// those of one shape as many as one hole, those of five shapes five times as many.
func TestHolesOfOneShapeShareTheWork(t *testing.T) {
	m := maker(t)
	count := func(shapes, working int) int {
		a, _, err := m.Arena(largest(t, shapes, working))
		if err != nil {
			t.Fatal(err)
		}
		p := Plan{Arena: a}
		for _, h := range a.Working() {
			p.Holes = append(p.Holes, Hole{SurveyedHole: p.mark(a, h)})
		}
		cases, rows, err := p.cases(m.Kit)
		if err != nil {
			t.Fatal(err)
		}
		filled := 0
		for _, r := range rows {
			filled += len(r)
		}
		if filled != len(cases)*working/shapes {
			t.Errorf("%d shapes, %d holes: %d cases fill %d rows", shapes, working, len(cases), filled)
		}
		return len(cases)
	}
	one := count(1, 1)
	if all := count(1, arena.MaxHoles); one == 0 || all != one {
		t.Errorf("%d limits for one hole, %d for 200 alike", one, all)
	}
	if five := count(5, arena.MaxHoles); five != 5*one {
		t.Errorf("%d limits for one shape, %d for five", one, five)
	}
}

// TestPlansEndWithTheirContext cancels a plan in each of its long stages: no further
// hole is begun there.
func TestPlansEndWithTheirContext(t *testing.T) {
	m, doc := maker(t), largest(t, 1, arena.MaxHoles)
	whole, err := m.Make(t.Context(), largest(t, 1, 40))
	if err != nil {
		t.Fatal(err)
	}
	for stage, work := range map[string]func(context.Context) error{
		"fitting lenses":             func(ctx context.Context) error { _, err := m.Make(ctx, doc); return err },
		"mapping what the holes see": func(ctx context.Context) error { _, err := m.Make(ctx, doc); return err },
		"shooting at the holes":      func(ctx context.Context) error { _, err := m.Whole(ctx, whole, true); return err },
	} {
		ctx, stop := context.WithCancel(t.Context())
		after := 0
		told := cores.Told(ctx, func(at string, share float64) {
			if at == stage || ctx.Err() != nil {
				stop()
				after++
			}
		})
		if err := work(told); !errors.Is(err, context.Canceled) || after == 0 || after > 8 {
			t.Errorf("%s: %v, told %d times after the end", stage, err, after)
		}
	}
}

// BenchmarkLargest plans the largest arena, the guard of its holes included, with
// holes of one shape and of 200. Budget: 10 s on two cores.
func BenchmarkLargest(b *testing.B) {
	m := maker(b)
	for _, shapes := range []int{1, arena.MaxHoles} {
		doc := largest(b, shapes, arena.MaxHoles)
		b.Run(fmt.Sprintf("shapes=%d", shapes), func(b *testing.B) {
			for b.Loop() {
				p, err := m.Make(b.Context(), doc)
				if err != nil {
					b.Fatal(err)
				}
				if _, err := m.Whole(b.Context(), p, false); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// TestWholeFramesOfTheFirstShapesOnly: a plan tells what the whole frame sees for so
// many shapes of hole, and says for how many holes it does not.
func TestWholeFramesOfTheFirstShapesOnly(t *testing.T) {
	if testing.Short() {
		t.Skip("computes much, step after step; make test runs it without the race detector")
	}
	p, err := maker(t).Make(t.Context(), largest(t, wholeShapes+2, wholeShapes+2))
	if err != nil {
		t.Fatal(err)
	}
	told := 0
	for _, h := range p.Holes {
		if _, ok := h.Reach.Whole.Get(); ok {
			told++
		}
	}
	last := p.Remarks[len(p.Remarks)-1].In(unit.Metric)
	if told != wholeShapes || !strings.Contains(last, "not for 2 holes of further shapes") {
		t.Errorf("told for %d holes, remark %q", told, last)
	}
}
