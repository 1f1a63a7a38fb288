package sight

import (
	"testing"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// TestTogether: what one opening is worth together is its own mean score; one more
// never lessens it, and the same twice adds nothing.
func TestTogether(t *testing.T) {
	d, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := d.Check()
	if err != nil {
		t.Fatal(err)
	}
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	var all []arena.Opening
	for _, h := range a.Working() {
		o, err := a.OpeningOf(h)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, o)
	}
	together := func(openings ...arena.Opening) float64 {
		v, known, err := Together(t.Context(), a, k, openings)
		if err != nil || !known {
			t.Fatal(known, err)
		}
		return v
	}
	each, err := Usual(t.Context(), a, k, all[:1])
	if err != nil {
		t.Fatal(err)
	}
	one, two, whole := together(all[0]), together(all[:2]...), together(all...)
	if one != each[0] || together(all[0], all[0]) != one || together() != 0 {
		t.Errorf("one opening is worth %g, its mean score is %g", one, each[0])
	}
	if !(one < two && two < whole && whole <= 1) {
		t.Errorf("one %g, two %g, all %g", one, two, whole)
	}
}
