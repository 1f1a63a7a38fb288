package form_test

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/form"
)

// Texts of a mebibyte that are slow for careless readers: each is answered, with
// a problem or without. BenchmarkHostile tells how fast.
var hostile = []string{"[", "{", "- ", "? ", "a: ", "- [", "[a,", "'a'\n", "a\n", "# x\n", "&a ", "|\n", "a: [1,\n", "\"a\n", "k: {a: b}\n", "- - - a\n", "x: >\n  a\n", "- x\n", "- {a: 1}\n"}

func hostileText(unit string) string {
	const size = 1 << 20
	return "name: x\nlist:\n  - a\n" + strings.Repeat(unit, size/len(unit)-8)
}

func TestHostileTextsAreAnswered(t *testing.T) {
	if len(hostile) < 15 {
		t.Fatal("too few hostile texts")
	}
	for _, h := range hostile {
		text := hostileText(h)
		d, err := form.Read("h.yaml", strings.NewReader(text), 1<<20)
		if err == nil && string(d.Text()) != text {
			t.Errorf("%q: the text differs", h)
		}
		if err != nil && !strings.HasPrefix(err.Error(), "h.yaml") {
			t.Errorf("%q: %v", h, err)
		}
	}
}

// BenchmarkHostile is the slowest of the hostile texts.
func BenchmarkHostile(b *testing.B) {
	for _, h := range []string{"k: {a: b}\n", "- - - a\n", "a: [1,\n"} {
		text := hostileText(h)
		b.Run(strings.TrimSpace(h), func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				_, _ = form.Read("h.yaml", strings.NewReader(text), 1<<20)
			}
		})
	}
}
