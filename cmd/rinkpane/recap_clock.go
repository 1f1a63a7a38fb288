package main

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/form"
)

// clockMarks reads FILE=PERIOD/MM:SS and FILE=HH:MM:SS.
func clockMarks(list []string) (out []recap.ClockMark, err error) {
	for _, s := range list {
		at := strings.LastIndex(s, "=")
		if at < 1 {
			return nil, clockFault(s)
		}
		m := recap.ClockMark{File: s[:at]}
		period, left, played := strings.Cut(s[at+1:], "/")
		switch {
		case played:
			m.Period, err = strconv.Atoi(period)
			if err != nil || m.Period < 1 {
				return nil, clockFault(s)
			}
			m.Left, err = clockTime(left, 2)
		default:
			m.Day, err = clockTime(period, 3)
		}
		if err != nil {
			return nil, clockFault(s)
		}
		out = append(out, m)
	}
	return out, nil
}

func clockFault(s string) error {
	return fmt.Errorf("--clock %s: write FILE=PERIOD/MM:SS as the scoreboard shows it, or FILE=HH:MM:SS of the day", form.Quote(s))
}

// clockTime reads a time of so many parts, each but the first below 60.
func clockTime(s string, parts int) (time.Duration, error) {
	split := strings.Split(s, ":")
	if len(split) != parts {
		return 0, strconv.ErrSyntax
	}
	var sum time.Duration
	for i, p := range split {
		n, err := strconv.Atoi(p)
		if err != nil || n < 0 || i > 0 && n >= 60 || n > 99 {
			return 0, strconv.ErrSyntax
		}
		sum = 60*sum + time.Duration(n)*time.Second
	}
	return sum, nil
}
