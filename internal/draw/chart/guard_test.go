package chart

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/words"
)

func guardArena(t *testing.T) arena.Arena {
	t.Helper()
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Every sector starts at its hole, lies outside the rink, and its outer edge is
// as far as said: read back from the drawing through the map's scale.
func TestSectorsLieOutside(t *testing.T) {
	a := guardArena(t)
	var sectors []puck.Guard
	for _, h := range a.Working() {
		sectors = append(sectors, puck.Guard{Hole: h.ID, Sector: puck.Sector{From: -0.6, To: 0.4, HalfAngle: unit.Known(unit.Angle(1.2)), Typical: 6, Clear: 13, Farthest: 30, Passing: true}})
	}
	d := GuardMap(a, sectors, "", 300)
	low, high := guardBounds(a, sectors, "")
	scale := (300 - 2*guardPad) / (high.X - low.X)
	place := func(p sheet.Point) geom.Vec2 {
		return geom.Vec2{X: low.X + (p.X-guardPad)/scale, Y: high.Y - (p.Y-guardPad)/scale}
	}
	seen := 0
	for _, e := range d.Items {
		id := e.Data["hole"]
		if id == "" {
			continue
		}
		h, _ := a.Hole(id)
		at := a.Rink.Point(h.Station)
		for _, item := range e.Shape.(*sheet.Group).Items {
			l, ok := item.Shape.(sheet.Polyline)
			if !ok || item.Class != "sector" {
				continue
			}
			seen++
			if first := place(l.Vertices[0].Point); first.Sub(at).Len() > 1e-6 {
				t.Errorf("%s starts %.6f m off its hole", id, first.Sub(at).Len())
			}
			for _, v := range l.Vertices[1:] {
				p := place(v.Point)
				if a.Rink.Contains(p) {
					t.Errorf("%s: %v is on the ice", id, p)
				}
				if far := p.Sub(at).Len(); math.Abs(far-13) > 1e-6 {
					t.Errorf("%s: the outer edge is %.6f m off", id, far)
				}
			}
			// Falling stations lie to the negative bearing.
			first, last := place(l.Vertices[1].Point), place(l.Vertices[len(l.Vertices)-1].Point)
			if tan := a.Rink.Tangent(h.Station); first.Sub(at).Dot(tan) >= last.Sub(at).Dot(tan) {
				t.Errorf("%s: bearings run the wrong way", id)
			}
		}
	}
	if seen != len(a.Working()) || seen < 8 {
		t.Fatalf("%d sectors seen", seen)
	}
}

func TestGuardMapOfOneHole(t *testing.T) {
	a := guardArena(t)
	s := []puck.Guard{{Hole: "B1", Sector: puck.Sector{From: -0.5, To: 0.5, Typical: 6, Clear: 13, Passing: true}}, {Hole: "A1", Sector: puck.Sector{From: -0.5, To: 0.5, Typical: 6, Clear: 13, Passing: true}}, {Hole: "none", Sector: puck.Sector{To: 0.1, Clear: 1, Passing: true}}}
	d := GuardMap(a, s, "B1", 10)
	if d.W != leastOne || d.H < 60 || d.H > 400 {
		t.Errorf("%g x %g mm", d.W, d.H)
	}
	n := 0
	for _, e := range d.Items {
		if e.Data["hole"] != "" {
			n++
		}
	}
	if n != 1 {
		t.Errorf("%d sectors, want one", n)
	}
	if got := words.Within(13.2*unit.Metre, unit.Imperial); got != "44 ft" {
		t.Errorf("13.2 m is %q", got)
	}
}

// The names of sectors that lie over one another keep off one another.
func TestSectorNamesKeepOffOneAnother(t *testing.T) {
	a := guardArena(t)
	beside := a.Holes[0]
	beside.ID, beside.Station = "B1b", beside.Station+unit.Metre/2
	a.Holes = append(a.Holes, beside)
	var all []puck.Guard
	for i, k := range a.Holes {
		all = append(all, puck.Guard{Hole: k.ID, Sector: puck.Sector{From: -0.5, To: 0.5, Typical: 6, Clear: unit.Length(13 - 3*(i%3)), Passing: true}})
	}
	for _, width := range []float64{120, 150, 260} {
		for _, two := range sheet.Collisions(GuardMap(a, all, "", width).TextBoxes(), 0.1) {
			t.Errorf("%g mm: %q lies on %q", width, two[1].S, two[0].S)
		}
	}
}

// A sector's name stands between its arcs, and past the outer one where they
// leave no room for words.
func TestSectorNameKeepsOffItsArcs(t *testing.T) {
	hole := sheet.Pt(50, 50)
	if got := sectorLabel(hole, sheet.Pt(50, 90), sheet.Pt(50, 70)); got.Dist(sheet.Pt(50, 82)) > 1e-9 {
		t.Errorf("roomy: %v", got)
	}
	if got := sectorLabel(hole, sheet.Pt(50, 60), sheet.Pt(50, 57)); got.Dist(sheet.Pt(50, 64)) > 1e-9 {
		t.Errorf("below: %v", got)
	}
	if got := sectorLabel(hole, sheet.Pt(60, 50), sheet.Pt(57, 50)); got.Dist(sheet.Pt(67, 50)) > 1e-9 {
		t.Errorf("beside: %v", got)
	}
}
