package form_test

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/form"
)

// Each broken text names the line that breaks it, not the list around it.
func TestSyntaxNamesTheLine(t *testing.T) {
	const above = "name: a\n\nlist:\n  - id: x\n    size: 1 in\n"
	const below = "more:\n  - {id: y}\nlast: b\n"
	cases := []struct{ name, broken, place, cure string }{
		{"tab", "\tsize: 2 in\n", ":6:1:", "spaces"},
		{"colon in a value", "note: behind the goal: left\n", ":6:1:", "quotes"},
		{"open bracket", "size: {w: 1 in\n", ":6:1:", "bracket"},
		{"open quote", "note: \"half\n", ":6:1:", "quote"},
		{"wrong column", "   size: 2 in\n", ":6:4:", "same column"},
		{"dash at the wrong depth", "- id: z\n", ":6:1:", "same column"},
		{"percent", "note: %x\n", ":6:1:", "quotes"},
		{"no colon", "note\nsize: 2 in\n", ":", "name: value"},
		{"second document", "---\nname: b\n", ":6:1:", "drop the line with ---"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := form.Read("my.yaml", strings.NewReader(above+c.broken+below), 1<<20)
			if err == nil {
				t.Fatal("read without a problem")
			}
			if msg := err.Error(); !strings.HasPrefix(msg, "my.yaml"+c.place) || !strings.Contains(msg, c.cure) {
				t.Errorf("got %s, want the place %s and a cure with %q", msg, c.place, c.cure)
			}
		})
	}
}

func TestStrayBytesAreRefused(t *testing.T) {
	for name, text := range map[string]string{
		"NUL": "a: \x00", "escape": "a: \x1b[2J", "latin-1": "a: caf\xe9", "UTF-16": "\xff\xfea\x00",
	} {
		if _, err := form.Read("my.yaml", strings.NewReader(text), 100); err == nil || !strings.Contains(err.Error(), "is not UTF-8 text") {
			t.Errorf("%s: %v", name, err)
		}
	}
	for text, cure := range map[string]string{
		"a: b\u0085c": "U+0085 is a line end", "a: b\u2028c": "put a plain one (Enter) in its place", "a: b\u2029c": "U+2029 is a line end",
		"a: \ufeffb": "mark U+FEFF stands inside the text; it may only begin a file: delete it", "a: \u0090b": "control character U+0090",
	} {
		_, err := form.Read("my.yaml", strings.NewReader(text), 100)
		if err == nil || !strings.Contains(err.Error(), cure) || !strings.HasPrefix(err.Error(), "my.yaml:1:") || strings.Contains(err.Error(), "UTF-8") {
			t.Errorf("%q: %v, expected %q", text, err, cure)
		}
	}
	if _, err := form.Read("my.yaml", strings.NewReader("\ufeffa: b\r\nc: é\td\n"), 100); err != nil {
		t.Errorf("a plain text is refused: %v", err)
	}
}
