package form_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/form"
)

func TestLooking(t *testing.T) {
	d, err := form.Read("a.yaml", strings.NewReader("name: hall # here\nnote:\nboards: {height: 42 in}\nholes:\n  - id: H1\n    size: 5 in x 4 in\n  - {x: 1 m}\n"), 1000)
	if err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		"name": "hall", "note": "", "boards": "", "boards.height": "42 in", "boards.ledge": "", "holes": "",
		"holes[H1].size": "5 in x 4 in", "holes[#2].x": "1 m", "holes[H9].size": "", "nothing": "", "": "", "holes[": "",
	} {
		if got := d.Value(path); got != want {
			t.Errorf("value at %q is %q, expected %q", path, got, want)
		}
	}
	if got := d.Items("holes"); !slices.Equal(got, []string{"holes[H1]", "holes[#2]"}) {
		t.Errorf("items are %q", got)
	}
	if got := d.Items("boards"); got != nil {
		t.Errorf("fields have items %q", got)
	}
	if !d.IsGroup("boards") || !d.IsGroup("holes[H1]") || d.IsGroup("name") || d.IsGroup("holes") || d.IsGroup("none") {
		t.Error("groups are not told from values")
	}
}
