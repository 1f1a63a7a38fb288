package arena_test

import (
	"slices"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

const mm = unit.Millimetre

// gaps is an arena in which a hole and three low windows lack what a survey may lack.
func gaps() arena.Arena {
	return arena.Arena{
		Name:   "Test rink",
		Boards: glass.Boards{Height: 1.07},
		Panes:  []glass.Pane{{ID: "P1", From: 20, Width: 2, Height: 1.8}},
		Holes: []glass.Hole{
			{ID: "H1", Pane: "P1", Station: 21, Height: 1.5, Size: unit.Size{W: 140 * mm, H: 20 * mm}},
			{ID: "H2", Pane: "P1", Station: 21.5, Height: 1.5, Size: unit.Size{W: 140 * mm, H: 20 * mm}, State: glass.Off},
		},
		Windows: []glass.Window{
			{ID: "open", Station: 30, Height: 0.5, Size: unit.Size{W: 200 * mm, H: 150 * mm}, Open: true},
			{ID: "deep", Station: 32, Height: 0.5, Size: unit.Size{W: 200 * mm, H: 150 * mm}, Open: true, Thick: unit.Known(60 * mm)},
			{ID: "panel", Station: 34, Height: 0.5, Size: unit.Size{W: 200 * mm, H: 150 * mm}},
		},
	}
}

func TestOpeningSaysWhatWasAssumed(t *testing.T) {
	whole := gaps()
	whole.Panes[0].Thickness, whole.Boards.Setback, whole.Boards.Ledge = unit.Known(12*mm), unit.Known(50*mm), unit.Known(230*mm)
	for _, c := range []struct {
		name, id string
		a        arena.Arena
		thick    unit.Length
		assumed  []string // fields
	}{
		{"a hole", "H1", gaps(), 15.875 * mm, []string{"thickness", "corner radius", "edge rounding", "setback"}},
		{"a hole, asked", "H1", gaps().TakingThickness(10 * mm), 10 * mm, []string{"thickness", "corner radius", "edge rounding", "setback"}},
		{"a hole in a surveyed pane", "H1", whole.TakingThickness(10 * mm), 12 * mm, []string{"corner radius", "edge rounding"}},
		{"an open window", "open", gaps(), 12.7 * mm, []string{"thickness"}},
		{"the same in boards of known depth", "open", whole, 230 * mm, []string{"thickness"}},
		{"one of known depth", "deep", gaps(), 60 * mm, nil},
		{"a clear panel", "panel", gaps(), 12.7 * mm, []string{"thickness"}},
	} {
		o, err := c.a.Opening(c.id)
		if err != nil {
			t.Fatal(err)
		}
		var fields []string
		for _, a := range arena.Assumed(o.Thick, o.Corner, o.Rounding, o.Setback) {
			fields = append(fields, a.Field)
			if a.Reason.IsZero() || a.Of == "" {
				t.Errorf("%s: %q was assumed without a reason", c.name, a.Field)
			}
		}
		if o.Thick.Value != c.thick || !slices.Equal(fields, c.assumed) {
			t.Errorf("%s: %v thick, assumed %q; want %v, %q", c.name, o.Thick.Value, fields, c.thick, c.assumed)
		}
		if o.Corner.Value > 10*mm && c.id == "H1" {
			t.Errorf("%s: corners of %v in a hole 20 mm high", c.name, o.Corner.Value)
		}
	}
}

func TestOpeningRefusesWhatIsNotThere(t *testing.T) {
	for id, want := range map[string]string{
		"H2": `"H2": the hole is turned off in the arena file`,
		"H9": `"H9": no working hole or low window has this id; write H1, open, deep or panel`,
	} {
		if _, err := gaps().Opening(id); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", id, err, want)
		}
	}
	if _, err := gaps().OpeningOf(glass.Hole{ID: "X", Station: 50}); err == nil {
		t.Error("a hole in no pane has an opening")
	}
}
