package revision

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestSteps(t *testing.T) {
	for _, c := range []struct {
		texts              string
		undo, undone, redo int
	}{
		{"", -1, -1, -1},
		{"a", -1, -1, -1},
		{"a b", 0, 1, -1},
		{"a b c", 1, 2, -1},
		{"a b c b", 0, 1, 2}, // an undo of an undo takes back b, not the undo
		{"a b c b a", -1, -1, 1},
		{"a b c b a b", 0, 1, 2},
		{"a b c b a b c", 1, 2, -1},
		{"a b c b d", 1, 4, -1},    // a new step after an undo: c is gone from the line
		{"a b c d a", 3, 4, -1},    // a restore of an old text is a step of its own
		{"a b b b", 0, 1, -1},      // saved again without a change
		{"a b c b b", 0, 1, 2},     // the same after an undo
		{"a b a b a", -1, -1, 1},   // there and back
		{"a b c d c b", 0, 1, 2},   // twice undone
		{"a b c d c e c", 1, 2, 5}, // undone, another step, undone
	} {
		undo, undone, redo := Steps(strings.Fields(c.texts))
		if undo != c.undo || undone != c.undone || redo != c.redo {
			t.Errorf("%s: undo %d of %d, redo %d, expected %d of %d and %d", c.texts, undo, undone, redo, c.undo, c.undone, c.redo)
		}
	}
}

// An editor with a stack of its own must agree: random saves, undos and redos.
func TestStepsAgreeWithAStack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		saves := []string{"t0"}
		stack, at := []string{"t0"}, 0
		for i := range rapid.IntRange(0, 40).Draw(t, "acts") {
			switch act := rapid.SampledFrom([]string{"save", "undo", "redo"}).Draw(t, "act"); {
			case act == "undo" && at > 0:
				at--
			case act == "redo" && at+1 < len(stack):
				at++
			case act == "save":
				stack = append(stack[:at+1], "t"+strings.Repeat("x", i+1))
				at++
			default:
				continue
			}
			saves = append(saves, stack[at])
			undo, undone, redo := Steps(saves)
			if (undo >= 0) != (at > 0) || at > 0 && (saves[undo] != stack[at-1] || saves[undone] != stack[at]) {
				t.Fatalf("after %q undo leads to %d", saves, undo)
			}
			if (redo >= 0) != (at+1 < len(stack)) || at+1 < len(stack) && saves[redo] != stack[at+1] {
				t.Fatalf("after %q redo leads to %d", saves, redo)
			}
		}
	})
}
