package revision_test

import (
	"slices"
	"testing"

	"example.org/rinkpane/internal/keep/revision"
)

// TestFollowThroughRenames follows holes through a history: renamed twice, two that
// change names, an undo of that, and a name that another hole takes later.
//
//	version   1   2         3         4            5 (undo of 4)   6
//	          A   A -> B    B -> C    C <-> X      back            C -> A
func TestFollowThroughRenames(t *testing.T) {
	r := func(names ...string) (out []revision.Rename) {
		for i := 0; i+1 < len(names); i += 2 {
			out = append(out, revision.Rename{From: names[i], To: names[i+1]})
		}
		return out
	}
	history := []revision.Version{
		{Number: 6, Renames: r("C", "A")}, {Number: 5, Renames: r("X", "C", "C", "X")}, {Number: 4, Renames: r("C", "X", "X", "C")},
		{Number: 3, Renames: r("B", "C")}, {Number: 2, Renames: r("A", "B")}, {Number: 1},
	}
	for _, c := range []struct {
		hole     string
		from, to int
		want     string
	}{
		{"A", 1, 1, "A"}, {"A", 1, 2, "B"}, {"A", 1, 3, "C"}, {"A", 1, 4, "X"}, {"A", 1, 5, "C"}, {"A", 1, 6, "A"},
		{"X", 1, 4, "C"}, {"X", 1, 6, "X"}, {"C", 4, 1, "X"}, {"X", 4, 1, "A"}, {"C", 3, 1, "A"}, {"A", 6, 3, "C"},
		{"Z", 1, 6, "Z"}, {"X", 3, 4, "C"}, {"X", 4, 5, "C"},
	} {
		if got := follow(history, c.hole, c.from, c.to); got != c.want {
			t.Errorf("%s of version %d is %s in version %d, expected %s", c.hole, c.from, got, c.to, c.want)
		}
	}
	if got := revision.Renames(history, 4, 3); !slices.Equal(got, r("X", "C", "C", "X")) && !slices.Equal(got, r("C", "X", "X", "C")) {
		t.Errorf("taking version 4 back renames %v", got)
	}
	if got := revision.Renames(history, 1, 6); len(got) != 0 {
		t.Errorf("in the end nothing is renamed: %v", got)
	}
}

// follow returns what a hole of one version is called in another.
func follow(versions []revision.Version, hole string, from, to int) string {
	for _, r := range revision.Renames(versions, from, to) {
		if r.From == hole {
			return r.To
		}
	}
	return hole
}
