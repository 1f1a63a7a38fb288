package chart

import (
	"fmt"

	"example.org/rinkpane/internal/decide/seat"
)

// The season's plot: points a line at most, and after how many games that of a long one
// begins, since the first few say nothing of a rule.
const (
	mostCourse = 160
	firstGames = 5
	longSeason = 4 * firstGames
	fewGames   = 12 // of which each has its tick
)

// Shares is the plot of the least and the most that anybody had of what they could
// have had, game by game, for the same season by several rules.
func Shares(seasons []seat.Season) Plot {
	p := Plot{Name: "season", Title: "Share of what each could have had", X: Axis{Name: "games"}, Y: Axis{Name: "share, %", Low: 0, High: 100}}
	for _, s := range seasons {
		if len(s.Course) <= fewGames {
			p.X.Step = 1 // nobody plays half a game
		}
		least, most := Series{Name: string(s.Rule) + ": worst off"}, Series{Name: string(s.Rule) + ": best off"}
		step, first := max(1, len(s.Course)/mostCourse), 0
		if len(s.Course) >= longSeason {
			first = firstGames - 1
		}
		for i, c := range s.Course {
			if last := i == len(s.Course)-1; !last && (i < first || i%step != 0) {
				continue
			}
			least.Points = append(least.Points, XY{float64(c.Games), 100 * c.Least})
			most.Points = append(most.Points, XY{float64(c.Games), 100 * c.Most})
		}
		p.Series = append(p.Series, least, most)
		x := s.Spread()
		p.Desc += fmt.Sprintf("By %s: from %.1f %% to %.1f %%. ", s.Rule, 100*x.Least, 100*x.Most)
	}
	return p
}
