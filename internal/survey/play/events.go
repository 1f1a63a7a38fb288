package play

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"

	"example.org/rinkpane/internal/survey/rink"
)

// Event is one thing that happened at a place: a row of the user's own list.
type Event struct {
	Line   int     // in the file, for messages
	X, Y   float64 // metres, rink frame
	Phase  Phase
	Known  bool    // the row names the phase; otherwise it follows from the place
	Period int     // 1, 2 or 3; 0: not given
	Team   int     // 0 home, 1 away, -1: not given
	Weight float64 // factor on the phase's news weight, above 0
}

// EventFormat says how to read a list of events.
type EventFormat struct {
	Scale   float64 // metres in one unit of x and y: 0.3048 for feet, 1 for metres
	Lenient bool    // skip bad rows instead of refusing the file
}

// Limits of the reader: a season of events is about 100,000 rows.
const (
	maxEventBytes = 64 << 20
	maxEvents     = 1_000_000
	maxRowErrors  = 20 // listed in one refusal
)

// ReadEvents reads CSV with named columns: x and y must be there (origin at
// centre ice, x along the rink toward end B), phase, period, team and weight
// may be. It returns the good events and the rows that were skipped.
//
// A bad row refuses the whole file, with up to 20 bad rows named, unless
// f.Lenient; a place off the ice is bad. name is used in messages.
func ReadEvents(name string, in io.Reader, r rink.Rink, f EventFormat) ([]Event, []RowError, error) {
	if !(f.Scale > 0) || math.IsInf(f.Scale, 0) {
		return nil, nil, errors.New("events: unit of x and y: write ft or m")
	}
	text, err := io.ReadAll(io.LimitReader(in, maxEventBytes+1))
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(text) > maxEventBytes {
		return nil, nil, fmt.Errorf("%s: larger than %d MB: split it by season", name, maxEventBytes>>20)
	}
	rd := eventReader{lay: LayoutOf(r), format: f}
	if err := rd.read(bytes.NewReader(text)); err != nil {
		return nil, rd.bad, fmt.Errorf("%s: %w", name, err)
	}
	if len(rd.bad) > 0 && !f.Lenient {
		return nil, rd.bad, fmt.Errorf("%s: %w", name, refuse(rd.bad, " (--lenient skips bad rows)"))
	}
	if len(rd.events) == 0 && len(rd.bad) > 0 {
		return nil, rd.bad, fmt.Errorf("%s: no usable row among %d; the first: %w", name, len(rd.bad), rd.bad[0])
	}
	if len(rd.events) == 0 {
		return nil, rd.bad, fmt.Errorf("%s: no usable row: give at least one row with x and y", name)
	}
	return rd.events, rd.bad, nil
}

// eventReader holds the state of one reading.
type eventReader struct {
	lay    Layout
	format EventFormat
	events []Event
	bad    []RowError
}

func (r *eventReader) read(in io.Reader) error {
	t, err := newTable(in, 2, "x", "y", "phase", "period", "team", "weight")
	if err != nil {
		return err
	}
	for {
		row, err := t.next()
		if err == io.EOF {
			return nil
		}
		var ev Event
		if err == nil {
			ev, err = r.event(row)
		}
		var bad RowError
		switch {
		case errors.As(err, &bad):
			r.bad = append(r.bad, bad)
			continue
		case err != nil:
			return err
		}
		if r.events = append(r.events, ev); len(r.events) > maxEvents {
			return fmt.Errorf("line %d: more than %d rows: split the file", row.line, maxEvents)
		}
	}
}

func (r *eventReader) event(in row) (ev Event, err error) {
	ev.Line = in.line
	if ev.X, err = in.number("x"); err != nil {
		return ev, err
	}
	if ev.Y, err = in.number("y"); err != nil {
		return ev, err
	}
	ev.X, ev.Y = ev.X*r.format.Scale, ev.Y*r.format.Scale
	if math.Abs(ev.X) > r.lay.HalfLength {
		return ev, in.bad("x", fmt.Sprintf("beyond the end boards at %.2f m: is the unit right, the origin at centre ice?", r.lay.HalfLength))
	}
	if off := -r.lay.Clearance(ev.X, ev.Y); off > 0 {
		return ev, in.bad("y", fmt.Sprintf("beyond the boards by %.2f m: is the unit right, the origin at centre ice?", off))
	}
	if s := in.text("phase"); s != "" {
		if ev.Phase, ev.Known = phaseNamed(s); !ev.Known {
			return ev, in.bad("phase", "write one of "+phaseNames()+", or shot, goal, or nothing")
		}
	}
	if ev.Period, err = in.period(); err != nil {
		return ev, err
	}
	if ev.Team, err = in.team(); err != nil {
		return ev, err
	}
	ev.Weight, err = in.weight(1)
	return ev, err
}
