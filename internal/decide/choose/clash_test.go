package choose

import (
	"context"
	"slices"
	"testing"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

func number(i int) say.Sentence { return say.Make("%d", i) }

// clashOf returns the clash of a problem in words.
func clashOf(t *testing.T, p Problem) []string {
	t.Helper()
	return say.All(solver(t, p).Clash(context.Background(), number), unit.Metric)
}

func TestClashNamesTheSmallestGroup(t *testing.T) {
	p := Problem{
		Score: make([]float32, 6), Moments: 1, Weight: []float32{1}, Count: 3, Exact: true, In: []int{0, 4},
		Groups: []Group{
			{Rule: "corner", Name: "A", Members: []int{0, 1, 2}, Most: 1},
			{Rule: "corner", Name: "B", Members: []int{3, 4, 5}, Most: 1},
			{Rule: "pane", Name: "P1", Members: []int{0, 1}, Most: 1},
			{Rule: "zone", Name: "bench", Members: []int{1}, Most: 0},
		},
	}
	got := clashOf(t, p)
	want := []string{"choose exactly 3", "corner: at most 1 on A", "corner: at most 1 on B"}
	if !slices.Equal(got, want) {
		t.Errorf("clash %q, want %q", got, want)
	}
	p.Groups[3].Members = []int{4}
	got = clashOf(t, p)
	if want := []string{"keep 4", "zone bars bench"}; !slices.Equal(got, want) {
		t.Errorf("clash %q, want %q", got, want)
	}
	p.In, p.Exact = nil, false
	if got := clashOf(t, p); len(got) > 0 {
		t.Errorf("clash %q of a problem that has sets", got)
	}
}
