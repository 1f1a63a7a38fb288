package words

import (
	"testing"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
)

func TestPlacesAsPeopleSayThem(t *testing.T) {
	for want, p := range map[string]arena.Place{
		"goal line, 33 in back, end B, bench side":  arena.FromLandmark(rink.BBench, rink.GoalLine, -33*unit.Inch),
		"circle bottom, 5 in past, end A, box side": arena.FromLandmark(rink.ABox, rink.CircleBottom, 5*unit.Inch),
		"circle top, end A, bench side":             arena.FromLandmark(rink.ABench, rink.CircleTop, 0),
		"station 40 ft":                             arena.AtStation(40 * unit.Foot),
	} {
		if got := Spoken(choose.Candidate{Place: p}, unit.Imperial); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestThousands(t *testing.T) {
	for n, want := range map[int]string{7: "7", 999: "999", 20_000: "20,000", 1_234_567: "1,234,567"} {
		if got := thousands(n); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
