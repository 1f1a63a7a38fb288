package game

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// told writes games in one line each.
func told(games []Game) string {
	var out []string
	for _, g := range games {
		line := fmt.Sprintf("%s %s %s", g.ID, g.Start.Format("2006-01-02 15:04"), g.Teams())
		if g.Ends.Said() {
			line += " " + string(" A B"[2+g.Ends.Attacks(0, 1)])
		}
		for _, mark := range g.Marks {
			line += " " + mark
		}
		if g.Off {
			line += " off"
		}
		out = append(out, line)
	}
	return strings.Join(out, "\n")
}

func TestScheduleAsTable(t *testing.T) {
	s, err := ReadSchedule("games.csv", strings.NewReader(`id,date,start,home,away,series,home-attacks,warm-up,period-1,off,marks
# invented
g1,2026-11-28,19:00,Herons,Otters,cup,B A B,18:30,19:00,,televised final
g2,2026-12-05,17:30,Herons,Gulls,,A,,,yes
g3,2026-12-12,17:30,Herons,Gulls
`))
	if err != nil {
		t.Fatal(err)
	}
	want := "g1 2026-11-28 19:00 Herons v Otters B televised final\ng2 2026-12-05 17:30 Herons v Gulls A off\ng3 2026-12-12 17:30 Herons v Gulls"
	if got := told(s.Games); got != want {
		t.Errorf("read\n%s\nwant\n%s", got, want)
	}
	if at, ok := s.Games[0].At(WarmUp); !ok || at.Format("15:04") != "18:30" {
		t.Errorf("warm-up at %v, %t", at, ok)
	}
}

func TestBadRowsAreNamed(t *testing.T) {
	_, err := ReadSchedule("games.csv", strings.NewReader(`id,date,start,home,away,home-attacks,periods
g1,28.11.2026,19:00,Herons,Otters,B,3
g2,2026-12-05,7 pm,Herons,Gulls,B,3
g2,2026-12-05,19:00,Herons,Gulls,North,3
g3,2026-12-05,19:00,Herons,Gulls,B,30
g4,2026-12-05,19:00,,Gulls,B,3
g5,2026-12-05,19:00,Herons,Gulls,B,3
g5,2026-12-06,19:00,Herons,Gulls,B,3
`))
	if err == nil {
		t.Fatal("bad rows were taken")
	}
	for _, want := range []string{
		`games.csv:2:4: date: "28.11.2026" is no date; write year, month and day, as 2026-11-28`,
		`games.csv:3:15: start: "7 pm" is no time of day`,
		`games.csv:4:34: home-attacks: "North" is no end; write A or B`,
		`games.csv:5:36: periods: "30"; write a whole number from 1 to 9`,
		`games.csv:6:21: home: "": blank; every game needs`,
		`games.csv:8:1: id: "g5": there already`,
	} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("lacks %s in\n%v", want, err)
		}
	}
}

// calendar wraps events as a calendar; lines end as RFC 5545 asks.
func calendar(events string) string {
	text := "BEGIN:VCALENDAR\nVERSION:2.0\nPRODID:-//Invented//EN\n" + strings.TrimSpace(events) + "\nEND:VCALENDAR\n"
	return strings.ReplaceAll(text, "\n", "\r\n")
}

func TestCalendarKeepsIDsThroughChanges(t *testing.T) {
	s, err := ReadSchedule("season.ics", strings.NewReader(calendar(`
BEGIN:VEVENT
UID:fridays@rink.example
SEQUENCE:0
DTSTART:20261106T190000
RRULE:FREQ=WEEKLY;COUNT=4
EXDATE:20261120T190000
SUMMARY:Herons v Otters
X-HOME-ATTACKS:A
END:VEVENT
BEGIN:VEVENT
UID:fridays@rink.example
RECURRENCE-ID:20261113T190000
SEQUENCE:1
DTSTART:20261114T153000
SUMMARY:Herons v Otters
CATEGORIES:cup,televised, semi-final
X-HOME-ATTACKS:B
END:VEVENT
BEGIN:VEVENT
UID:final@rink.example
SEQUENCE:2
STATUS:CANCELLED
DTSTART;TZID=Europe/Somewhere:20270401T190000
SUMMARY:Gulls @ Herons
END:VEVENT
BEGIN:VEVENT
UID:final@rink.example
SEQUENCE:1
DTSTART:20270331T190000Z
SUMMARY:Herons v Gulls
END:VEVENT
BEGIN:VEVENT
UID:resurfacing
DTSTART:20261107T090000
SUMMARY:The boards are painted
END:VEVENT
`)))
	if err != nil {
		t.Fatal(err)
	}
	want := `fridays@rink.example/20261106T190000 2026-11-06 19:00 Herons v Otters A
fridays@rink.example/20261113T190000 2026-11-14 15:30 Herons v Otters B televised semi-final
fridays@rink.example/20261127T190000 2026-11-27 19:00 Herons v Otters A
final@rink.example 2027-04-01 19:00 Herons v Gulls off`
	if got := told(s.Games); got != want {
		t.Errorf("read\n%s\nwant\n%s", got, want)
	}
	if got := strings.Join(s.Passed, "; "); got != `season.ics:35: "The boards are painted" names no two teams` {
		t.Errorf("passed over: %s", got)
	}
	if g := s.Games[1]; g.Series != "fridays@rink.example" || g.Sequence != 1 {
		t.Errorf("the moved game: series %q, sequence %d", g.Series, g.Sequence)
	}
}

// TestOneChangeMovesAllThatFollow: RFC 5545, 3.2.13 and 3.8.4.4: an instance that is changed
// with THISANDFUTURE takes all that follow along, by the same difference in time; what is
// said of one alone goes before it, whichever stands first.
func TestOneChangeMovesAllThatFollow(t *testing.T) {
	s, err := ReadSchedule("season.ics", strings.NewReader(calendar(`
BEGIN:VEVENT
UID:fri
RECURRENCE-ID:20261127T190000
DTSTART:20261127T120000
SUMMARY:Herons v Terns
END:VEVENT
BEGIN:VEVENT
UID:fri
RECURRENCE-ID;RANGE=THISANDFUTURE:20261120T190000
DTSTART:20261121T173000
SUMMARY:Herons v Gulls
X-HOME-ATTACKS:B
END:VEVENT
BEGIN:VEVENT
UID:fri
DTSTART:20261106T190000
RRULE:FREQ=WEEKLY;COUNT=5
SUMMARY:Herons v Otters
END:VEVENT
BEGIN:VEVENT
UID:other
DTSTART:20261206T190000
SUMMARY:Herons v Kites
END:VEVENT
`)))
	if err != nil {
		t.Fatal(err)
	}
	want := `fri/20261106T190000 2026-11-06 19:00 Herons v Otters
fri/20261113T190000 2026-11-13 19:00 Herons v Otters
fri/20261120T190000 2026-11-21 17:30 Herons v Gulls B
fri/20261127T190000 2026-11-27 12:00 Herons v Terns
fri/20261204T190000 2026-12-05 17:30 Herons v Gulls B
other 2026-12-06 19:00 Herons v Kites`
	got := strings.Split(told(s.Games), "\n")
	slices.Sort(got)
	if strings.Join(got, "\n") != want {
		t.Errorf("read\n%s\nwant\n%s", strings.Join(got, "\n"), want)
	}
}

func TestBadCalendarsAreRefused(t *testing.T) {
	event := func(lines string) string {
		return calendar("BEGIN:VEVENT\nUID:u\nSUMMARY:Herons v Gulls\n" + lines + "\nEND:VEVENT")
	}
	for name, c := range map[string]struct{ text, want string }{
		"nothing":            {"", "x.ics: is empty; a calendar begins with BEGIN:VCALENDAR"},
		"another kind":       {"id,date\n", `x.ics:1: "id,date" is no line of a calendar`},
		"a page of the web":  {"html: here", `stands outside; a calendar begins with BEGIN:VCALENDAR`},
		"no start":           {event("SEQUENCE:1"), "x.ics:4: DTSTART: is missing"},
		"a day, no time":     {event("DTSTART;VALUE=DATE:20261128"), `x.ics:7:20: DTSTART: "20261128" is no date with time`},
		"a wrong end":        {event("DTSTART:20261128T190000\nX-HOME-ATTACKS:left"), `x.ics:8:16: X-HOME-ATTACKS: "left" is no end`},
		"without end":        {event("DTSTART:20261128T190000\nRRULE:FREQ=WEEKLY"), `x.ics:8:7: RRULE: "FREQ=WEEKLY": repeats without end; write COUNT or UNTIL`},
		"every second":       {event("DTSTART:20261128T190000\nRRULE:FREQ=SECONDLY;COUNT=5"), "games repeat by years, months, weeks or days"},
		"a rule of nonsense": {event("DTSTART:20261128T190000\nRRULE:FREQ=OFTEN"), "x.ics:8:7: RRULE"},
		"a wrong sequence":   {event("DTSTART:20261128T190000\nSEQUENCE:one"), `x.ics:8:10: SEQUENCE: "one" is no count`},
		"many before":        {event("DTSTART:20261128T190000\nRECURRENCE-ID;RANGE=THISANDPRIOR:20261128T190000"), `RANGE="THISANDPRIOR"; write THISANDFUTURE, or each one`},
		"many of nothing":    {event("DTSTART:20261128T190000\nRECURRENCE-ID;RANGE=THISANDFUTURE:20261128T190000"), `x.ics:8:35: RECURRENCE-ID: "20261128T190000" has no game of the series at or after it`},
		"cut short":          {strings.TrimSuffix(event("DTSTART:20261128T190000"), "END:VCALENDAR\r\n"), "ends before VCALENDAR does"},
		"crossed ends":       {calendar("BEGIN:VEVENT\nEND:VJOURNAL"), `x.ics:5: "VJOURNAL" ends where VEVENT should`},
		"binary":             {"BEGIN:VCALENDAR\n\x00", "is no UTF-8 text"},
	} {
		_, err := ReadSchedule("x.ics", strings.NewReader(c.text))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s:\n got %v\nwant %s", name, err, c.want)
		}
	}
}

func TestDocumentAddsToItsSchedule(t *testing.T) {
	text := strings.Replace(small, "games:\n", "schedule: season.csv\ngames:\n  - {id: s1, home-attacks: A}\n", 1)
	s := read(t, text, map[string]string{"season.csv": "id,date,start,home,away\ns1,2026-11-01,18:00,Herons,Gulls\n"})
	if got := told(s.Games[:1]); got != "s1 2026-11-01 18:00 Herons v Gulls A" || len(s.Games) != 3 {
		t.Errorf("first of %d games: %s", len(s.Games), got)
	}
}
