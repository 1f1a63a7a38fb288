package form_test

import (
	"bytes"
	"testing"

	"example.org/rinkpane/internal/measure/form"
)

// FuzzEdit reads any text and edits it where it can: nothing panics, an
// untouched document keeps its bytes, and an edited one reads back.
func FuzzEdit(f *testing.F) {
	for _, s := range []string{survey, "a: 1", "- a\n- b", "a: [1, {b: 2}]", "a: &x 1\nb: *x\n", "a:\n- - b\n", "? a\n: b\n", "a: !t |2\n   x\n", "{a: 'b', \"c\": }", "a: b\n  c\n\n  d\n", "[]", "a: >-\n  b\n\n", "a: |\n", "\ufeffa:\r  b: \"\\\n   c\"\r"} {
		f.Add([]byte(s), "holes[H1].size", "new")
	}
	f.Add([]byte("a:\n  - id: x\n"), "a[#1].id", ": #")
	f.Fuzz(func(t *testing.T, text []byte, path, value string) {
		d, err := form.Read("f.yaml", bytes.NewReader(text), 1<<16)
		if err != nil {
			return
		}
		if !bytes.Equal(d.Text(), text) {
			t.Fatal("an untouched document differs")
		}
		for _, at := range []string{path, "a", "a.b", "a[#1]", "[#1]", "holes[#1]"} {
			if got, err := d.Set(at, form.Text(value)); err == nil {
				if _, err := form.Read("f.yaml", bytes.NewReader(got.Text()), 1<<17); err != nil {
					t.Fatalf("set %q: %v", at, err)
				}
			}
			_, _ = d.Remove(at)
			_, _ = d.Append(at, fields("id", "n", "v", value))
		}
	})
}
