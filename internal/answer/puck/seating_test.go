package puck

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// By hand, rows 3 ft deep, the first 4 ft behind the glass: row n ends at 4 + 3n ft.
func TestRowsByHand(t *testing.T) {
	s := Seating{First: 4 * unit.Foot, Deep: 3 * unit.Foot}
	for feet, want := range map[float64]int{0: 0, 4: 0, 4.1: 1, 7: 1, 7.1: 2, 34: 10} {
		if got := s.Row(unit.Length(feet) * unit.Foot); got != want {
			t.Errorf("%g ft: row %d, want %d", feet, got, want)
		}
	}
	left, right := Sector{From: -45 * unit.Degree, To: 30 * unit.Degree, Clear: 10}.Aside()
	if math.Abs(left.Metres()-7.0711) > 1e-4 || math.Abs(right.Metres()-5) > 1e-9 {
		t.Errorf("10 m off: %v and %v, by hand 7.0711 and 5 m", left, right)
	}
}

// By hand: two holes of 1/8000 and 1/24000 a game are 1 in 6000 together; 1/50 and 1/150
// are 1 in 37.5; the middle is the root of 6000 x 37.5 = 474.34.
func TestTogetherByHand(t *testing.T) {
	g, ok := Together([]Guard{
		{Game: Passes{Expected: 1.0 / 8000, ExpectedHigh: 1.0 / 50}}, {Game: Passes{Expected: 1.0 / 24000, ExpectedHigh: 1.0 / 150}},
	})
	if !ok || math.Abs(g.Seldom-6000) > 1e-6 || math.Abs(g.Often-37.5) > 1e-9 || math.Abs(g.Middle-474.3416) > 1e-3 {
		t.Errorf("%+v", g)
	}
	if _, ok := Together(nil); ok {
		t.Error("no hole lets a puck through")
	}
}
