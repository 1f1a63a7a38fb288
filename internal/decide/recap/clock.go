package recap

import (
	"fmt"
	"math"
	"time"
)

// Clock is how far a body's clock is ahead of the rink's, and how well that is known.
type Clock struct {
	Ahead       time.Duration // at At
	Spread      time.Duration // a standard deviation there
	At          time.Time     // by the body's clock; without marks of no meaning
	Drift       float64       // what it gains, in seconds an hour
	DriftSpread float64       // a standard deviation, in seconds an hour
	Marks       int           // frames of the scoreboard that it rests on
}

// At a body's time its clock is so far ahead, known to a standard deviation.
func (c Clock) at(t time.Time) (ahead, spread time.Duration) {
	hours := t.Sub(c.At).Hours()
	return c.Ahead + seconds(c.Drift*hours), seconds(math.Hypot(c.Spread.Seconds(), c.DriftSpread*hours))
}

// How well a clock is known (own choice, no published source), and how it drifts: data
// sheets of the crystals in watches and cameras have some 20 ppm at 25 degrees Celsius, and
// 0.034 ppm less for each degree off it squared, which at 0 degrees makes 0.15 s/h in all.
const (
	unchecked   = time.Minute     // of a body whose scoreboard nobody showed
	readingTime = 2 * time.Second // a scoreboard shows seconds, a camera rounds
	usualDrift  = 1.0             // s/h, a standard deviation of bodies: six times that
	mostDrift   = 3 * usualDrift  // s/h
)

// sighting is what one mark says of a body's clock.
type sighting struct {
	file          string
	at            time.Time // by the body's clock
	ahead, spread float64   // s
}

// Clocks returns the clock of each body that marks tell: of one mark its offset, of several
// offset and drift. Marks that contradict one another, or would be a drift that no camera
// has, are an error.
func (e Evening) Clocks(frames []Frame, marks []ClockMark) (map[string]Clock, error) {
	seen := map[string][]sighting{}
	for _, m := range marks {
		f, err := pick(frames, m.File)
		if err != nil {
			return nil, err
		}
		at, spread, err := e.shown(f, m)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", m.File, err)
		}
		s := sighting{m.File, e.clock(f), e.clock(f).Sub(at).Seconds(), spread.Seconds()}
		for _, before := range seen[f.Body] {
			if err := s.agrees(before); err != nil {
				return nil, fmt.Errorf("the clock of %s: %w", f.Body, err)
			}
		}
		seen[f.Body] = append(seen[f.Body], s)
	}
	out := map[string]Clock{}
	for body, s := range seen {
		out[body] = clockOf(s)
	}
	return out, nil
}

// agrees says why two marks of one body cannot both be right.
func (s sighting) agrees(o sighting) error {
	apart := s.at.Sub(o.at).Abs()
	off, may := math.Abs(s.ahead-o.ahead), 3*math.Hypot(s.spread, o.spread)+mostDrift*apart.Hours()
	if off <= may {
		return nil
	}
	return fmt.Errorf("%s and %s, %v apart, put it %.0f s apart; reading errors and a drift of %g s an hour explain %.0f s; check both frames",
		o.file, s.file, apart.Round(time.Second), off, mostDrift, may)
}

// clockOf fits offset and drift to sightings by least squares, each weighted by one over
// its variance, with a drift of [usualDrift] about none beside them.
func clockOf(seen []sighting) Clock {
	first := seen[0].at
	weight, when, ahead := 0.0, 0.0, 0.0
	for _, s := range seen {
		w := 1 / (s.spread * s.spread)
		weight, when, ahead = weight+w, when+w*s.at.Sub(first).Hours(), ahead+w*s.ahead
	}
	when, ahead = when/weight, ahead/weight
	lever, moment := 1/(usualDrift*usualDrift), 0.0
	for _, s := range seen {
		w, h := 1/(s.spread*s.spread), s.at.Sub(first).Hours()-when
		lever, moment = lever+w*h*h, moment+w*h*(s.ahead-ahead)
	}
	return Clock{Ahead: seconds(ahead), Spread: seconds(1 / math.Sqrt(weight)), At: first.Add(seconds(when * time.Hour.Seconds())),
		Drift: moment / lever, DriftSpread: 1 / math.Sqrt(lever), Marks: len(seen)}
}

// wall is a camera's wall clock, its zone left out.
func wall(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), time.UTC)
}

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }
