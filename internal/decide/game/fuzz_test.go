package game

import (
	"errors"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/form"
)

// Whatever is read ends in games with ids and starts, or in errors that name the file.
func FuzzSchedule(f *testing.F) {
	f.Add("x.csv", "id,date,start,home,away,home-attacks,period-1\ng1,2026-11-28,19:00,A,B,B A B,19:00\n")
	f.Add("x.csv", "id;date;start;home;away\n\"g1;2026-11-28;19:00;A;B\n")
	f.Add("x.csv", "\ufeffid,date,start,home,away\n,,,,\n")
	f.Add("x.ics", calendar("BEGIN:VEVENT\nUID:u\nDTSTART:20261128T190000\nRRULE:FREQ=WEEKLY;COUNT=4\nSUMMARY:A v B\nEND:VEVENT"))
	f.Add("x.ics", calendar("BEGIN:VEVENT\nUID:u\nDTSTART:20261128T190000\nRRULE:FREQ=MONTHLY;BYDAY=5MO;UNTIL=20301128T190000Z\nEXDATE:x\nSUMMARY:A @ B\nEND:VEVENT"))
	f.Add("x.ics", "BEGIN:VCALENDAR\nX;P=\"\\:\n")
	f.Add("x.ics", "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\n X;=:\r\n")
	f.Fuzz(func(t *testing.T, name, text string) {
		name = "x" + name[max(0, len(name)-4):]
		s, err := ReadSchedule(name, strings.NewReader(text))
		if err != nil {
			if !strings.Contains(err.Error(), name) {
				t.Errorf("an error without its file: %v", err)
			}
			return
		}
		seen := map[string]bool{}
		for _, g := range s.Games {
			if g.ID == "" || seen[g.ID] || g.Start.IsZero() || g.Home == "" || g.Away == "" || g.Periods < 1 {
				t.Errorf("a game that is none, or there twice: %+v", g)
			}
			seen[g.ID] = true
		}
	})
}

func FuzzRead(f *testing.F) {
	f.Add(small)
	f.Add(strings.Replace(small, "games: cup", "games: [cup, g1]", 1))
	f.Add(strings.Replace(small, "hole: B3}", "hole: B3, periods: [9, 1]}", 1))
	f.Add("rinkpane: games 1\narena: quillhaven.yaml\ngames: []\n")
	f.Add("rinkpane: games 1\narena: [quillhaven.yaml]\nschedule: {}\n")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := Read("x.yaml", strings.NewReader(text), files(nil))
		var place *form.Problem
		if err != nil {
			if !errors.As(err, &place) {
				t.Errorf("an error without its place: %v", err)
			}
			return
		}
		for _, g := range s.Games {
			for _, a := range s.Asks(g) {
				if len(a.Lenses) == 0 || a.Request.Follows == "" {
					t.Errorf("an ask without lenses or subject: %+v", a)
				}
			}
		}
	})
}
