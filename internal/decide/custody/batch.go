package custody

import (
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
