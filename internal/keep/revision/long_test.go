package revision

import (
	"math/rand/v2"
	"strings"
	"testing"
	"time"
)

// longEnough is what a comparison may take at most, on a busy machine.
const longEnough = 10 * time.Second

// TestLongTextsAreComparedQuickly compares and merges texts that a search for the
// least difference works on for minutes: thousands of equal lines, and texts as
// long as an arena may be with nothing to hold on to.
func TestLongTextsAreComparedQuickly(t *testing.T) {
	const most = 1 << 20 // bytes
	equal := strings.Repeat("x\n", 8000)
	random := func(seed uint64) string {
		r := rand.New(rand.NewPCG(seed, 0))
		var b strings.Builder
		for b.Len() < most-2 {
			b.WriteByte("abcd"[r.IntN(4)])
			b.WriteByte('\n')
		}
		return b.String()
	}
	for name, c := range map[string][3]string{
		"equal lines":          {equal, "a\n" + equal + "b\n", "c\n" + equal[:9000] + "d\n" + equal[9000:]},
		"random lines":         {random(1), random(2), random(3)},
		"every line unlike":    {strings.Repeat("a\n", most/2), strings.Repeat("b\n", most/2), strings.Repeat("c\n", most/2)},
		"the longest of lines": {strings.Repeat("a", most), strings.Repeat("b", most), strings.Repeat("c", most)},
	} {
		began := time.Now()
		merged, _ := Merge(c[0], c[1], c[2])
		if d, err := Compare(t.Context(), c[0], c[1], "", ""); err != nil || len(d.Come) == 0 {
			t.Errorf("%s: %d lines went, none came, %v", name, len(d.Gone), err)
		}
		if took := time.Since(began); took > longEnough {
			t.Errorf("%s took %v", name, took)
		} else {
			t.Logf("%s took %v", name, took)
		}
		if len(merged) == 0 {
			t.Errorf("%s: nothing merged", name)
		}
	}
}

// TestChangesMakeTheOtherText makes each side of a difference out of the other.
func TestChangesMakeTheOtherText(t *testing.T) {
	for _, c := range [][2]string{
		{"", ""}, {"", "a"}, {"a", ""}, {"a", "a\n"}, {"a\n", "a"}, {"a\nb\nc\n", "a\nc"}, {"-a\n+b\n", "@@ -1,1 +1,1 @@\n\\ x\n"},
		{"a\nb\nc\nd\ne\nf\ng\nh\ni\nj\n", "a\nB\nc\nd\ne\nf\ng\nh\nI\nj\nk"}, {"\n\n\n", "\n"}, {"a\r\nb\r\n", "a\nb\n"},
	} {
		for _, p := range [][2]string{c, {c[1], c[0]}} {
			lines := strings.SplitAfter(p[0], "\n")
			if got := join(apply(lines, 0, changesOf(p[0], p[1]))); got != p[1] {
				t.Errorf("%q to %q gave %q", p[0], p[1], got)
			}
		}
	}
}
