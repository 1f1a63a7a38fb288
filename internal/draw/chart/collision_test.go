package chart_test

import (
	"fmt"
	"io/fs"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// fewestArenas is how many example arenas the walk must meet to be believed.
const fewestArenas = 3

// arenas returns the example arenas by name.
func arenas(t testing.TB) map[string]arena.Arena {
	t.Helper()
	out := map[string]arena.Arena{}
	err := fs.WalkDir(examples.Files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(name, ".yaml") {
			return err
		}
		f, err := examples.Files.Open(name)
		if err != nil {
			return err
		}
		defer f.Close()
		doc, err := arena.Read(name, f)
		if err != nil {
			return err
		}
		out[strings.TrimSuffix(name, ".yaml")], err = doc.Check()
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(out) < fewestArenas {
		t.Fatalf("%d example arenas, expected %d or more", len(out), fewestArenas)
	}
	return out
}

// planOf returns a plan that shows everything of an arena: verdicts, permitted
// stretches, wedges, notes and alternative places.
func planOf(t testing.TB, a arena.Arena) chart.Content {
	t.Helper()
	set, err := rules.Shipped("common-practice")
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	p := chart.Content{
		Arena: a, Status: map[string]rules.Status{}, Notes: map[string]string{},
		Others: []chart.Spot{{Label: "next best", Station: a.Rink.Perimeter() / 4}, {Label: "third", Station: a.Rink.Perimeter()/4 + unit.Metre}},
	}
	on := sets.On(a)
	p.Permitted, p.Undecided = on.Permitted()
	for i, h := range a.Holes {
		p.Status[h.ID] = on.Standing(h)
		p.Reach = append(p.Reach, chart.Wedge{Hole: h.ID, Left: 34 * unit.Degree, Right: 41 * unit.Degree})
		if i%2 == 0 {
			p.Notes[h.ID] = fmt.Sprintf("worth 0.%d", 10+i)
		}
	}
	return p
}

// checkTexts fails when two texts of a drawing meet or one leaves the sheet.
func checkTexts(t *testing.T, name string, d *sheet.Drawing, fewest int) {
	t.Helper()
	boxes := d.TextBoxes()
	if len(boxes) < fewest {
		t.Errorf("%s: %d texts, expected %d or more", name, len(boxes), fewest)
	}
	for _, c := range sheet.Collisions(boxes, 0.1) {
		t.Errorf("%s: %q at %.1f meets %q at %.1f", name, c[0].S, c[0].Box, c[1].S, c[1].Box)
	}
	for _, b := range boxes {
		if !(sheet.Rect{W: d.W, H: d.H}).Contains(b.Box.Inset(0.1)) {
			t.Errorf("%s: %q at %.1f leaves the sheet of %.1f x %.1f", name, b.S, b.Box, d.W, d.H)
		}
	}
}

func TestNoLabelMeetsAnother(t *testing.T) {
	for name, a := range arenas(t) {
		for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
			a.Units = sys
			p := planOf(t, a)
			for _, width := range []float64{180, 277, 400} {
				checkTexts(t, fmt.Sprintf("plan of %s, %s, %g mm", name, sys, width), chart.PlanMap(p, width), 20)
				checkTexts(t, fmt.Sprintf("strip of %s, %s, %g mm", name, sys, width), chart.BoardsStrip(p, width, 4), 40)
			}
			checkTexts(t, fmt.Sprintf("long strip of %s, %s", name, sys), chart.BoardsStrip(p, 1800, 1), 40)
		}
	}
}
