package recap

import (
	"fmt"
	"math"
	"strconv"
	"time"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// Beyond any camera's (own choice).
const (
	longestFocal   = 10_000.0 // mm
	longestShutter = 86_400.0 // s
	smallestStop   = 1000.0   // f-number
	highestISO     = 1e9      // ISO 12232
)

// takenAt reads when a frame was taken; zoned says that the camera told its zone.
func takenAt(row form.Row) (at time.Time, zoned bool, err error) {
	text := row.Text("taken")
	if at, err = time.Parse(clockForm, text); err != nil {
		at, err = time.Parse(zonedForm, text)
		zoned = err == nil
	}
	if err != nil || at.Year() < firstYear || at.Year() > lastYear {
		return at, zoned, row.Bad("taken", "no time of a frame; write 2026-11-28T19:13:00, with its zone as 2026-11-28T19:13:00+01:00 where the camera tells it")
	}
	return at, zoned, nil
}

// Before and after these a clock was never set (own choice).
const firstYear, lastYear = 1990, 2199

// known reads a number above 0 and at most most.
func known[T any](to *unit.Maybe[T], most float64, as func(float64) T) func(string) error {
	return func(s string) error {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil || !(v > 0 && v <= most) || math.IsInf(1/v, 0) {
			return fmt.Errorf("%s: write a number above 0 and at most %g, or leave it blank", form.Quote(s), most)
		}
		*to = unit.Known(as(v))
		return nil
	}
}

// whole reads a whole number from least to most.
func whole(least, most int) func(string) (int, error) {
	return func(s string) (int, error) {
		n, err := strconv.Atoi(s)
		if err != nil || n < least || n > most {
			return 0, fmt.Errorf("%s: write a whole number from %d to %d", form.Quote(s), least, most)
		}
		return n, nil
	}
}
