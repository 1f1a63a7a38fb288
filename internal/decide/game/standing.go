package game

import (
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/survey/arena"
)

// Standings says where an arena's holes stand and, by the findings on them, whether they
// may be worked.
func Standings(a arena.Arena, findings []rules.Finding) map[string]seat.Standing {
	out := map[string]seat.Standing{}
	for _, h := range a.Holes {
		_, err := a.Opening(h.ID)
		refused := rules.Verdict(rules.About(h.ID, findings)) == rules.Fail
		out[h.ID] = seat.Standing{Along: h.Station, Height: h.Height, Off: err != nil, Refused: refused}
	}
	return out
}
