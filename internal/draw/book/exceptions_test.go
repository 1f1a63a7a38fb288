package book

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// What is broken stands in a table with what to do; what is kept is one line,
// and no row of a table.
func TestFindingsByException(t *testing.T) {
	c := content(t, example(t, "brennholm"), "a4", unit.Metric)
	html := string(c.HTML())
	from := strings.Index(html, `<section id="rules">`)
	to := strings.Index(html[from:], "</section>")
	found := html[from : from+to]
	if !strings.Contains(found, "Move hole A-T") {
		t.Error("what to do about the broken rule is not said")
	}
	if kept := strings.Index(found, "What is kept"); kept < strings.Index(found, "What is broken") || strings.Contains(found[kept:], "A-T") {
		t.Error("what is broken does not stand first, or stands among what is kept as well")
	}
	if n := strings.Count(html, "Dashed arc"); n != 2 {
		t.Errorf("the lines of the guard's maps are explained %d times, expected once for the plan and once for the holes", n)
	}
	if n := strings.Count(found, "Nothing to do"); n > 0 {
		t.Errorf("%d rows of findings that are kept", n)
	}
	if n := strings.Count(html, "<p>Kept: "); n < len(c.Plan.Holes) {
		t.Errorf("%d lines of what is kept for %d holes", n, len(c.Plan.Holes))
	}
}

// The maps of two holes differ, and both carry lines with words; the light of
// the survey is a map of its own.
func TestMapsTellHolesApart(t *testing.T) {
	c := content(t, example(t, "brennholm"), "a4", unit.Metric)
	a, b := c.Reaches[c.Plan.Holes[0].ID], c.Reaches[c.Plan.Holes[1].ID]
	if a == nil || b == nil || len(a.Lines) < 3 || len(b.Lines) < 3 {
		t.Fatal("a hole's map has no lines")
	}
	apart := 0
	for i := range a.Values {
		if d := a.Values[i] - b.Values[i]; d > 0.05 || d < -0.05 {
			apart++
		}
	}
	if 4*apart < len(a.Values) {
		t.Errorf("the maps differ in %d of %d cells", apart, len(a.Values))
	}
	if c.Light == nil || len(c.Light.Lines) < lightLines {
		t.Fatalf("the light has no lines: %+v", c.Light)
	}
	if !strings.Contains(string(c.HTML()), c.Light.Lines[0].Label) {
		t.Error("the page does not say what the light's lines are")
	}
}
