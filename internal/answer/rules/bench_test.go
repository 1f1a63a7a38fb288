package rules_test

import (
	"fmt"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
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
	on := shipped(b, "common-practice").On(a)
	b.ReportAllocs()
	for b.Loop() {
		on.Standing(h)
	}
}

// BenchmarkPermitted searches 132 panes for the places of a standard hole.
func BenchmarkPermitted(b *testing.B) {
	a := testArena(b, "north-american")
	sets := shipped(b, "common-practice")
	n := 0
	for b.Loop() {
		permitted, _ := sets.On(a).Permitted()
		n = len(permitted)
	}
	if n == 0 {
		b.Fatal("nothing permitted")
	}
}

// BenchmarkCheckLargest proves as many holes as an arena may have, on 260 panes,
// against every set that ships: least-separation alone asks about 19,900 pairs.
func BenchmarkCheckLargest(b *testing.B) {
	a := testArena(b, "north-american")
	width := a.Rink.Perimeter() / 260
	a.Panes = a.Panes[:0]
	for i := range 260 {
		a.Panes = append(a.Panes, glass.Pane{
			ID: fmt.Sprint("P", i), From: unit.Length(i) * width, Width: width, Height: 6 * unit.Foot,
			Thickness: unit.Known(unit.Inch / 2), Material: unit.Known(glass.Acrylic), Curved: true,
		})
	}
	for i := range 200 {
		a.Holes = append(a.Holes, holeAt(b, a, fmt.Sprint("h", i), a.Panes[i].From+width/2))
	}
	sets := shipped(b, rules.Names()...)
	for b.Loop() {
		sets.Check(a)
	}
}
