package chart_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// nearMM is how far a mark may stand from where the frame says, in millimetres:
// drawings are rounded to a hundredth.
const nearMM = 0.02

// find returns the shapes of a class in groups with a data attribute.
func find(items []*sheet.Element, key, value, class string) []sheet.Shape {
	var out []sheet.Shape
	for _, e := range items {
		g, ok := e.Shape.(*sheet.Group)
		if !ok {
			continue
		}
		if e.Data[key] != value {
			out = append(out, find(g.Items, key, value, class)...)
			continue
		}
		for _, in := range g.Items {
			if strings.Contains(" "+in.Class+" ", " "+class+" ") {
				out = append(out, in.Shape)
			}
		}
	}
	return out
}

// TestFramesFindTheMarks compares the frames with the marks as drawn.
func TestFramesFindTheMarks(t *testing.T) {
	seen := 0
	for name, a := range arenas(t) {
		p := planOf(t, a)
		p.Moving, p.Bare = true, true
		onMap, onStrip := p.MapFrame(230), p.StripFrame(1150)
		plan, strip := chart.PlanMap(p, 230), chart.BoardsStrip(p, 1150, 1)
		for _, h := range a.Holes {
			seen++
			at, n := a.Rink.Point(h.Station), a.Rink.Normal(h.Station)
			want := onMap.At(at.X-n.X*onMap.Out/onMap.Scale, at.Y-n.Y*onMap.Out/onMap.Scale)
			checkNear(t, name+" map "+h.ID, find(plan.Items, "hole", h.ID, "hit"), want)
			checkNear(t, name+" strip "+h.ID, find(strip.Items, "hole", h.ID, "hit"), onStrip.At(h.Station, h.Height))
		}
		for _, d := range []*sheet.Drawing{plan, strip} {
			if n := strings.Count(string(sheet.InlineSVG(d)), `data-guide="`); n != 1 {
				t.Errorf("%s: %s has %d guides, expected 1", name, d.Name, n)
			}
		}
	}
	if seen < 8 {
		t.Errorf("met %d holes, expected 8 or more", seen)
	}
}

func checkNear(t *testing.T, name string, got []sheet.Shape, want sheet.Point) {
	t.Helper()
	if len(got) != 1 {
		t.Errorf("%s: %d marks, expected 1", name, len(got))
		return
	}
	if c := got[0].(sheet.Circle).C; c.Dist(want) > nearMM {
		t.Errorf("%s: drawn at %.3f, the frame says %.3f", name, c, want)
	}
}

// TestMovingHolesLeaveTheRinkInPlace moves every hole once round the boards: the
// rink on the sheet must not move.
func TestMovingHolesLeaveTheRinkInPlace(t *testing.T) {
	for name, a := range arenas(t) {
		p := planOf(t, a)
		p.Moving, p.Bare = true, true
		before := p.MapFrame(230)
		for i := range a.Holes {
			for turn := range 12 {
				a.Holes[i].Station = a.Rink.Perimeter() * unit.Length(turn) / 12
				p.Arena = a
				if got := p.MapFrame(230); got != before {
					t.Fatalf("%s: with %s at %s the map stands at %+v, before at %+v", name, a.Holes[i].ID, a.Holes[i].Station.Format(unit.Metric), got, before)
				}
			}
		}
	}
}

// TestHeatMayComeFromAnAddress draws a heat map whose picture the page loads.
func TestHeatMayComeFromAnAddress(t *testing.T) {
	p := planOf(t, arenas(t)["quillhaven"])
	p.Bare = true // the legend has pictures of its own
	p.Heat = chart.HeatFrame(610, 260, 0.1, "/reach.png?hole=A1", "what A1 reaches")
	text := string(sheet.InlineSVG(chart.PlanMap(p, 230)))
	if !strings.Contains(text, `href="/reach.png?hole=A1"`) || strings.Contains(text, "data:image/") {
		t.Errorf("the picture is not linked: %.400s", text[strings.Index(text, `data-layer="heat"`):])
	}
	f := p.MapFrame(230)
	if want := fmt.Sprintf(`width="%.2f"`, f.Scale*61); !strings.Contains(text, strings.TrimRight(strings.TrimSuffix(want, `"`), "0")) {
		t.Errorf("the picture is not %s wide", want)
	}
	p.Heat.Address = "javascript:alert(1)"
	if text := string(sheet.InlineSVG(chart.PlanMap(p, 230))); strings.Contains(text, "javascript:") {
		t.Error("a script's address came through")
	}
	if math.Abs(p.Heat.Corner.X+30.5) > 1e-9 || math.Abs(p.Heat.Corner.Y+13) > 1e-9 {
		t.Errorf("the grid's corner is at %v", p.Heat.Corner)
	}
}

// TestLayersAreThoseOfTheDrawing puts the layers together again.
func TestLayersAreThoseOfTheDrawing(t *testing.T) {
	d := chart.PlanMap(larkmoor(t), 230)
	whole := string(sheet.InlineSVG(d))
	layers := sheet.InlineLayers(d, d.LayerOrder()...)
	if len(layers) < 8 {
		t.Errorf("%d layers, expected 8 or more", len(layers))
	}
	for name, text := range layers {
		if !strings.Contains(whole, `data-layer="`+name+`">`+"\n"+string(text)+"</g>") {
			t.Errorf("layer %s is not part of the whole drawing", name)
		}
	}
}
