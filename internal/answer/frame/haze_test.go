package frame_test

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// A pane's haze is the one that is asked for, else the survey's, else a worn pane's.
func TestHazeIsAskedSurveyedOrWorn(t *testing.T) {
	acrylic, err := glass.Acrylic.Properties()
	if err != nil {
		t.Fatal(err)
	}
	nobody, asked, fogged := unit.Maybe[float64]{}, unit.Known(0.03), unit.Known(glass.Haze{Word: "fogged", Share: 0.6})
	for _, c := range []struct {
		surveyed unit.Maybe[glass.Haze]
		asked    unit.Maybe[float64]
		want     float64
	}{
		{want: acrylic.HazeWorn, asked: nobody}, {fogged, nobody, 0.6}, {fogged, asked, 0.03},
		{unit.Known(glass.Haze{Word: "clean"}), nobody, acrylic.HazeNew},
	} {
		o := arena.Opening{Pane: unit.Known(glass.Pane{ID: "P1", Material: unit.Known(glass.Acrylic), Haze: c.surveyed})}
		if p, err := frame.PaneOf(o, c.asked); err != nil || math.Abs(p.Haze-c.want) > 1e-12 {
			t.Errorf("haze %g, want %g (%v)", p.Haze, c.want, err)
		}
	}
}
