package main

import (
	"fmt"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/survey/arena"
)

// touch lists the seats that the changed plan touches, under the rules that it names.
func (f seatFlags) touch(a *app, s game.Season, answer *seat.Answer) error {
	changed := source{asksRules: true}
	if err := changed.open(a, f.changed); err != nil {
		return fmt.Errorf("--changed: %w", err)
	}
	standing := func(a arena.Arena) map[string]seat.Standing {
		return game.Standings(a, changed.Rules.Check(a).Findings)
	}
	answer.Touch(standing(s.Arena), standing(changed.arena), changed.arena.Rink.Perimeter(), seat.Stirred)
	return nil
}
