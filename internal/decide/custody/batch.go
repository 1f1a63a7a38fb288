package custody

import (
	"context"
	"errors"
	"fmt"
	"time"
)

// MaxBatch is the most events that one batch may hold.
const MaxBatch = 500

// Batch is what a device sends at once.
type Batch struct {
	Arena  string
	Device string    // the first half of the ids of its events
	Who    string    // as the door found out
	Now    time.Time // the device's clock when it sent the batch
	Guest  *Link     // the day link that it came by; nil for who signed in
	Events []Event   // with ID, Told, Corrects and Fact
}

// Stamp prepares a batch for a keeper: it writes in who sent it, and how far the
// device's clock was ahead, which is right to the time that the batch was on its way.
// What cannot be kept comes back as a receipt with the reason; the rest goes on.
func (b Batch) Stamp(received time.Time) (ready []Event, refused []Receipt, err error) {
	switch {
	case !deviceForm.MatchString(b.Device):
		return nil, nil, fmt.Errorf("device %.40q: 16 small hexadecimal digits are due", b.Device)
	case len(b.Events) > MaxBatch:
		return nil, nil, fmt.Errorf("%d events at once; send at most %d", len(b.Events), MaxBatch)
	case b.Now.IsZero():
		return nil, nil, errors.New("the batch does not tell the device's clock")
	}
	for _, e := range b.Events {
		e.Arena, e.Who, e.Ahead = b.Arena, b.Who, b.Now.Sub(received).Truncate(time.Microsecond)
		e.Told, e.Seq, e.Kept = e.Told.UTC().Truncate(time.Microsecond), 0, time.Time{}
		why := e.Check()
		if why == nil {
			why = b.may(e, received)
		}
		if why != nil {
			refused = append(refused, Receipt{ID: e.ID, Refused: why})
			continue
		}
		ready = append(ready, e)
	}
	return ready, refused, nil
}

// may refuses what the sender must not send.
func (b Batch) may(e Event, received time.Time) error {
	if e.ID.Device() != b.Device {
		return fmt.Errorf("event %s was made by another device than %s, which sends it", e.ID, b.Device)
	}
	if b.Guest == nil {
		return nil
	}
	_, moved := e.Fact.(Moved)
	_, withdrawn := e.Fact.(Withdrawn)
	switch at := e.At(); {
	case !moved && !withdrawn:
		return fmt.Errorf("event %s: a day link is for covers only; sign in for anything else", e.ID)
	case e.Corrects != "" && e.Corrects.Device() != b.Device:
		return fmt.Errorf("event %s corrects another's event; sign in to do that", e.ID)
	case at.Before(b.Guest.From) || !at.Before(b.Guest.Until):
		return fmt.Errorf("event %s is of another day than the day link, which is for %s", e.ID, b.Guest.Day)
	}
	return nil
}

// Receipt is what became of an event.
type Receipt struct {
	ID      ID
	Seq     int64 // its place in the stream
	Again   bool  // it was kept before
	Refused error // why it was not kept, in one line; nil when it was
}

// ErrForged says that an id is taken by an event that says something else.
var ErrForged = errors.New("this id is taken by another event: nothing was kept of this one")

// Keeper keeps events and photos. Any number of goroutines and programs may use one
// at the same time.
type Keeper interface {
	// Append keeps events of any arenas, each unless one of its id is kept, and returns
	// a receipt for each, in their order. Once it has returned without error they
	// survive the end of the program and of the machine. On an error nobody knows
	// which are kept: send them again.
	Append(ctx context.Context, now time.Time, events []Event) ([]Receipt, error)
	// Since returns the events of an arena with a Seq above after, by Seq, at most so many.
	Since(ctx context.Context, arena string, after int64, most int) ([]Event, error)
	// Await returns once the arena has an event with a Seq above after, whichever
	// program kept it, or the context ends.
	Await(ctx context.Context, arena string, after int64) error
}
