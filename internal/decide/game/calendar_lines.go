package game

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	ical "github.com/arran4/golang-ical"

	"example.org/rinkpane/internal/measure/form"
)

// event is one VEVENT of a calendar, with the places of its lines.
type event struct {
	file  string
	line  int // of its begin
	lines map[string][]contentLine
}

// contentLine is a property with where it stands.
type contentLine struct {
	line, column int // of the value
	value        string
	params       map[string][]string
}

// text returns the value of an event's property, "" for one that is not there.
func (e event) text(name string) string {
	if l := e.lines[name]; len(l) > 0 {
		return l[0].value
	}
	return ""
}

func (e event) param(name, param string) string {
	if l := e.lines[name]; len(l) > 0 && len(l[0].params[param]) > 0 {
		return l[0].params[param][0]
	}
	return ""
}

// wrong is what is wrong with a property, at its place, or the event's where it is not
// there.
func (e event) wrong(name, text string) error {
	p := &form.Problem{File: e.file, Line: e.line, Field: name, Text: text}
	if l := e.lines[name]; len(l) > 0 {
		p.Line, p.Column = l[0].line, l[0].column
	}
	return p
}

// readEvents reads the events of a calendar; other components are passed over.
func readEvents(file string, in io.Reader) ([]event, error) {
	text, err := io.ReadAll(io.LimitReader(in, MaxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	bad := func(line int, text string) ([]event, error) {
		return nil, &form.Problem{File: file, Line: line, Text: text}
	}
	if len(text) > MaxBytes {
		return bad(0, fmt.Sprintf("is larger than %d MB; split it", MaxBytes>>20))
	}
	if !utf8.Valid(text) || bytes.ContainsRune(text, 0) {
		return bad(0, "is no UTF-8 text; save the calendar as iCalendar, .ics")
	}
	var out []event
	var inside []string // the components around, outermost first
	last := 0
	for _, u := range unfold(text) {
		last = u.line
		text := string(u.text)
		prop, err := ical.ParseProperty(ical.ContentLine(text))
		if err != nil || prop == nil {
			return bad(u.line, form.Quote(text)+" is no line of a calendar; each reads NAME:value")
		}
		name, value := strings.ToUpper(prop.IANAToken), strings.ToUpper(prop.Value)
		switch {
		case name == "BEGIN":
			if len(inside) == 0 && value != "VCALENDAR" {
				return bad(u.line, form.Quote(prop.Value)+" begins; a calendar begins with BEGIN:VCALENDAR")
			}
			if inside = append(inside, value); slices.Equal(inside, []string{"VCALENDAR", "VEVENT"}) {
				out = append(out, event{file: file, line: u.line, lines: map[string][]contentLine{}})
			}
		case len(inside) == 0:
			return bad(u.line, form.Quote(text)+" stands outside; a calendar begins with BEGIN:VCALENDAR")
		case name == "END":
			if value != inside[len(inside)-1] {
				return bad(u.line, fmt.Sprintf("%s ends where %s should; every BEGIN has its END", form.Quote(prop.Value), inside[len(inside)-1]))
			}
			inside = inside[:len(inside)-1]
		case slices.Equal(inside, []string{"VCALENDAR", "VEVENT"}):
			e := &out[len(out)-1]
			e.lines[name] = append(e.lines[name], contentLine{u.line, len(text) - len(valueOf(text)) + 1, prop.Value, prop.ICalParameters})
		}
	}
	switch {
	case last == 0:
		return bad(0, "is empty; a calendar begins with BEGIN:VCALENDAR")
	case len(inside) > 0:
		return bad(last, fmt.Sprintf("ends before %s does; every BEGIN has its END", inside[len(inside)-1]))
	}
	return out, nil
}

// unfolded is a content line put together again (RFC 5545, 3.1), with the number of its
// first line.
type unfolded struct {
	line int
	text []byte
}

func unfold(text []byte) []unfolded {
	var out []unfolded
	for k, raw := range bytes.Split(bytes.TrimPrefix(text, []byte("\ufeff")), []byte("\n")) {
		raw = bytes.TrimSuffix(raw, []byte("\r"))
		switch {
		case len(raw) == 0:
		case (raw[0] == ' ' || raw[0] == '\t') && len(out) > 0:
			out[len(out)-1].text = append(out[len(out)-1].text, raw[1:]...)
		default:
			out = append(out, unfolded{k + 1, slices.Clone(raw)})
		}
	}
	return out
}

// valueOf returns what follows the first colon outside quotes.
func valueOf(line string) string {
	quoted := false
	for i, c := range line {
		switch c {
		case '"':
			quoted = !quoted
		case ':':
			if !quoted {
				return line[i+1:]
			}
		}
	}
	return ""
}
