package rules_test

import (
	"testing"

	"example.org/rinkpane/internal/survey/rink"
)

// BenchmarkCheck proves eight holes against two sets, sentences included.
func BenchmarkCheck(b *testing.B) {
	a := testArena(b, "north-american")
	for i, c := range rink.Corners() {
		a.Holes = append(a.Holes, at(b, a, string(rune('a'+i)), c, rink.GoalLine, -1), at(b, a, string(rune('p'+i)), c, rink.CircleTop, 0))
	}
	sets := shipped(b, "common-practice", "example-loose")
	b.ReportAllocs()
	for b.Loop() {
		sets.Check(a)
	}
}

// BenchmarkStanding asks for the verdict on one candidate of a planner.
func BenchmarkStanding(b *testing.B) {
	a := testArena(b, "north-american")
	h := at(b, a, "h", rink.BBox, rink.CircleTop, 0.3)
	sets := shipped(b, "common-practice")
	b.ReportAllocs()
	for b.Loop() {
		sets.Standing(a, h)
	}
}

// BenchmarkPermitted searches 132 panes for the places of a standard hole.
func BenchmarkPermitted(b *testing.B) {
	a := testArena(b, "north-american")
	sets := shipped(b, "common-practice")
	n := 0
	for b.Loop() {
		n = len(sets.Permitted(a))
	}
	if n == 0 {
		b.Fatal("nothing permitted")
	}
}
