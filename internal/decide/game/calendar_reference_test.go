package game

import (
	"strings"
	"testing"
)

// The examples of RFC 5545 (September 2009), with a title of two teams in place of none;
// each names its section, and the dates are those that the section prints.
func TestCalendarReadsTheExamplesOfRFC5545(t *testing.T) {
	for name, c := range map[string]struct{ lines, want string }{
		"3.8.5.3, daily for 10 occurrences": {
			"DTSTART;TZID=America/New_York:19970902T090000\nRRULE:FREQ=DAILY;COUNT=10",
			"0902 0903 0904 0905 0906 0907 0908 0909 0910 0911"},
		"3.8.5.3, weekly for 10 occurrences": {
			"DTSTART;TZID=America/New_York:19970902T090000\nRRULE:FREQ=WEEKLY;COUNT=10",
			"0902 0909 0916 0923 0930 1007 1014 1021 1028 1104"},
		"3.8.5.3, weekly on Tuesday and Thursday for five weeks": {
			"DTSTART;TZID=America/New_York:19970902T090000\nRRULE:FREQ=WEEKLY;UNTIL=19971007T000000Z;WKST=SU;BYDAY=TU,TH",
			"0902 0904 0909 0911 0916 0918 0923 0925 0930 1002"},
		"3.8.5.3, every other week on Tuesday and Thursday, for 8 occurrences": {
			"DTSTART;TZID=America/New_York:19970902T090000\nRRULE:FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH",
			"0902 0904 0916 0918 0930 1002 1014 1016"},
		"3.8.5.3, monthly on the first Friday for 10 occurrences": {
			"DTSTART;TZID=America/New_York:19970905T090000\nRRULE:FREQ=MONTHLY;COUNT=10;BYDAY=1FR",
			"0905 1003 1107 1205 0102 0206 0306 0403 0501 0605"},
		"3.8.5.3, an invalid date is ignored": {
			"DTSTART;TZID=America/New_York:20070115T090000\nRRULE:FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5",
			"0115 0130 0215 0315 0330"},
		"3.8.5.1 and 3.8.5.3, dates taken out": {
			"DTSTART:19960401T010000Z\nRRULE:FREQ=DAILY;COUNT=5\nEXDATE:19960402T010000Z,19960403T010000Z,19960404T010000Z",
			"0401 0405"},
		"3.8.5.2, dates added": {
			"DTSTART:19970714T123000Z\nRDATE:19970715T123000Z",
			"0714 0715"},
	} {
		s, err := ReadSchedule("rfc.ics", strings.NewReader(calendar("BEGIN:VEVENT\nUID:u\nSUMMARY:Herons v Otters\n"+c.lines+"\nEND:VEVENT")))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		var got []string
		for _, g := range s.Games {
			got = append(got, g.Start.Format("0102"))
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %s, want %s", name, strings.Join(got, " "), c.want)
		}
	}
}

// Section 3.1 folds a long line in three ways that mean the same, section 4 prints whole
// calendars.
func TestCalendarTakesTheLinesOfRFC5545(t *testing.T) {
	for name, c := range map[string]struct{ text, title, start string }{
		"3.1, folded": {
			calendar("BEGIN:VEVENT\nUID:u\nDTSTART:19970610T172345Z\nSUMMARY:This is a lo\n ng description v\n   that exists on a long line.\nEND:VEVENT"),
			"This is a long description v that exists on a long line.", "1997-06-10 17:23"},
		"3.2, a parameter in quotes": {
			calendar("BEGIN:VEVENT\nUID:u\nATTENDEE;DELEGATED-TO=\"mailto:jdoe@example.com\",\"mailto:jqpublic@example.com\":mailto:jsmith@example.com\nDTSTART:19980119T020000\nSUMMARY;LANGUAGE=en-US:Company v Holiday Party\nEND:VEVENT"),
			"Company v Holiday Party", "1998-01-19 02:00"},
		"4, with a time zone and an alarm": {
			calendar("BEGIN:VTIMEZONE\nTZID:America/New_York\nBEGIN:STANDARD\nDTSTART:19981025T020000\nTZOFFSETFROM:-0400\nTZOFFSETTO:-0500\nTZNAME:EST\nEND:STANDARD\nEND:VTIMEZONE\n" +
				"BEGIN:VEVENT\nDTSTAMP:19980309T231000Z\nUID:guid-1.example.com\nORGANIZER:mailto:mrbig@example.com\nATTENDEE;RSVP=TRUE;ROLE=REQ-PARTICIPANT;CUTYPE=GROUP:\n mailto:employee-A@example.com\n" +
				"SUMMARY:XYZ v Project Review\nDTSTART;TZID=America/New_York:19980312T083000\nDTEND;TZID=America/New_York:19980312T093000\nLOCATION:1CP Conference Room 4350\nBEGIN:VALARM\nSUMMARY:none\nTRIGGER:-PT30M\nEND:VALARM\nEND:VEVENT"),
			"XYZ v Project Review", "1998-03-12 08:30"},
	} {
		s, err := ReadSchedule("rfc.ics", strings.NewReader(c.text))
		if err != nil || len(s.Games) != 1 {
			t.Errorf("%s: %d games, %v", name, len(s.Games), err)
			continue
		}
		if g := s.Games[0]; g.Teams() != c.title || g.Start.Format("2006-01-02 15:04") != c.start {
			t.Errorf("%s: %s at %v, want %s at %s", name, g.Teams(), g.Start, c.title, c.start)
		}
	}
}
