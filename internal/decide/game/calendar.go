package game

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/teambition/rrule-go"

	"example.org/rinkpane/internal/measure/form"
)

// readCalendar reads the games among a calendar's events (RFC 5545): the teams of SUMMARY
// ("Herons v Otters"), the start, and where it stands there the end that the home team
// plays toward first, in X-HOME-ATTACKS. A repeated event is a series: each instance is a
// game whose id is the UID with the date that the rule gave it, and keeps it when the
// instance is moved (RECURRENCE-ID), alone or with all that follow (RANGE=THISANDFUTURE,
// 3.2.13: by the same difference). Of several events of one id that of the highest SEQUENCE
// counts.
func readCalendar(name string, in io.Reader) (Schedule, error) {
	events, err := readEvents(name, in)
	if err != nil {
		return Schedule{}, err
	}
	c := calendarGames{place: map[string]int{}, given: map[string]time.Time{}}
	slices.SortStableFunc(events, func(a, b event) int {
		return cmp.Or(cmp.Compare(a.rank(), b.rank()), strings.Compare(a.text("RECURRENCE-ID"), b.text("RECURRENCE-ID")))
	})
	for _, e := range events {
		g, is, err := e.game()
		switch {
		case err != nil:
		case !is:
			c.Passed = append(c.Passed, fmt.Sprintf("%s:%d: %s names no two teams", name, e.line, form.Quote(e.text("SUMMARY"))))
		case e.rank() == ofMany:
			err = c.onward(e, g)
		default:
			err = c.instances(e, g)
		}
		if err != nil {
			return Schedule{}, err
		}
		if len(c.Games) > MaxGames {
			return Schedule{}, e.wrong("DTSTART", "the calendar holds more games than a season may; split it")
		}
	}
	return c.Schedule, nil
}

// calendarGames gathers a calendar's games.
type calendarGames struct {
	Schedule
	place map[string]int       // of a game, by id
	given map[string]time.Time // when the rule has an instance, by id
}

func (c *calendarGames) put(g Game) {
	k, there := c.place[g.ID]
	switch {
	case !there:
		c.place[g.ID], c.Games = len(c.Games), append(c.Games, g)
	case g.Sequence >= c.Games[k].Sequence:
		c.Games[k] = g
	}
}

// instances puts the games of an event: one, or those of a series.
func (c *calendarGames) instances(e event, g Game) error {
	starts, err := e.starts(g)
	for _, at := range starts {
		instance := g
		if len(starts) > 1 || e.repeats() {
			instance.ID, instance.Series, instance.Start = instanceID(g.ID, at), g.ID, at
			c.given[instance.ID] = at
		}
		c.put(instance)
	}
	return err
}

// onward changes an instance of a series and all that follow it, each moved by as much as
// that one.
func (c *calendarGames) onward(e event, g Game) error {
	from, _, _ := stamp(e.text("RECURRENCE-ID")) // read before
	met := false
	for _, was := range slices.Clone(c.Games) {
		at, instance := c.given[was.ID]
		if !instance || was.Series != g.Series || at.Before(from) {
			continue
		}
		met = true
		moved := g
		moved.ID, moved.Start = was.ID, at.Add(g.Start.Sub(from))
		c.put(moved)
	}
	if !met {
		return e.wrong("RECURRENCE-ID", form.Quote(e.text("RECURRENCE-ID"))+" has no game of the series at or after it; write the date that the series gives")
	}
	return nil
}

// instanceID names an instance of a series by the date that the rule gave it.
func instanceID(uid string, at time.Time) string { return uid + "/" + at.Format(stampLayout) }

// Layouts of dates with times (RFC 5545, 3.3.5).
const (
	stampLayout = "20060102T150405"
	stampUTC    = stampLayout + "Z"
)

// stamp reads a date with time: the wall clock's, or universal time.
func stamp(s string) (at time.Time, universal bool, err error) {
	if at, err = time.Parse(stampUTC, s); err == nil {
		return at, true, nil
	}
	if at, err = time.Parse(stampLayout, s); err != nil {
		err = fmt.Errorf("%s is no date with time; write it as 20261128T190000", form.Quote(s))
	}
	return at, false, err
}

// game reads what an event says of a game; is tells whether it is one.
func (e event) game() (g Game, is bool, err error) {
	for _, must := range []string{"UID", "DTSTART"} {
		if e.text(must) == "" {
			return g, false, e.wrong(must, "is missing; every event has one")
		}
	}
	if g.Home, g.Away, is = teams(e.text("SUMMARY")); !is {
		return g, false, nil
	}
	g.Periods, g.Off = Periods, strings.EqualFold(e.text("STATUS"), "CANCELLED")
	g.Series, g.Marks = e.categories()
	if g.ID, err = form.Line(e.text("UID")); err != nil {
		return g, false, e.wrong("UID", err.Error())
	}
	if g.Start, g.Universal, err = stamp(e.text("DTSTART")); err != nil {
		return g, false, e.wrong("DTSTART", err.Error())
	}
	if s := e.text("SEQUENCE"); s != "" {
		if g.Sequence, err = strconv.Atoi(s); err != nil || g.Sequence < 0 {
			return g, false, e.wrong("SEQUENCE", form.Quote(s)+" is no count; write a whole number, 0 or more")
		}
	}
	if s := e.text("X-HOME-ATTACKS"); s != "" {
		if g.Ends, err = parseEnds(s); err != nil {
			return g, false, e.wrong("X-HOME-ATTACKS", err.Error())
		}
	}
	if s := e.text("RECURRENCE-ID"); s != "" {
		was, _, err := stamp(s)
		if err != nil {
			return g, false, e.wrong("RECURRENCE-ID", err.Error())
		}
		if r := e.param("RECURRENCE-ID", "RANGE"); r != "" && r != "THISANDFUTURE" {
			return g, false, e.wrong("RECURRENCE-ID", "RANGE="+form.Quote(r)+"; write THISANDFUTURE, or each one")
		}
		g.ID, g.Series = instanceID(g.ID, was), g.ID
	}
	return g, true, nil
}

// categories reads the series, which is the first of an event's categories, and marks, which
// are the others.
func (e event) categories() (series string, marks []string) {
	for i, name := range strings.Split(e.text("CATEGORIES"), ",") {
		switch name = strings.TrimSpace(name); {
		case i == 0:
			series = name
		case name != "" && len(marks) < MaxMarks:
			marks = append(marks, name)
		}
	}
	return series, marks
}

// teams reads two teams out of an event's title.
func teams(summary string) (home, away string, ok bool) {
	for _, between := range []string{" v ", " vs ", " vs. ", " – ", " - ", " @ "} {
		if a, b, found := strings.Cut(summary, between); found && strings.TrimSpace(a) != "" && strings.TrimSpace(b) != "" {
			if a, b = strings.TrimSpace(a), strings.TrimSpace(b); between == " @ " {
				a, b = b, a // the guests are named first
			}
			_, lineA := form.Line(a)
			_, lineB := form.Line(b)
			return a, b, lineA == nil && lineB == nil
		}
	}
	return "", "", false
}

// repeats reports whether an event stands for a series.
func (e event) repeats() bool {
	return e.text("RECURRENCE-ID") == "" && (e.text("RRULE") != "" || e.text("RDATE") != "")
}

// The ranks of events: what stands for a series comes before the changes of many of its
// instances, and these before the changes of one.
const (
	ofSeries = iota
	ofMany
	ofOne
)

func (e event) rank() int {
	switch {
	case e.text("RECURRENCE-ID") == "":
		return ofSeries
	case e.param("RECURRENCE-ID", "RANGE") != "":
		return ofMany
	}
	return ofOne
}

// starts lists when the event's instances start: by its rule and dates, without those
// taken out.
func (e event) starts(g Game) ([]time.Time, error) {
	if !e.repeats() {
		return []time.Time{g.Start}, nil
	}
	var set rrule.Set
	set.DTStart(g.Start)
	if text := e.text("RRULE"); text != "" {
		rule, err := repeat(text, g.Start)
		if err != nil {
			return nil, e.wrong("RRULE", fmt.Sprintf("%s: %v", form.Quote(text), err))
		}
		set.RRule(rule)
	} else {
		set.RDate(g.Start)
	}
	if err := cmp.Or(e.dates("RDATE", set.RDate), e.dates("EXDATE", set.ExDate)); err != nil {
		return nil, err
	}
	var out []time.Time
	next := set.Iterator()
	for at, ok := next(); ok; at, ok = next() {
		if out = append(out, at); len(out) > MaxGames {
			return nil, e.wrong("RRULE", "repeats more often than a season has games; write COUNT or UNTIL")
		}
	}
	return out, nil
}

// dates reads the dates of a property that may stand several times.
func (e event) dates(name string, put func(time.Time)) error {
	for _, line := range e.lines[name] {
		for _, s := range strings.Split(line.value, ",") {
			at, _, err := stamp(s)
			if err != nil {
				return e.wrong(name, err.Error())
			}
			put(at)
		}
	}
	return nil
}

// repeat reads a rule of repetition that ends.
func repeat(text string, start time.Time) (*rrule.RRule, error) {
	opt, err := rrule.StrToROption(text)
	if err != nil {
		return nil, err
	}
	switch {
	case opt.Freq > rrule.DAILY:
		return nil, errors.New("games repeat by years, months, weeks or days")
	case opt.Count <= 0 && opt.Until.IsZero():
		return nil, errors.New("repeats without end; write COUNT or UNTIL")
	case opt.Until.Year() > start.Year()+mostYears || opt.Count > MaxGames || opt.Interval > mostInterval:
		return nil, errors.New("repeats too long; write a COUNT or an UNTIL within one season")
	}
	opt.Dtstart = start
	return rrule.NewRRule(*opt)
}

// A rule may reach this many years on and pass over so many periods of its own.
const mostYears, mostInterval = 10, 1000
