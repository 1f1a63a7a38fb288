package plan_test

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/rink"
)

// TestSizes: a skater of 1.8812 m, 20 m away at the eye's height, is 0.188 / 0.24 of the
// frame through 200 mm before a sensor 24 mm high, 70/200 of that through 70 mm;
// what no lens sees is 0, what is no ice is nothing.
func TestSizes(t *testing.T) {
	r, err := rink.Standard("international")
	if err != nil {
		t.Fatal(err)
	}
	g, err := sight.NewGrid(r, unit.Metre)
	if err != nil {
		t.Fatal(err)
	}
	seen := sight.Reach{Grid: g, Eye: sight.Eye{Z: 1.5}, Layers: []sight.Layer{{Height: 1.5, Seen: make([]uint64, g.Columns*g.Rows)}},
		Lenses: []sight.LensReach{{ID: "tele", Focal: 0.07}, {ID: "tele", Focal: 0.2}, {ID: "other", Focal: 0.4}}}
	near, far := g.Index(g.Columns/2, g.Rows/2), g.Index(g.Columns/2+1, g.Rows/2)
	seen.Eye.At = g.At(g.Columns/2, g.Rows/2).Sub(geom.Vec2{X: 20})
	seen.Layers[0].Seen[near], seen.Layers[0].Seen[far] = 0b111, 0b101
	got := plan.Sizes(seen, 0, "tele", kit.Body{Sensor: unit.Size{W: 0.036, H: 0.024}})
	if want := 0.2 * 1.8812 / 0.024 / 20; math.Abs(got[near]-want) > 1e-12 {
		t.Errorf("20 m away: %g of the frame, expected %g", got[near], want)
	}
	if want := 0.07 * 1.8812 / 0.024 / 21; math.Abs(got[far]-want) > 1e-12 {
		t.Errorf("21 m away, seen at 70 mm alone: %g of the frame, expected %g", got[far], want)
	}
	if got[near+2] != 0 || !math.IsNaN(got[0]) {
		t.Errorf("unseen %g, off the ice %g", got[near+2], got[0])
	}
}
