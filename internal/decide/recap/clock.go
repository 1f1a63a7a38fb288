package recap

import (
	"fmt"
	"math"
	"time"

	"example.org/rinkpane/internal/decide/game"
)

// Clock is how far a body's clock is ahead of the rink's, and how well that is known.
type Clock struct {
	Ahead  time.Duration
	Spread time.Duration // a standard deviation
	Marks  int           // frames of the scoreboard that it rests on
}

// ClockMark is what the scoreboard shows in a frame: the time of day, or the game clock.
type ClockMark struct {
	File string // the frame's name, or its path
	game.Shown
}

// How well a clock is known (own choice, no published source).
const (
	unchecked   = time.Minute     // of a body whose scoreboard nobody showed
	readingTime = 2 * time.Second // a scoreboard shows seconds, a camera rounds
)

// Clocks returns the clock of each body that marks tell. Of several marks of one body the
// better ones count more; marks that contradict one another are an error.
func (e Evening) Clocks(frames []Frame, marks []ClockMark) (map[string]Clock, error) {
	type sum struct {
		weight, ahead float64
		said          []float64
		marks         int
	}
	sums := map[string]*sum{}
	for _, m := range marks {
		f, err := pick(frames, m.File)
		if err != nil {
			return nil, err
		}
		at, spread, err := e.shown(f, m)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", m.File, err)
		}
		s := sums[f.Body]
		if s == nil {
			s = &sum{}
			sums[f.Body] = s
		}
		ahead, w := e.clock(f).Sub(at).Seconds(), 1/(spread.Seconds()*spread.Seconds())
		for _, before := range s.said {
			if d := math.Abs(ahead - before); d > max(3*spread.Seconds(), 600) {
				return nil, fmt.Errorf("%s: puts the clock of %s %.0f s from where an earlier frame puts it; check both", m.File, f.Body, d)
			}
		}
		s.weight, s.ahead, s.said, s.marks = s.weight+w, s.ahead+w*ahead, append(s.said, ahead), s.marks+1
	}
	out := map[string]Clock{}
	for body, s := range sums {
		out[body] = Clock{seconds(s.ahead / s.weight), seconds(1 / math.Sqrt(s.weight)), s.marks}
	}
	return out, nil
}

// shown returns when a scoreboard showed what a mark says, by the rink's wall clock, and
// how well that is known.
func (e Evening) shown(f Frame, m ClockMark) (time.Time, time.Duration, error) {
	if m.Period > 0 {
		return e.played(m.Period, m.Left)
	}
	day := e.clock(f)
	if len(e.Stages) > 0 {
		day = e.Stages[0].From
	}
	midnight := time.Date(day.Year(), day.Month(), day.Day(), 0, 0, 0, 0, time.UTC)
	return midnight.Add(m.Day), readingTime, nil
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

// wall is a camera's wall clock, its zone left out.
func wall(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), time.UTC)
}

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }
