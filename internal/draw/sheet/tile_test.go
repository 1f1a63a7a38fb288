package sheet_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"pgregory.net/rapid"
)

// window returns the part of the drawing that a tile shows, in the drawing's frame.
func window(tile *sheet.Drawing) sheet.Rect {
	outer := tile.Items[0].Shape.(*sheet.Group)
	inner := outer.Items[0].Shape.(*sheet.Group)
	return sheet.Rect{X: -inner.Offset.X, Y: -inner.Offset.Y, W: outer.Clip.W, H: outer.Clip.H}
}

// Tiles laid over each other by their overlap cover the whole drawing, at full
// size, and no sheet is wasted.
func TestTilesCoverTheDrawing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := sheet.New("big", rapid.Float64Range(50, 1500).Draw(t, "w"), rapid.Float64Range(50, 1500).Draw(t, "h"), sheet.Base())
		p := rapid.SampledFrom(sheet.Papers()).Draw(t, "paper")
		tiles, err := d.Tile(sheet.Tiling{Paper: p})
		if err != nil {
			t.Fatal(err)
		}
		right, foot, area := 0.0, 0.0, 0.0
		for _, tile := range tiles {
			w := window(tile)
			right, foot = math.Max(right, w.X+w.W), math.Max(foot, w.Y+w.H)
			area += (w.W - 10) * (w.H - 10)
		}
		if right < d.W-1e-6 || foot < d.H-1e-6 {
			t.Fatalf("tiles reach to %g, %g of %g x %g", right, foot, d.W, d.H)
		}
		one := (p.W - 30) * (p.H - 30)
		if most := (math.Ceil(d.W/(p.W-30)) + 1) * (math.Ceil(d.H/(p.H-30)) + 1) * one; area > most {
			t.Fatalf("%d sheets for %g x %g on %s", len(tiles), d.W, d.H, p.Name)
		}
	})
}

// A register mark on one sheet and its twin on the next are the same place of
// the drawing.
func TestRegisterMarksMeet(t *testing.T) {
	p, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	tiles, err := sheet.New("two", 350, 250, sheet.Base()).Tile(sheet.Tiling{Paper: p, Margin: 8, Overlap: 12})
	if err != nil {
		t.Fatal(err)
	}
	if len(tiles) != 2 {
		t.Fatalf("%d tiles", len(tiles))
	}
	var places [2][]sheet.Point
	for i, tile := range tiles {
		w := window(tile)
		for _, e := range tile.Items[1].Shape.(*sheet.Group).Items {
			if c, ok := e.Shape.(sheet.Circle); ok {
				places[i] = append(places[i], sheet.Pt(c.C.X-8+w.X, c.C.Y-8+w.Y))
			}
		}
	}
	if len(places[0]) != 2 || len(places[1]) != 2 {
		t.Fatalf("marks %v", places)
	}
	// The caption tells how far apart they are, so that each sheet can be measured.
	want := fmt.Sprintf("%g mm up", places[0][0].Dist(places[0][1]))
	for i, tile := range tiles {
		if !slices.ContainsFunc(tile.TextBoxes(), func(b sheet.TextBox) bool { return strings.Contains(b.S, want) }) {
			t.Errorf("sheet %d does not say %q: %v", i, want, tile.TextBoxes())
		}
	}
	for i := range 2 {
		if places[0][i].Dist(places[1][i]) > 1e-9 {
			t.Errorf("mark %d: %v and %v", i, places[0][i], places[1][i])
		}
	}
}

func TestTileRefuses(t *testing.T) {
	small := sheet.Paper{Name: "stamp", W: 25, H: 30}
	if _, err := sheet.New("x", 100, 100, nil).Tile(sheet.Tiling{Paper: small}); err == nil {
		t.Error("a stamp took a drawing")
	}
	a5, err := sheet.ParsePaper("a5")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := sheet.New("x", 60000, 26000, nil).Tile(sheet.Tiling{Paper: a5}); err == nil {
		t.Error("a rink at full size on A5")
	}
}
