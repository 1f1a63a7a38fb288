package rink_test

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// Markings are filled in by the book where the length is its, else in proportion;
// the international book allows 60 m by 26 to 30 m with corners of 7.0 to 8.5 m (2023/24, 1.2).
func TestFill(t *testing.T) {
	const m, ft, in = unit.Metre, unit.Foot, unit.Inch
	for _, c := range []struct {
		name, standard              string
		length, width               unit.Length
		ask, how                    rink.Filling
		corner, goal, blue, fromAxi unit.Length
	}{
		{"the narrow international rink", rink.International, 60 * m, 26 * m, "", rink.ByBook, 7.4 * m, 4 * m, 22.86 * m, 7 * m},
		{"an older rink", rink.International, 61 * m, 30 * m, "", rink.ByBook, 8.5 * m, 4 * m, 22.86 * m, 7 * m},
		{"a short rink", rink.International, 48 * m, 24 * m, "", rink.InProportion, 6.8 * m, 3.2 * m, 18.29 * m, 5.6 * m},
		{"a short rink by the book", rink.International, 56 * m, 26 * m, rink.ByBook, rink.ByBook, 7.4 * m, 4 * m, 22.86 * m, 7 * m},
		{"the North American rink", rink.NorthAmerican, 200 * ft, 85 * ft, "", rink.ByBook, 28 * ft, 11 * ft, 75 * ft, 22 * ft},
		{"an amateur rink", rink.NorthAmerican, 185 * ft, 85 * ft, "", rink.InProportion, 26 * ft, 122 * in, 69*ft + 4*in, 22 * ft},
		{"bare ice", rink.International, 60 * m, 30 * m, rink.Unpainted, rink.Unpainted, 8.5 * m, 0, 0, 0},
	} {
		r, how, err := rink.Fill(rink.Dimensions{Length: c.length, Width: c.width}, c.standard, c.ask)
		if err != nil || how != c.how {
			t.Errorf("%s: %q, %v", c.name, how, err)
			continue
		}
		d := r.Dimensions()
		for what, pair := range map[string][2]unit.Length{"corner": {d.CornerRadius, c.corner}, "goal line": {d.Markings.GoalLine, c.goal},
			"blue line": {d.Markings.BlueLine, c.blue}, "spots from the axis": {d.Markings.SpotFromAxis, c.fromAxi}} {
			if off := pair[0] - pair[1]; off > 1e-9 || off < -1e-9 {
				t.Errorf("%s: %s %s, expected %s", c.name, what, pair[0].Exact(unit.Metric), pair[1].Exact(unit.Metric))
			}
		}
	}
	if _, _, err := rink.Fill(rink.Dimensions{Length: 60, Width: 30}, rink.International, "guess"); err == nil || !strings.Contains(err.Error(), "write book, proportion or none") {
		t.Errorf("%v", err)
	}
	if _, _, err := rink.Fill(rink.Dimensions{Length: 60, Width: 30}, "lake", ""); err == nil {
		t.Error("a standard that is none")
	}
}
