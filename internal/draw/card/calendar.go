package card

import (
	"fmt"
	"strings"
	"time"

	ical "github.com/arran4/golang-ical"

	"example.org/rinkpane/internal/decide/game"
)

// stampLayout is a date with time by the wall clock (RFC 5545, 3.3.5, form 1).
const stampLayout = "20060102T150405"

// Calendar writes one person's cards as an iCalendar file (RFC 5545): an event a game,
// whose UID stays the same however often it is written, whose SEQUENCE is the game's.
// Times are the rink's wall clock, so that they read the same on every phone. stamped is
// when the file is made, for DTSTAMP. Cards that are not the person's are left out.
func Calendar(person game.Person, cards []Card, stamped time.Time) string {
	cal := ical.NewCalendar()
	cal.SetProductId("-//Rinkpane//seats//EN")
	cal.SetMethod(ical.MethodPublish)
	for _, c := range cards {
		if c.Person.ID == person.ID {
			cal.AddVEvent(c.event(stamped))
		}
	}
	return cal.Serialize(ical.WithNewLineWindows)
}

// event is a card as an event.
func (c Card) event(stamped time.Time) *ical.VEvent {
	e := ical.NewEvent(c.Person.ID + "/" + c.Game.ID)
	e.SetDtStampTime(stamped)
	e.SetSequence(c.Game.Sequence)
	from, to := c.Game.Start, c.Game.Start.Add(usualGame)
	if at, ok := c.Game.At(game.WarmUp); ok {
		from = at
	}
	if at, ok := c.Game.At(game.LockUp); ok {
		to = at
	}
	layout := stampLayout
	if c.Game.Universal {
		layout += "Z"
	}
	e.SetProperty(ical.ComponentPropertyDtStart, from.Format(layout))
	e.SetProperty(ical.ComponentPropertyDtEnd, to.Format(layout))
	var holes, lines []string
	for _, t := range c.Turns {
		if t.Hole == "" {
			holes = append(holes, "-")
			continue
		}
		holes = append(holes, t.Hole)
		lines = append(lines, fmt.Sprintf("Period %d: %s, %s attack here, %s", t.Period, t.Hole, t.Attacks, t.Lens.Name))
	}
	e.SetSummary(strings.Join(holes, " ") + "  " + c.Game.Teams())
	e.SetDescription(strings.Join(append(lines, c.Nexts()...), "\n"))
	e.SetLocation(c.Arena.Name)
	if c.Game.Off {
		e.SetStatus(ical.ObjectStatusCancelled)
	}
	return e
}

// usualGame is how long a game takes where the day names no lock-up: common practice, no
// published source.
const usualGame = 150 * time.Minute
