package game

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/play"
)

// Layouts of dates and times in documents.
const (
	dayLayout  = "2006-01-02"
	timeLayout = "15:04"
)

func parseDay(s string) (time.Time, error) {
	day, err := time.Parse(dayLayout, s)
	if err != nil {
		return day, fmt.Errorf("%s is no date; write year, month and day, as 2026-11-28", form.Quote(s))
	}
	return day, nil
}

// parseTime reads a time of day as what has passed since midnight.
func parseTime(s string) (time.Duration, error) {
	at, err := time.Parse(timeLayout, s)
	if err != nil {
		return 0, fmt.Errorf("%s is no time of day; write hours and minutes, as 19:30", form.Quote(s))
	}
	return time.Duration(at.Hour())*time.Hour + time.Duration(at.Minute())*time.Minute, nil
}

// parseWhen reads a day, with a time of day or without.
func parseWhen(s string) (time.Time, error) {
	date, clock, timed := strings.Cut(s, " ")
	day, err := parseDay(date)
	if err != nil || !timed {
		return day, err
	}
	at, err := parseTime(strings.TrimSpace(clock))
	return day.Add(at), err
}

// parseSpan reads days or hours: "2 d", "48 h".
func parseSpan(s string) (time.Duration, error) {
	number, of := strings.TrimRight(s, " hd"), strings.TrimSpace(s)
	const mostHours = 366 * 24
	n, err := strconv.Atoi(strings.TrimSpace(number))
	hours := n
	switch {
	case strings.HasSuffix(of, "d"):
		hours = 24 * n
	case !strings.HasSuffix(of, "h"):
		hours = -1
	}
	if err != nil || n > mostHours || hours <= 0 || hours > mostHours {
		return 0, fmt.Errorf("%s is no span; write days or hours before the game, as 2 d or 36 h", form.Quote(s))
	}
	return time.Duration(hours) * time.Hour, nil
}

// parseEnds reads the ends that the home team plays toward: of the first period, or of
// every period with blanks or slashes between.
func parseEnds(s string) (play.Ends, error) {
	words := strings.Fields(strings.ReplaceAll(s, "/", " "))
	var e play.Ends
	if len(words) == 0 || len(words) > len(e) {
		return e, fmt.Errorf("%s are no ends; write A or B, or one of them for each period, as B A B", form.Quote(s))
	}
	for k, w := range words {
		switch w {
		case "A":
			e[k] = -1
		case "B":
			e[k] = +1
		default:
			return play.Ends{}, fmt.Errorf("%s is no end; write A or B, or one of them for each period, as B A B", form.Quote(w))
		}
	}
	return e, nil
}

// parsePeriods reads how many periods a game has.
func parsePeriods(s string) (int, error) {
	n, err := strconv.Atoi(s)
	if err != nil || n < 1 || n > play.MostPeriods {
		return 0, fmt.Errorf("%s; write a whole number from 1 to %d", form.Quote(s), play.MostPeriods)
	}
	return n, nil
}
