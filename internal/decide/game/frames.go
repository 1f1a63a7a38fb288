package game

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/play"
)

// Body is whose a camera is, and the hole that all its frames are taken through where it
// stays in one.
type Body struct{ Body, Who, Hole string } // serial number or model; person or ""; hole or ""

// Clocked is a frame of a game that shows the scoreboard.
type Clocked struct {
	Game, Frame string
	Shown
}

// Shown is what a scoreboard shows: the game clock, or the time of day.
type Shown struct {
	Period int           // of the game clock, from 1; 0: Day counts
	Left   time.Duration // in that period
	Day    time.Duration // since midnight
}

// String writes it as [ParseShown] reads it.
func (s Shown) String() string {
	if s.Period > 0 {
		return fmt.Sprintf("%d/%02d:%02d", s.Period, int(s.Left.Minutes()), int(s.Left.Seconds())%60)
	}
	return fmt.Sprintf("%02d:%02d:%02d", int(s.Day.Hours()), int(s.Day.Minutes())%60, int(s.Day.Seconds())%60)
}

// ParseShown reads "2/12:34", the second period with 12:34 left, or "19:34:10", a time of
// day.
func ParseShown(s string) (out Shown, err error) {
	period, left, played := strings.Cut(s, "/")
	if played {
		if out.Period, err = strconv.Atoi(period); err == nil && (out.Period < 1 || out.Period > play.MostPeriods) {
			err = strconv.ErrRange
		}
		if err == nil {
			out.Left, err = clockTime(left, 2)
		}
	} else {
		out.Day, err = clockTime(s, 3)
	}
	if err != nil || out.Day >= 24*time.Hour {
		return Shown{}, fmt.Errorf("%s is no clock; write PERIOD/MM:SS as the scoreboard shows it, as 2/12:34, or HH:MM:SS of the day", form.Quote(s))
	}
	return out, nil
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

// bodies reads whose cameras are whose.
func (rd *reader) bodies(n form.Node) {
	seen := map[string]bool{}
	for m := range entries(n, MaxPeople, bodyFields) {
		b := Body{Body: form.Parse(m.At("body"), form.Line)}
		if who := m.At("who"); who.Present() {
			b.Who = known(who, "person", rd.ids.people)
		}
		if hole := m.At("hole"); hole.Present() {
			b.Hole = known(hole, "hole", rd.ids.holes)
		}
		switch {
		case !m.OK():
		case b.Who == "" && b.Hole == "":
			m.At("who").Failf("is missing; say whose body %s is, or the hole that it stays in", form.Quote(b.Body))
		case seen[b.Body]:
			m.At("body").Failf("%s is there already; name each body once", form.Quote(b.Body))
		}
		seen[b.Body], rd.Bodies = true, append(rd.Bodies, b)
	}
}

// clocks reads the frames that show the scoreboard.
func (rd *reader) clocks(n form.Node) {
	for m := range entries(n, MaxFixed, clockFields) {
		rd.Clocks = append(rd.Clocks, Clocked{Game: known(m.At("game"), "game", rd.ids.games),
			Frame: form.Parse(m.At("frame"), form.Line), Shown: form.Parse(m.At("shows"), ParseShown)})
	}
}
