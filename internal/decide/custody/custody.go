// Package custody is the life of a hole after it was cut: who allowed it, was it
// cut as drawn, is its cover in right now, what broke?
//
// Everything is told by events, which are only ever added. A device makes an event
// and its [ID]; it may send it late, twice and out of order. A [History] is the one
// true order of all events of an arena, whatever the order in which they came:
//
//	phone ---\                        /--> Fold: covers, seats, alarms, open minutes
//	phone ----> Keeper --> History ---+--> RatesOf: incidents per thousand open hours
//	desk  ---/  (Append,   (order,     \--> ApprovalOf, InspectionsOf
//	             Since)   corrections)
//
// How a page uses it:
//
//	batch.Stamp(received)         // who sends, how far its clock is ahead, what may not be sent
//	receipts := keeper.Append(…)  // durable once it returns; the same id again is no second event
//	events := keeper.Since(arena, after, most)
//	board := custody.Fold(custody.HistoryOf(events), window, now)
//	keeper.Await(arena, after)   // returns once there is more
//
// An event's time is that of its device's clock less how far that clock was ahead
// when the event was sent ([Event.At]); equal times keep the order of ids, in which
// a device counts. A correction names the event that it replaces and stands in its
// place. Limits: a clock that was set between an event and its sending is not
// noticed; an event is never later than it was kept.
package custody

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"time"
	"unicode/utf8"
)

// ID names an event: 16 digits for the device that made it and 16 for the device's
// own count, hexadecimal with small letters. A device draws the first half by lot,
// once, and keeps it with its count.
type ID string

// IDOf makes the id of a device's event number n.
func IDOf(device string, n uint64) ID { return ID(fmt.Sprintf("%s%016x", device, n)) }

// Device returns the half of the id that names the device.
func (id ID) Device() string { return string(id[:min(len(id), deviceDigits)]) }

const deviceDigits = 16

var (
	idForm     = regexp.MustCompile(`^[0-9a-f]{32}$`)
	deviceForm = regexp.MustCompile(`^[0-9a-f]{16}$`)
)

// Event is one thing that happened, as a device told it.
type Event struct {
	ID    ID
	Arena string    // id of the arena's document
	Told  time.Time // when it happened, by the device's clock
	// Ahead is how far that clock was ahead of the desk's when the event was sent.
	Ahead    time.Duration
	Who      string // person, or "guest" with the name of the day link
	Corrects ID     // the event that this one replaces, "" for none
	Fact     Fact

	// What the keeper adds.
	Seq  int64     // place in the arena's stream, from 1 without gaps
	Kept time.Time // when it was kept, by the desk's clock
}

// At returns when the event happened by the desk's clock: Told less Ahead, and not
// after it was kept.
func (e Event) At() time.Time {
	at := e.Told.Add(-e.Ahead)
	if !e.Kept.IsZero() && at.After(e.Kept) {
		return e.Kept
	}
	return at
}

// Same reports whether two events say the same under one id: what is sent again is
// no other event, though its device's clock may have been measured anew.
func (e Event) Same(f Event) bool {
	return e.ID == f.ID && e.Arena == f.Arena && e.Told.Equal(f.Told) && e.Corrects == f.Corrects && encoded(e.Fact) == encoded(f.Fact)
}

// maxName is the most characters of a cover's, hole's or person's name.
const maxName = 80

// MaxWords is the most characters of a remark.
const MaxWords = 2000

// Check refuses an event that cannot be kept or understood; the error is one line.
func (e Event) Check() error {
	switch {
	case !idForm.MatchString(string(e.ID)):
		return fmt.Errorf("event id %.40q: 32 small hexadecimal digits are due", e.ID)
	case e.Corrects != "" && !idForm.MatchString(string(e.Corrects)):
		return fmt.Errorf("event %s corrects %.40q, which is no event id", e.ID, e.Corrects)
	case e.Corrects == e.ID:
		return fmt.Errorf("event %s corrects itself", e.ID)
	case e.Told.Year() < 2000 || e.Told.Year() > 2200:
		return fmt.Errorf("event %s has the time %s: set the device's clock", e.ID, e.Told.Format(time.DateOnly))
	case e.Fact == nil:
		return fmt.Errorf("event %s says nothing that happened", e.ID)
	}
	if _, alone := e.Fact.(Withdrawn); alone && e.Corrects == "" {
		return fmt.Errorf("event %s withdraws nothing: it must name the event that it corrects", e.ID)
	}
	if err := errors.Join(name("arena", e.Arena), name("who", e.Who), e.Fact.check()); err != nil {
		return fmt.Errorf("event %s: %s", e.ID, strings.ReplaceAll(err.Error(), "\n", "; "))
	}
	return nil
}

// name refuses a name that is empty or that a list could not show.
func name(what, s string) error {
	if s == "" {
		return errors.New(what + " is missing")
	}
	return text(what, s, maxName)
}

// text refuses words that are too long or not plain text; none at all is fine.
func text(what, s string, most int) error {
	switch n := utf8.RuneCountInString(s); {
	case n > most:
		return fmt.Errorf("%s has %d characters; at most %d are kept", what, n, most)
	case !utf8.ValidString(s) || strings.ContainsFunc(s, func(r rune) bool { return r < ' ' && r != '\n' }):
		return errors.New(what + " is not plain text")
	}
	return nil
}
