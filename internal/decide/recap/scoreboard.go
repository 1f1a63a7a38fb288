package recap

import (
	"errors"
	"fmt"
	"math"
	"time"

	"example.org/rinkpane/internal/decide/game"
)

// ClockMark is what the scoreboard shows in a frame: the time of day, or the game clock.
type ClockMark struct {
	File string // the frame's name, or its path
	game.Shown
}

// shown returns when a scoreboard showed what a mark says, by the clock that the stages are
// told by, and how well that is known. A time of day is that of the day that puts it
// nearest to the game's middle: games end after midnight.
func (e Evening) shown(f Frame, m ClockMark) (time.Time, time.Duration, error) {
	if m.Period > 0 {
		return e.played(m.Period, m.Left)
	}
	near, day := e.clock(f), m.Day
	if n := len(e.Stages); n > 0 {
		near = e.Stages[0].From.Add(e.Stages[n-1].To.Sub(e.Stages[0].From) / 2)
	}
	if e.Universal {
		if !f.Zoned {
			return time.Time{}, 0, errors.New("the game's times are in universal time, and the frame does not tell its zone; name one that shows the game clock, as FILE=1/12:34")
		}
		_, east := f.Taken.Zone()
		day -= time.Duration(east) * time.Second
	}
	at := time.Date(near.Year(), near.Month(), near.Day(), 0, 0, 0, 0, time.UTC).Add(day)
	const whole = 24 * time.Hour
	return at.Add(near.Sub(at).Round(whole)), readingTime, nil
}

// periodClock is a period's length by the game clock.
const periodClock = 20 * time.Minute

// played returns when the game clock had so much left in a period: between no stop so far
// and none to come, in proportion; the spread is that of an even chance between the two.
func (e Evening) played(period int, left time.Duration) (time.Time, time.Duration, error) {
	if left < 0 || left > periodClock {
		return time.Time{}, 0, fmt.Errorf("%v left in a period of %v; write minutes and seconds, as 12:34", left, periodClock)
	}
	for _, s := range e.Stages {
		if s.Period != period {
			continue
		}
		if period > game.Periods {
			return time.Time{}, 0, fmt.Errorf("overtimes take 5, 10 or 20 minutes, by competition; name a frame of periods 1 to %d, or one that shows the time of day, as FILE=22:41:05", game.Periods)
		}
		run := periodClock - left
		stops := max(s.To.Sub(s.From)-periodClock, 0)
		done := run.Seconds() / periodClock.Seconds()
		at := s.From.Add(run + seconds(stops.Seconds()*done))
		// At either end of the period all or none of the stops have been.
		slack := stops.Seconds() * math.Sqrt(done*(1-done)) / math.Sqrt(3)
		return at, seconds(math.Hypot(slack, readingTime.Seconds())), nil
	}
	return time.Time{}, 0, fmt.Errorf("the game has no period %d with a time", period)
}

// pick returns the frame that a mark names, by its path or its name.
func pick(frames []Frame, name string) (Frame, error) {
	var found []Frame
	for _, f := range frames {
		if f.File == name {
			return f, nil
		}
		if base(f.File) == name {
			found = append(found, f)
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return Frame{}, fmt.Errorf("%s: no such frame was read; name one of the frames", name)
	}
	return Frame{}, fmt.Errorf("%s: %d frames have this name; give the path of one", name, len(found))
}
