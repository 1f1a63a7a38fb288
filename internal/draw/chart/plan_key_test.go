package chart_test

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// classesOn returns the classes of all shapes on some layers of a drawing.
func classesOn(d *sheet.Drawing, layers ...string) map[string]bool {
	out := map[string]bool{}
	var walk func(e *sheet.Element)
	walk = func(e *sheet.Element) {
		if g, ok := e.Shape.(*sheet.Group); ok {
			for _, item := range g.Items {
				walk(item)
			}
			return
		}
		out[e.Class] = true
	}
	for _, e := range d.Items {
		for _, l := range layers {
			if e.Layer == l {
				walk(e)
			}
		}
	}
	return out
}

// Every kind of line that stands on the boards and outside them has its sample
// in the key below the plan and below the strip.
func TestTheKeyShowsEveryLine(t *testing.T) {
	for name, a := range arenas(t) {
		p := planOf(t, a)
		for what, d := range map[string]*sheet.Drawing{"plan": chart.PlanMap(p, 277), "strip": chart.BoardsStrip(p, 277, 4)} {
			keyed := classesOn(d, "legend")
			drawn := classesOn(d, "boards", "glass", "zones", "stretches", "reach", "holes")
			if len(drawn) < 8 {
				t.Fatalf("%s of %s: %d classes drawn", what, name, len(drawn))
			}
			for class := range drawn {
				switch {
				case class == "hit" || class == "stretch-end" || class == "leader" || class == "hole-label" || class == "hole-note" || strings.Contains(class, "-text"): // no line of its own
				case what == "strip" && (class == "boards" || class == "edge"): // the boards themselves, named at the left end
				case class == "boards" || strings.HasPrefix(class, "zone zone-") || strings.HasPrefix(class, "gate") || strings.HasSuffix(class, "pane-gate") || strings.HasPrefix(class, "window") || class == "hole-cut":
				case !keyed[class]:
					t.Errorf("%s of %s: %q has no key", what, name, class)
				}
			}
		}
	}
}

// A keep-out differs from broadcast without colour: one is hatched, one dashed.
func TestZonesDifferWithoutColour(t *testing.T) {
	a := larkmoor(t).Arena
	kinds := map[string]bool{}
	for _, z := range a.Zones {
		kinds[z.Kind] = true
	}
	if !kinds["keep-out"] || !kinds["broadcast"] {
		t.Fatalf("the arena's zones are of %v", kinds)
	}
	d := chart.PlanMap(chart.Content{Arena: a}, 277)
	on := classesOn(d, "zones")
	if !on["zone-hatch"] {
		t.Error("the keep-out is not hatched")
	}
	plain, dashed := d.Styles.Resolve("zone zone-keep-out", sheet.Style{}), d.Styles.Resolve("zone zone-broadcast", sheet.Style{})
	if len(plain.Dash) > 0 || len(dashed.Dash) == 0 {
		t.Errorf("outlines: keep-out %v, broadcast %v", plain.Dash, dashed.Dash)
	}
}

// A wedge spans the angles that it was given, and its words say whose they are.
func TestWedgesMeanWhatTheirWordsSay(t *testing.T) {
	p := larkmoor(t)
	p.Heat, p.Reach = nil, []chart.Wedge{{Hole: "B-one", Left: 30 * unit.Degree, Right: 40 * unit.Degree, Depth: 8 * unit.Metre}}
	d := chart.PlanMap(p, 277)
	said := false
	for _, b := range d.TextBoxes() {
		said = said || b.S == "turn of the best lens's axis with clean corners, drawn 8 m deep"
	}
	if !said {
		t.Error("the key does not say what a wedge is")
	}
	shapes := reaches(d, "B-one")
	if len(shapes) != 1 {
		t.Fatalf("%d wedges", len(shapes))
	}
	v := shapes[0].(sheet.Polyline).Vertices
	first, last := v[1].Sub(v[0].Point), v[len(v)-1].Sub(v[0].Point)
	between := math.Abs(math.Atan2(first.X*last.Y-first.Y*last.X, first.X*last.X+first.Y*last.Y))
	if got := unit.Angle(between).Degrees(); math.Abs(got-70) > 1e-6 {
		t.Errorf("the wedge spans %.3f deg, the words 70", got)
	}
}

// reaches returns the wedges of a hole.
func reaches(d *sheet.Drawing, hole string) []sheet.Shape {
	var out []sheet.Shape
	for _, e := range d.Items {
		if g, ok := e.Shape.(*sheet.Group); ok && e.Layer == "reach" {
			for _, in := range g.Items {
				if in.Data["hole"] == hole {
					out = append(out, in.Shape)
				}
			}
		}
	}
	return out
}
