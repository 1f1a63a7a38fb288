package compare_test

import (
	"bytes"
	"context"
	"fmt"
	"strings"
	"sync"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/compare"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/words"
)

func maker(t testing.TB) plan.Maker {
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

// planOf plans the demo arena after edits of its text.
func planOf(t testing.TB, edit func(*arena.Document) (*arena.Document, error)) plan.Plan {
	t.Helper()
	if edit == nil {
		return asItIs(t)
	}
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	if doc, err = edit(doc); err != nil {
		t.Fatal(err)
	}
	p, err := maker(t).Make(context.Background(), doc)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// replaced returns an edit that replaces text of the document, which must be there.
func replaced(from, to string) func(*arena.Document) (*arena.Document, error) {
	return func(doc *arena.Document) (*arena.Document, error) {
		text := doc.Bytes()
		if !bytes.Contains(text, []byte(from)) {
			return nil, fmt.Errorf("the demo holds no %q", from)
		}
		return arena.Read("demo.yaml", bytes.NewReader(bytes.Replace(text, []byte(from), []byte(to), 1)))
	}
}

// demoPlan is the demo as it is, planned once for all tests.
var demoPlan = sync.OnceValues(func() (plan.Plan, error) {
	k, err := kit.Default()
	if err != nil {
		return plan.Plan{}, err
	}
	set, err := rules.Shipped(rules.Default)
	if err != nil {
		return plan.Plan{}, err
	}
	sets, err := rules.InForce(set)
	if err != nil {
		return plan.Plan{}, err
	}
	doc, err := arena.Demo()
	if err != nil {
		return plan.Plan{}, err
	}
	return plan.Maker{Kit: k, Rules: sets}.Make(context.Background(), doc)
})

func asItIs(t testing.TB) plan.Plan {
	t.Helper()
	p, err := demoPlan()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func find(t *testing.T, c compare.Comparison, id string) compare.Hole {
	t.Helper()
	for _, h := range c.Holes {
		if h.ID == id {
			return h
		}
	}
	t.Fatalf("no hole %s in %+v", id, c.Holes)
	return compare.Hole{}
}

func TestWhatBecameOfAHole(t *testing.T) {
	demo := asItIs(t)
	move := func(doc *arena.Document) (*arena.Document, error) {
		a, err := doc.Check()
		if err != nil {
			return nil, err
		}
		h, _ := a.Hole("B1")
		return doc.MoveHole("B1", a.PlaceOf(h.Station+14*unit.Inch), unit.Imperial)
	}
	for _, c := range []struct {
		name string
		edit func(*arena.Document) (*arena.Document, error)
		hole string
		kind compare.Kind
		says []string
		sum  string
	}{
		{"nothing", nil, "B1", compare.Same, nil, "Nothing that counts differs."},
		{"moved", move, "B1", compare.Moved, []string{"moved 14 in along the boards, to B-bench goal line, 4 ft 8 in back"}, "1 hole moved"},
		{"raised", func(d *arena.Document) (*arena.Document, error) { return d.Set("holes[B2].height", text("66 in")) },
			"B2", compare.Moved, []string{"8 in higher"}, "1 hole moved."},
		{"without its cover", func(d *arena.Document) (*arena.Document, error) { return d.Set("holes[B2].cover", text("none")) },
			"B2", compare.Changed, []string{"rules broken instead of kept"}, "the rules are broken now, kept before."},
		{"larger", func(d *arena.Document) (*arena.Document, error) {
			return d.Set("holes[A1].size", text("6.5 in x 5 in"))
		},
			"A1", compare.Changed, []string{"now 6 1/2 x 5 in instead of 5 1/2 x 4 1/2 in"}, "1 hole changed"},
		{"removed", func(d *arena.Document) (*arena.Document, error) { return d.RemoveHole("A3") },
			"A3", compare.Removed, []string{"gone: it stood at A-box goal line"}, "1 hole removed"},
		{"turned off", func(d *arena.Document) (*arena.Document, error) { return d.Set("holes[A3].state", text("off")) },
			"A3", compare.Off, []string{"turned off"}, "1 hole turned off"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := compare.Plans(demo, planOf(t, c.edit))
			h := find(t, got, c.hole)
			said := strings.Join(words.Became(h, unit.Imperial), "; ")
			if h.Kind != c.kind {
				t.Errorf("%s is %q (%s), expected %q", c.hole, h.Kind, said, c.kind)
			}
			for _, s := range c.says {
				if !strings.Contains(said, s) {
					t.Errorf("%q says nothing of %q", said, s)
				}
			}
			if !strings.Contains(words.Compared(got), c.sum) {
				t.Errorf("summary %q, expected %q in it", words.Compared(got), c.sum)
			}
			for _, other := range got.Holes {
				if other.ID != c.hole && other.Kind != compare.Same && other.Kind != compare.Changed {
					t.Errorf("%s is %q, too", other.ID, other.Kind)
				}
			}
		})
	}
}

// TestTheOtherWayRound swaps the plans: added and removed, before and after, and
// the sign of a move must swap as well.
func TestTheOtherWayRound(t *testing.T) {
	demo := asItIs(t)
	other := planOf(t, func(d *arena.Document) (*arena.Document, error) {
		d, err := d.RemoveHole("A3")
		if err != nil {
			return nil, err
		}
		return d.Set("holes[B2].height", text("66 in"))
	})
	there, back := compare.Plans(demo, other), compare.Plans(other, demo)
	if find(t, there, "A3").Kind != compare.Removed || find(t, back, "A3").Kind != compare.Added {
		t.Errorf("A3: %s there, %s back", find(t, there, "A3").Kind, find(t, back, "A3").Kind)
	}
	if a, b := find(t, there, "B2").Up, find(t, back, "B2").Up; a != -b || a == 0 {
		t.Errorf("B2 goes up by %g m there, %g m back", a, b)
	}
	if there.Before != back.After || len(there.Rules) != len(back.Rules) {
		t.Errorf("%+v and %+v", there, back)
	}
}

func TestRulesThatChanged(t *testing.T) {
	c := compare.Plans(asItIs(t), planOf(t, func(d *arena.Document) (*arena.Document, error) {
		return d.Set("holes[B2].cover", text("none"))
	}))
	if len(c.Rules) == 0 || c.Rules[0].Before != rules.Pass || c.Rules[0].After != rules.Fail {
		t.Errorf("rules that changed: %+v", c.Rules)
	}
	if got := words.Status(""); got != "not asked" {
		t.Errorf("a rule that was not asked is %q", got)
	}
}

// TestOtherRinks compares rinks of different size: no move along the boards.
func TestOtherRinks(t *testing.T) {
	c := compare.Plans(asItIs(t), planOf(t, replaced("standard: north-american", "standard: north-american\n  length: 201 ft")))
	if c.SameRink {
		t.Error("rinks of 200 and 201 ft count as the same")
	}
	for _, h := range c.Holes {
		if h.Along != 0 {
			t.Errorf("%s moved by %g m along different boards", h.ID, h.Along)
		}
	}
}
