package edit_test

import (
	"slices"
	"testing"

	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/glass"
)

// TestEditsOntoWhatOthersSaved: edits of parts that others left alone are made on
// top of theirs; those of a part that both changed are not.
func TestEditsOntoWhatOthersSaved(t *testing.T) {
	before := demo(t)
	station, height := 40.0, 1.6
	theirs, _, err := edit.Editor{Standard: standard}.Apply(before, []edit.Edit{
		{Do: edit.Move, Hole: "B2", To: &edit.Spot{Height: &height}},
		{Do: edit.Add, As: "H1", To: &edit.Spot{Station: &station}},
		{Do: edit.Set, Path: "boards.ledge", Value: edit.One("10 in")},
	})
	if err != nil {
		t.Fatal(err)
	}
	changed := before.Differ(theirs)
	if want := []string{"boards", "holes[B2]", "holes[H1]"}; !slices.Equal(changed, want) {
		t.Fatalf("they changed %v, want %v", changed, want)
	}
	for name, x := range map[string]struct {
		mine edit.Edit
		both []string
		as   string
	}{
		"another hole":         {edit.Edit{Do: edit.Move, Hole: "A4", To: &edit.Spot{Height: &height}}, nil, ""},
		"the same hole":        {edit.Edit{Do: edit.Turn, Hole: "B2", State: glass.Off}, []string{"holes[B2]"}, ""},
		"a field of it":        {edit.Edit{Do: edit.Set, Path: "holes[B2].note", Value: edit.One("x")}, []string{"holes[B2]"}, ""},
		"a copy of it":         {edit.Edit{Do: edit.Copy, Hole: "B2", As: "B5"}, []string{"holes[B2]"}, "B5"},
		"a new one, as theirs": {edit.Edit{Do: edit.Add, As: "H1"}, nil, "H2"},
		"the same field":       {edit.Edit{Do: edit.Set, Path: "boards.height", Value: edit.One("43 in")}, []string{"boards"}, ""},
		"another field":        {edit.Edit{Do: edit.Set, Path: "light.readings[#1].lux", Value: edit.One("900")}, nil, ""},
		"the whole text":       {edit.Edit{Do: edit.Text, Text: "x"}, changed, ""},
	} {
		made, both := edit.Onto([]edit.Edit{x.mine}, theirs, changed)
		if !slices.Equal(both, x.both) || made[0].As != x.as {
			t.Errorf("%s: both changed %v, want %v; named %q, want %q", name, both, x.both, made[0].As, x.as)
		}
	}
}
