package recap

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
)

// Evening is a game as far as frames are matched to it.
type Evening struct {
	Game   string // its id, "" without one
	Title  string // "home - away"
	Place  string
	Stages []Stage // in the order of time
	Seats  []Seat
	Others []Stage // the season's other games, by their ids
	// Universal says that the stages' times are in universal time: frames that tell their
	// zone are then taken by it, others by their clock as it stands.
	Universal bool
}

// Stage is a part of the game's day; Period is 0 beside play.
type Stage struct {
	Name     string
	Period   int
	From, To time.Time // the rink's wall clock
}

// Seat is who works a hole in which periods; none are all.
type Seat struct {
	Who     string // id
	Name    string // for captions, "" for none
	Hole    string
	Periods []int
}

// What the day's plan leaves open (international book: 15 min between periods; that a
// period takes some 38 min by the wall clock is common practice, no published source).
const (
	intermission = 15 * time.Minute
	usualPeriod  = 38 * time.Minute
	afterGame    = time.Hour
	wholeGame    = 3 * time.Hour
)

// EveningOf returns the evening of a season's game, with the seats that it gives by hand.
// Stages begin when the document says; a period ends before the intermission, which the
// usual length of a period tells where no later stage does. A game without times of its
// periods has them one after the other from its start.
func EveningOf(s game.Season, g game.Game) Evening {
	e := Evening{Game: g.ID, Title: strings.Trim(g.Home+" - "+g.Away, " -"), Place: s.Arena.Name, Universal: g.Universal}
	next := wall(g.Start)
	for p := 1; p <= cmp.Or(g.Periods, game.Periods); p++ {
		if at, told := g.At(game.PeriodStage(p)); told {
			next = wall(at)
		}
		end := next.Add(usualPeriod)
		if at, told := g.At(game.PeriodStage(p + 1)); told && p < g.Periods {
			end = endBefore(next, wall(at), p)
		}
		e.Stages = append(e.Stages, Stage{game.PeriodStage(p), p, next, end})
		next = end.Add(intermission)
	}
	e.between()
	for _, before := range []string{game.WarmUp, game.Practice} {
		if at, told := g.At(before); told && wall(at).Before(e.Stages[0].From) {
			e.Stages = slices.Insert(e.Stages, 0, Stage{before, 0, wall(at), e.Stages[0].From})
		}
	}
	for _, o := range s.Games {
		if at := wall(o.Start); o.ID != g.ID && o.Universal == g.Universal {
			e.Others = append(e.Others, Stage{o.ID, 0, at.Add(-afterGame), at.Add(wholeGame)})
		}
	}
	for _, f := range s.Fixed {
		if f.Game != g.ID {
			continue
		}
		seat := Seat{Who: f.Who, Hole: f.Hole, Periods: f.Periods}
		if p, ok := s.Person(f.Who); ok {
			seat.Name = p.Name
		}
		e.Seats = append(e.Seats, seat)
	}
	return e
}

// Unseated reports whether a game that is played has somebody who asks and to whom the
// document gives no seat by hand.
func (e Evening) Unseated(s game.Season, g game.Game) bool {
	return !g.Off && slices.ContainsFunc(s.Asks(g), func(a game.Ask) bool {
		return !slices.ContainsFunc(e.Seats, func(x Seat) bool { return x.Who == a.ID })
	})
}

// endBefore returns when a period ended that began at a time, the next of which began at
// another: an intermission before it, unless that leaves less than the game clock takes or
// an overtime follows, before which the break may be short.
func endBefore(begin, next time.Time, period int) time.Time {
	if end := next.Add(-intermission); period < game.Periods && end.Sub(begin) >= periodClock {
		return end
	}
	if end := begin.Add(usualPeriod); end.Before(next) {
		return end
	}
	return next
}

// Seated returns the evening with who works where by a seating of its game, instead of what
// the document gives by hand: a seating has those seats too.
func (e Evening) Seated(s game.Season, by seat.Seating) Evening {
	e.Seats = nil
	for _, one := range by.Seats {
		i := slices.IndexFunc(e.Seats, func(x Seat) bool { return x.Who == one.Who && x.Hole == one.Hole })
		if i < 0 {
			i, e.Seats = len(e.Seats), append(e.Seats, Seat{Who: one.Who, Hole: one.Hole})
			if p, ok := s.Person(one.Who); ok {
				e.Seats[i].Name = p.Name
			}
		}
		e.Seats[i].Periods = append(e.Seats[i].Periods, one.Period)
	}
	return e
}

// Open returns how long each hole was open from the evening's first stage to the end of
// its last, by what is known of its covers; where is the rink's zone.
func (e Evening) Open(h custody.History, where *time.Location) map[string]time.Duration {
	if len(e.Stages) == 0 {
		return nil
	}
	if e.Universal {
		where = time.UTC
	}
	on := func(t time.Time) time.Time {
		return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), where)
	}
	window := custody.Window{From: on(e.Stages[0].From), To: on(e.Stages[len(e.Stages)-1].To)}
	out := map[string]time.Duration{}
	for _, hole := range custody.Fold(h, window, window.To).Holes {
		out[hole.ID] = hole.OpenInAll()
	}
	return out
}

// between puts the intermissions between the periods, and what comes after the last.
func (e *Evening) between() {
	var out []Stage
	for i, s := range e.Stages {
		out = append(out, s)
		rest := Stage{Name: fmt.Sprintf("intermission-%d", i+1), From: s.To, To: s.To.Add(afterGame)}
		if i+1 < len(e.Stages) {
			rest.To = e.Stages[i+1].From
		} else {
			rest.Name = "after"
		}
		if rest.To.After(rest.From) {
			out = append(out, rest)
		}
	}
	e.Stages = out
}

// works reports whether a seat is worked in a period.
func (s Seat) works(period int) bool {
	return len(s.Periods) == 0 || slices.Contains(s.Periods, period)
}

// clock is a frame's time as the stages' times are told.
func (e Evening) clock(f Frame) time.Time {
	if e.Universal && f.Zoned {
		return wall(f.Taken.UTC())
	}
	return wall(f.Taken)
}
