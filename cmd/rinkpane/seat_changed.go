package main

import (
	"fmt"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// stirred is by how much a hole may move before a seat at it is told to be given
// anew: the shaft of a monopod or the next zip of a jacket; own choice.
const stirred = 6 * unit.Inch

// touch lists the seats that the changed plan touches, under the rules that it names.
func (f seatFlags) touch(a *app, s game.Season, answer *seat.Answer) error {
	changed := source{asksRules: true}
	if err := changed.open(a, f.changed); err != nil {
		return fmt.Errorf("--changed: %w", err)
	}
	standing := func(a arena.Arena) map[string]seat.Standing { return standings(a, changed.Rules.Check(a).Findings) }
	answer.Touch(standing(s.Arena), standing(changed.arena), changed.arena.Rink.Perimeter(), stirred)
	return nil
}

// standings says where holes stand and whether they may be worked.
func standings(a arena.Arena, findings []rules.Finding) map[string]seat.Standing {
	out := map[string]seat.Standing{}
	for _, h := range a.Holes {
		_, err := a.Opening(h.ID)
		out[h.ID] = seat.Standing{Along: h.Station, Height: h.Height, Off: err != nil}
	}
	for _, f := range findings {
		for _, id := range f.Holes {
			if s, known := out[id]; known && f.Status == rules.Fail {
				s.Refused = true
				out[id] = s
			}
		}
	}
	return out
}
