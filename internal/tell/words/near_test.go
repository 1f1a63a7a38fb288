package words_test

import (
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/tell/words"
)

// TestNear: what people read of a place is told to the inch or the centimetre.
func TestNear(t *testing.T) {
	corner := rink.Corners()[0]
	place := arena.FromLandmark(corner, rink.Landmarks()[0], -42.4*unit.Inch)
	begin := corner.String() + " " + rink.Landmarks()[0].Words()
	for _, c := range []struct{ got, want string }{
		{words.Near(93*unit.Foot+9.25*unit.Inch, unit.Imperial), "93 ft 9 in"},
		{words.Near(1.474*unit.Metre, unit.Metric), "1.47 m"},
		{words.Near(58.4*unit.Inch, unit.Imperial), "4 ft 10 in"},
		{words.NearPlace(place, unit.Imperial), begin + ", 42 in back"},
		{words.NearPlace(place, unit.Metric), begin + ", 1.08 m back"},
		{words.NearPlace(arena.AtStation(10.004*unit.Foot), unit.Imperial), "station 10 ft"},
	} {
		if c.got != c.want {
			t.Errorf("told as %q, expected %q", c.got, c.want)
		}
	}
}
