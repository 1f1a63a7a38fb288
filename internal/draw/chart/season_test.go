package chart

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/seat"
)

// TestTicksOfASeasonAreGames: however few games there are, no tick stands at a part of one.
func TestTicksOfASeasonAreGames(t *testing.T) {
	for _, games := range []int{2, 3, 4, 5, 7, 12, 13, 30} {
		s := seat.Season{Rule: seat.Level}
		for k := range games {
			s.Course = append(s.Course, seat.Spread{Games: k + 1, Least: 0.4, Most: 0.9})
		}
		met := 0
		for _, b := range Shares([]seat.Season{s}).Draw(220, 130).TextBoxes() {
			if strings.Contains(b.Class, "tick-text") {
				met++
				if strings.Contains(b.S, ".") {
					t.Errorf("%d games: a tick at %s", games, b.S)
				}
			}
		}
		if met < 4 {
			t.Errorf("%d games: %d ticks", games, met)
		}
	}
}
