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

// The smallest group by trying all groups of constraints, smaller first.
func smallestByTrial(c *clash) int {
	for size := range len(c.all) + 1 {
		for bits := range 1 << len(c.all) {
			var chosen []int
			for k := range c.all {
				if bits>>k&1 == 1 {
					chosen = append(chosen, k)
				}
			}
			if len(chosen) != size {
				continue
			}
			if _, ok := c.keeps(context.Background(), chosen); !ok {
				return size
			}
		}
	}
	return -1
}

func TestClashIsSmallest(t *testing.T) {
	met := 0
	for seed := uint64(0); met < 8 && seed < 400; seed++ {
		p := instance(seed, 7, 1)
		p.Exact, p.Count = true, 4
		p.In = []int{int(seed % 7)}
		c := &clash{problem: blank(&p), all: constraintsOf(&p, number)}
		if _, ok := c.keeps(context.Background(), c.everything()); ok || len(c.all) > 8 {
			continue
		}
		met++
		got := clashOf(t, p)
		if want := smallestByTrial(c); len(got) != want {
			t.Errorf("seed %d: %q has %d constraints, the smallest group has %d", seed, got, len(got), want)
		}
	}
	if met < 8 {
		t.Errorf("only %d infeasible instances met", met)
	}
}
