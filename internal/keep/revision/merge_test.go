package revision

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const base = "name: hall\nholes:\n  - id: H1\n    height: 60 in\n  - id: H2\n    height: 60 in\nlight: {}\n"

func TestMerge(t *testing.T) {
	mineH1 := strings.Replace(base, "height: 60 in\n  - id: H2", "height: 62 in\n  - id: H2", 1)
	theirsH2 := strings.Replace(base, "60 in\nlight", "64 in\nlight", 1)
	theirsH1 := strings.Replace(base, "height: 60 in\n  - id: H2", "height: 58 in\n  - id: H2", 1)
	both := strings.Replace(mineH1, "60 in\nlight", "64 in\nlight", 1)
	for _, c := range []struct {
		name, mine, theirs, want string
		clashes                  int
	}{
		{"nobody changed", base, base, base, 0},
		{"only mine", mineH1, base, mineH1, 0},
		{"only theirs", base, theirsH2, theirsH2, 0},
		{"different places", mineH1, theirsH2, both, 0},
		{"the same change twice", mineH1, mineH1, mineH1, 0},
		{"the same line in two ways keeps mine and says so", mineH1, theirsH1, mineH1, 1},
		{"no closing newline", strings.TrimSuffix(base, "\n"), base, strings.TrimSuffix(base, "\n"), 0},
		{"theirs empties the text", base, "", "", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, clashes := Merge(base, c.mine, c.theirs)
			if got != c.want || len(clashes) != c.clashes {
				t.Errorf("got %q with %d clashes, want %q with %d", got, len(clashes), c.want, c.clashes)
			}
		})
	}
}

func TestClashNamesLineAndBothSides(t *testing.T) {
	mine := strings.Replace(base, "name: hall", "name: east hall", 1)
	theirs := strings.Replace(base, "name: hall", "name: west hall", 1)
	_, clashes := Merge(base, mine, theirs)
	want := Clash{Line: 1, Base: "name: hall\n", Mine: "name: east hall\n", Theirs: "name: west hall\n"}
	if len(clashes) != 1 || clashes[0] != want {
		t.Errorf("got %+v, want %+v", clashes, want)
	}
}

// The laws of a merge: a side that changed nothing has no say, equal sides
// agree, and swapping sides swaps at most who wins a clash.
func TestMergeLaws(t *testing.T) {
	text := rapid.Custom(func(t *rapid.T) string {
		lines := rapid.SliceOfN(rapid.SampledFrom([]string{"a\n", "b\n", "c\n", "d\n"}), 0, 12).Draw(t, "lines")
		return strings.Join(lines, "")
	})
	rapid.Check(t, func(t *rapid.T) {
		b, m, o := text.Draw(t, "base"), text.Draw(t, "mine"), text.Draw(t, "theirs")
		if got, clashes := Merge(b, m, b); got != m || clashes != nil {
			t.Fatalf("theirs unchanged: got %q, want mine %q", got, m)
		}
		if got, clashes := Merge(b, b, o); got != o || clashes != nil {
			t.Fatalf("mine unchanged: got %q, want theirs %q", got, o)
		}
		if got, clashes := Merge(b, m, m); got != m || clashes != nil {
			t.Fatalf("both the same: got %q, want %q", got, m)
		}
		one, c1 := Merge(b, m, o)
		two, c2 := Merge(b, o, m)
		if len(c1) != len(c2) || len(c1) == 0 && one != two {
			t.Fatalf("not symmetric: %q (%d) and %q (%d)", one, len(c1), two, len(c2))
		}
	})
}
