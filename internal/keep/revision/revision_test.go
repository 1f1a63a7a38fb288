package revision

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"
)

func TestDraftCheck(t *testing.T) {
	good := Draft{At: time.Unix(1, 0), Who: "desk", What: "first", Text: "rinkpane: 1\n"}
	if err := good.Check(); err != nil {
		t.Fatalf("good draft: %v", err)
	}
	for _, c := range []struct {
		name, says string
		spoil      func(*Draft)
	}{
		{"no time", "time", func(d *Draft) { d.At = time.Time{} }},
		{"no text", "empty", func(d *Draft) { d.Text = "" }},
		{"too long", "at most", func(d *Draft) { d.Text = strings.Repeat("x", MaxText+1) }},
		{"not UTF-8", "UTF-8", func(d *Draft) { d.Text = "\xff" }},
		{"NUL", "UTF-8", func(d *Draft) { d.Text = "a\x00b" }},
	} {
		d := good
		c.spoil(&d)
		if err := d.Check(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: got %v, want a word about %q", c.name, err, c.says)
		}
	}
}

func TestLine(t *testing.T) {
	for text, want := range map[string]string{
		"move H1": "move H1", " a\n\tb\u0085c\u2029d ": "a b c d", "a\x00\x1b[31mb": "a[31mb", "a\u202eb\u2066c\u200ed\ufeff": "abcd",
		"\xffa": "a", "क्\u200dष": "क्\u200dष", strings.Repeat("穴", 250): strings.Repeat("穴", 250),
		strings.Repeat("x", 251): strings.Repeat("x", 249) + "…", "": "",
	} {
		if got := Line(text); got != want {
			t.Errorf("Line(%q) = %q, expected %q", text, got, want)
		}
	}
}

func TestIDs(t *testing.T) {
	for name, want := range map[string]string{
		"Harbour Hall (east)": "harbour-hall-east", "  ": "arena", "É": "arena", "A1": "a1",
		strings.Repeat("long ", 40): strings.TrimSuffix(strings.Repeat("long-", 12), "-"),
	} {
		got := IDFrom(name)
		if got != want {
			t.Errorf("IDFrom(%q) = %q, want %q", name, got, want)
		}
		if err := CheckID(got); err != nil {
			t.Errorf("IDFrom(%q): %v", name, err)
		}
	}
	for _, bad := range []string{"", "-a", "a-", "A", "a/b", "..", "a b", strings.Repeat("a", 65)} {
		if CheckID(bad) == nil {
			t.Errorf("CheckID(%q) passed", bad)
		}
	}
}

func TestDiffAndCompare(t *testing.T) {
	c, err := Compare(t.Context(), "a: 1\nb: 2\n", "a: 1\nb: 3\nc: 4\n", "", "")
	if strings.Join(c.Gone, "|") != "b: 2" || strings.Join(c.Come, "|") != "b: 3|c: 4" || err != nil {
		t.Errorf("gone %q come %q, %v", c.Gone, c.Come, err)
	}
	left, leave := context.WithCancel(t.Context())
	leave()
	if c, err := Compare(left, "a\n", "b\n", "", ""); !errors.Is(err, context.Canceled) || c.Text != "" {
		t.Errorf("for a visitor who has left: %+v, %v", c, err)
	}
	if d, want := Diff("a\n", "b\n", "version 1", "version 2"), "--- version 1\n+++ version 2\n@@ -1,1 +1,1 @@\n-a\n+b\n"; d != want {
		t.Errorf("diff %q, want %q", d, want)
	}
	if d := Diff("a\n", "a\n", "version 1", "version 2"); d != "" {
		t.Errorf("diff of nothing %q", d)
	}
}
