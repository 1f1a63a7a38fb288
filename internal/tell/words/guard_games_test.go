package words

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/measure/unit"
)

func TestGuardInGamesAndSeats(t *testing.T) {
	eight := make([]puck.Guard, 2)
	for i := range eight {
		eight[i].Game = puck.Passes{Minutes: 60, Expected: 1.0 / 17_000, ExpectedHigh: 1.0 / 75}
	}
	if got := InGames(eight); !strings.HasPrefix(got, "With all 2 covers out for 60 minutes of every game a puck comes through about once in 560 games, between once in 38 and once in 8,500: ") {
		t.Errorf("said: %s", got)
	}
	if got := InGames(eight[:1]); !strings.HasPrefix(got, "With the cover out for 60 minutes of every game") {
		t.Errorf("said: %s", got)
	}
	g := puck.Guard{Seating: puck.Seating{First: 4 * unit.Foot, Deep: 3 * unit.Foot}, Sector: puck.Sector{Passing: true, From: -45 * unit.Degree, To: 30 * unit.Degree, Clear: 40 * unit.Foot}}
	if got := Seats(g, unit.Imperial); got != "rows 1 to 12 behind the glass, from 29 ft left to 20 ft right of the hole as you face the ice" {
		t.Errorf("said: %s", got)
	}
	for n, want := range map[float64]string{0.3: "1", 7: "7", 37.4: "37", 3487: "3,500", 8_330_000: "8,300,000"} {
		if got := Grouped(n); got != want {
			t.Errorf("%g: %s, want %s", n, got, want)
		}
	}
}
