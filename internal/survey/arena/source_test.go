package arena

import (
	"strings"
	"testing"
)

// A number's source is what is said of it, else of its group, else of the file.
func TestSources(t *testing.T) {
	text := strings.NewReplacer("units: imperial\n", "units: imperial\nsource: guess\n",
		"{height: 42 in}", "{height: 42 in, ledge: 9 in, source: {ledge: drawing}}",
		"count: 5, gate: x}", "count: 5, gate: x, source: {width: measured}}").Replace(rows)
	d, a := readRows(t, text)
	for path, want := range map[string]Source{
		"boards.height": Guess, "boards.ledge": Drawing, "boards": Guess, "panes[P007].width": Measured, "panes[P009].width": Measured,
		"panes[P009].height": Guess, "panes[side2].width": Guess, "nothing[x].y": Guess, "": Guess,
	} {
		if got := a.Source(path); got != want {
			t.Errorf("%s: %q, expected %q", path, got, want)
		}
	}
	if _, bare := readRows(t, rows); bare.Source("panes[P007].width") != "" {
		t.Error("a source that nobody said")
	}
	apart, err := d.Apart("P008")
	if err != nil {
		t.Fatal(err)
	}
	if is, err := apart.Check(); err != nil || is.Source("panes[P008].width") != Measured || is.Source("panes[P010].width") != Measured {
		t.Errorf("set apart, a pane loses its source: %v", err)
	}
	for _, c := range []struct{ source, says string }{{"heard", "measured"}, {"{legde: guess}", `boards.source: unknown field "legde"`}, {"{ledge: heard}", "boards.source.ledge"}} {
		d, err := Read("x.yaml", strings.NewReader(strings.Replace(text, "{ledge: drawing}", c.source, 1)))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := d.Check(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", c.source, err)
		}
	}
}
