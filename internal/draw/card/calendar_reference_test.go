package card

import (
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/game"
)

// What RFC 5545 (September 2009) asks of a calendar, section by section.
func TestCalendarKeepsRFC5545(t *testing.T) {
	r := rink(t)
	cleo, _ := r.season.Person("cleo")
	at := time.Date(2026, 11, 1, 12, 0, 0, 0, time.UTC)
	all := append(cards(t, "nov-07", nil), cards(t, "nov-21", nil)...)
	text := Calendar(cleo, all, at)
	golden(t, "cleo.ics", strings.ReplaceAll(text, "\r\n", "\n"))
	lines := strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n")
	for _, line := range lines {
		if len(line) > 75 { // 3.1: octets without the line break
			t.Errorf("3.1: %d octets in a line: %s", len(line), line)
		}
		if strings.Contains(line, "\n") {
			t.Errorf("3.1: a line break that is no CRLF in %q", line)
		}
	}
	for section, want := range map[string]string{
		"3.4, begin": `^BEGIN:VCALENDAR\r\n`, "3.4, end": `END:VCALENDAR\r\n$`,
		"3.6, version": `\r\nVERSION:2\.0\r\n`, "3.6, product": `\r\nPRODID:-//`,
		"3.6.1, stamp in universal time": `\r\nDTSTAMP:20261101T120000Z\r\n`, "3.6.1, id": `\r\nUID:cleo/nov-07\r\n`,
		"3.3.5, form 1, local time": `\r\nDTSTART:20261107T182500\r\n`, "3.8.2.2, end": `\r\nDTEND:20261107T220000\r\n`,
		"3.8.7.4, sequence": `\r\nSEQUENCE:0\r\n`, "3.3.11, a comma is escaped": `B2\\, Herons`,
	} {
		if !regexp.MustCompile(want).MatchString(text) {
			t.Errorf("%s: no %s in\n%s", section, want, text)
		}
	}
	if Calendar(cleo, all, at) != text {
		t.Error("the same calendar differs the second time")
	}
	back, err := game.ReadSchedule("cleo.ics", strings.NewReader(text))
	if err != nil || len(back.Games) != 2 || back.Games[0].ID != "cleo/nov-07" || back.Games[0].Away != "Otters" {
		t.Errorf("read back as %+v, %v", back, err)
	}
}

// A game whose date was changed keeps its id and counts the change; one that is off says so.
func TestCalendarFollowsChanges(t *testing.T) {
	r := rink(t)
	cleo, _ := r.season.Person("cleo")
	all := cards(t, "nov-07", nil)
	for i := range all {
		all[i].Game.Sequence, all[i].Game.Off, all[i].Game.Universal = 2, true, true
	}
	text := Calendar(cleo, all, time.Unix(0, 0).UTC())
	for _, want := range []string{"UID:cleo/nov-07\r\n", "SEQUENCE:2\r\n", "STATUS:CANCELLED\r\n", "DTSTART:20261107T182500Z\r\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}
