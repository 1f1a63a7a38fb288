package form

import (
	"strings"
	"testing"
)

// An edit whose text does not read back as meant is refused.
func TestRewriteProvesItsResult(t *testing.T) {
	d, err := Read("r.yaml", strings.NewReader("a: 1\nb: 2\n"), 100)
	if err != nil {
		t.Fatal(err)
	}
	want := cloned(d.root)
	want.Content[1].Value = "3"
	if _, err := (&change{Document: d, path: "a", want: want}).rewrite(splice{3, 4, "3"}); err != nil {
		t.Errorf("the right text: %v", err)
	}
	for name, cuts := range map[string][]splice{
		"another value":   {{3, 4, "4"}},
		"a field too few": {{3, 9, "3"}},
		"no YAML":         {{3, 4, "[3"}},
		"null":            {{3, 4, ""}},
		"out of order":    {{3, 4, "3"}, {1, 2, ":"}},
	} {
		if _, err := (&change{Document: d, path: "a", want: want}).rewrite(cuts...); err == nil || !strings.Contains(err.Error(), "edit the text by hand") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if got := string(d.Text()); got != "a: 1\nb: 2\n" {
		t.Errorf("the document is now %q", got)
	}
}
