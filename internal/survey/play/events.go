package play

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

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

// RowError is one bad row: where, what stood there and what would do.
type RowError struct {
	Line   int
	Column string
	Value  string
	Cure   string
}

// Error names line, column and value.
func (e RowError) Error() string {
	return fmt.Sprintf("line %d, column %s: %s: %s", e.Line, e.Column, form.Quote(e.Value), e.Cure)
}

// Limits of the reader: a season of events is about 100,000 rows.
const (
	maxEventBytes = 64 << 20
	maxEvents     = 1_000_000
	maxRowErrors  = 20 // listed in one refusal
)

// eventColumns are the columns read; others are passed over.
var eventColumns = [...]string{"x", "y", "phase", "period", "team", "weight"}

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
	rd := &eventReader{lay: LayoutOf(r), format: f, csv: csv.NewReader(bufio.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\xef\xbb\xbf")))))}
	rd.csv.FieldsPerRecord = -1
	if err := rd.header(); err != nil {
		return nil, nil, fmt.Errorf("%s: %w", name, err)
	}
	if err := rd.rows(); err != nil {
		return nil, rd.bad, fmt.Errorf("%s: %w", name, err)
	}
	if len(rd.bad) > 0 && !f.Lenient {
		return nil, rd.bad, fmt.Errorf("%s: %w", name, refuse(rd.bad))
	}
	if len(rd.events) == 0 && len(rd.bad) > 0 {
		return nil, rd.bad, fmt.Errorf("%s: no usable row among %d; the first: %w", name, len(rd.bad), rd.bad[0])
	}
	if len(rd.events) == 0 {
		return nil, rd.bad, fmt.Errorf("%s: no usable row: give at least one row with x and y", name)
	}
	return rd.events, rd.bad, nil
}

func refuse(bad []RowError) error {
	var lines []string
	for i, b := range bad {
		if i == maxRowErrors {
			lines = append(lines, fmt.Sprintf("and %d more bad rows", len(bad)-i))
			break
		}
		lines = append(lines, b.Error())
	}
	return fmt.Errorf("%s (--lenient skips bad rows)", strings.Join(lines, "\n  "))
}

// eventReader holds the state of one reading.
type eventReader struct {
	lay    Layout
	format EventFormat
	csv    *csv.Reader
	column [len(eventColumns)]int // place of each known column, -1 when absent
	width  int
	events []Event
	bad    []RowError
}

func (r *eventReader) header() error {
	row, err := r.csv.Read()
	if err == io.EOF {
		return errors.New("line 1: empty file: the first line names the columns (x,y and, if known, phase,period,team,weight)")
	}
	if err != nil {
		return fmt.Errorf("line 1: not CSV: %w", err)
	}
	r.width = len(row)
	for i, want := range eventColumns {
		r.column[i] = -1
		for k, have := range row {
			if !strings.EqualFold(strings.TrimSpace(have), want) {
				continue
			}
			if r.column[i] >= 0 {
				return fmt.Errorf("line 1, column %s: named twice: keep one", want)
			}
			r.column[i] = k
		}
	}
	for i, want := range eventColumns[:2] {
		if r.column[i] < 0 {
			return fmt.Errorf("line 1: no column %s among %s: name the columns in the first line, separated by commas", want, form.Quote(strings.Join(row, ",")))
		}
	}
	return nil
}

func (r *eventReader) rows() error {
	for {
		row, err := r.csv.Read()
		if err == io.EOF {
			return nil
		}
		var pe *csv.ParseError
		switch {
		case errors.As(err, &pe):
			r.bad = append(r.bad, RowError{pe.Line, "-", "", "not CSV: " + pe.Err.Error()})
			continue
		case err != nil:
			return err
		}
		line, _ := r.csv.FieldPos(0)
		if len(row) != r.width {
			r.bad = append(r.bad, RowError{line, "-", strings.Join(row, ","), fmt.Sprintf("has %d columns, the first line %d", len(row), r.width)})
			continue
		}
		ev, bad := r.event(line, row)
		if bad != nil {
			r.bad = append(r.bad, *bad)
			continue
		}
		if r.events = append(r.events, ev); len(r.events) > maxEvents {
			return fmt.Errorf("line %d: more than %d rows: split the file", line, maxEvents)
		}
	}
}

// field returns the trimmed text of a known column, "" when it is absent.
func (r *eventReader) field(row []string, k int) string {
	if r.column[k] < 0 {
		return ""
	}
	return strings.TrimSpace(row[r.column[k]])
}

func (r *eventReader) event(line int, row []string) (Event, *RowError) {
	ev := Event{Line: line, Team: -1}
	bad := func(k int, cure string) (Event, *RowError) {
		return ev, &RowError{line, eventColumns[k], r.field(row, k), cure}
	}
	var xy [2]float64
	for k := range xy {
		v, err := strconv.ParseFloat(r.field(row, k), 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			return bad(k, "write a number")
		}
		xy[k] = v * r.format.Scale
	}
	ev.X, ev.Y = xy[0], xy[1]
	if math.Abs(ev.X) > r.lay.HalfLength {
		return bad(0, fmt.Sprintf("beyond the end boards at %.2f m: is the unit right, the origin at centre ice?", r.lay.HalfLength))
	}
	if r.lay.Clearance(ev.X, ev.Y) < 0 {
		return bad(1, fmt.Sprintf("beyond the boards by %.2f m: is the unit right, the origin at centre ice?", -r.lay.Clearance(ev.X, ev.Y)))
	}
	if s := r.field(row, 2); s != "" {
		p, ok := phaseNamed(s)
		if !ok {
			return bad(2, "write one of "+phaseNames()+", or shot, goal, or nothing")
		}
		ev.Phase, ev.Known = p, true
	}
	if s := r.field(row, 3); s != "" {
		n, err := strconv.Atoi(s)
		if err != nil || n < 1 || n > 20 {
			return bad(3, "write a period from 1 to 20")
		}
		ev.Period = 1 + (n-1)%3
		if n > 3 { // overtime: ends go on changing
			ev.Period = 1 + (n-1)%2
		}
	}
	if s := r.field(row, 4); s != "" {
		switch strings.ToLower(s) {
		case "home":
			ev.Team = 0
		case "away":
			ev.Team = 1
		default:
			return bad(4, "write home or away")
		}
	}
	ev.Weight = 1
	if s := r.field(row, 5); s != "" {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil || !(v > 0 && v <= maxShare) {
			return bad(5, "write a number above 0, at most 1e6")
		}
		ev.Weight = v
	}
	return ev, nil
}
