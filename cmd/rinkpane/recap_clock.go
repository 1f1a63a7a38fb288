package main

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/form"
)

// clockMarks reads FILE=PERIOD/MM:SS and FILE=HH:MM:SS.
func clockMarks(list []string) (out []recap.ClockMark, err error) {
	for _, s := range list {
		at := max(strings.LastIndex(s, "="), 0)
		m := recap.ClockMark{File: s[:at]}
		if m.Shown, err = game.ParseShown(strings.TrimPrefix(s[at:], "=")); err != nil || at == 0 {
			return nil, fmt.Errorf("--clock %s: write FILE=PERIOD/MM:SS as the scoreboard shows it, or FILE=HH:MM:SS of the day", form.Quote(s))
		}
		out = append(out, m)
	}
	return out, nil
}
