package play

import (
	"errors"
	"fmt"
	"io"
	"math"

	"example.org/rinkpane/internal/measure/form"
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
func ReadEvents(name string, in io.Reader, r rink.Rink, f EventFormat) ([]Event, []*form.Problem, error) {
	if !(f.Scale > 0) || math.IsInf(f.Scale, 0) {
		return nil, nil, errors.New("events: unit of x and y: write ft or m")
	}
	t, err := form.ReadTable(name, in, maxEventBytes, form.Columns{Must: []string{"x", "y"}, May: []string{"phase", "period", "team", "weight"}})
	if err != nil {
		return nil, nil, err
	}
	rd := eventReader{lay: LayoutOf(r), format: f}
	bad, err := eachRow(t, math.MaxInt, rd.add)
	switch {
	case err == nil && len(bad) > 0 && !f.Lenient:
		err = refuse(bad, " (--lenient skips bad rows)")
	case err == nil && len(rd.events) == 0 && len(bad) > 0:
		err = fmt.Errorf("%s: no usable row among %d; the first: %w", name, len(bad), bad[0])
	case err == nil && len(rd.events) == 0:
		err = fmt.Errorf("%s: no usable row: give at least one row with x and y", name)
	}
	if err != nil {
		return nil, bad, err
	}
	return rd.events, bad, nil
}

// eventReader holds the state of one reading.
type eventReader struct {
	lay    Layout
	format EventFormat
	events []Event
}

func (r *eventReader) add(in row) error {
	ev, err := r.event(in)
	if err != nil {
		return err
	}
	if r.events = append(r.events, ev); len(r.events) > maxEvents {
		return fmt.Errorf("%s: more than %d rows: split the file", in.Place(), maxEvents)
	}
	return nil
}

func (r *eventReader) event(in row) (ev Event, err error) {
	ev.Line = in.Line
	if ev.X, err = in.Number("x"); err != nil {
		return ev, err
	}
	if ev.Y, err = in.Number("y"); err != nil {
		return ev, err
	}
	ev.X, ev.Y = ev.X*r.format.Scale, ev.Y*r.format.Scale
	if math.Abs(ev.X) > r.lay.HalfLength {
		return ev, in.Bad("x", fmt.Sprintf("beyond the end boards at %.2f m: is the unit right, the origin at centre ice?", r.lay.HalfLength))
	}
	if off := -r.lay.Clearance(ev.X, ev.Y); off > 0 {
		return ev, in.Bad("y", fmt.Sprintf("beyond the boards by %.2f m: is the unit right, the origin at centre ice?", off))
	}
	if s := in.Text("phase"); s != "" {
		if ev.Phase, ev.Known = phaseNamed(s); !ev.Known {
			return ev, in.Bad("phase", "write one of "+phaseNames()+", or shot, goal, or nothing")
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
