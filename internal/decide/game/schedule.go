package game

import (
	"io"
	"strings"

	"example.org/rinkpane/internal/measure/form"
)

// Schedule is a list of games that stands in a file of its own.
type Schedule struct {
	Games []Game
	// Passed says which entries are no games, each with its place.
	Passed []string
}

// ReadSchedule reads a schedule: an iCalendar file (RFC 5545) where the name ends in
// .ics, else CSV. Errors name file, line, column, value and cure.
func ReadSchedule(name string, in io.Reader) (Schedule, error) {
	if strings.HasSuffix(strings.ToLower(name), ".ics") {
		return readCalendar(name, in)
	}
	return readTable(name, in)
}

// readTable reads CSV with named columns, a game a row. Bad rows refuse the file, and are
// named.
func readTable(name string, in io.Reader) (Schedule, error) {
	t, err := form.ReadTable(name, in, MaxBytes, form.Columns{
		Must: []string{"id", "date", "start", "home", "away"},
		May:  append([]string{"series", "marks", "home-attacks", "periods", "off"}, stageNames()...), Only: true, Short: true, Comments: true, Dividers: ";\t",
	})
	if err != nil {
		return Schedule{}, err
	}
	var out Schedule
	seen := map[string]bool{}
	err = t.Each(func(row form.Row) error {
		g, err := gameOf(row)
		switch {
		case err != nil:
			return err
		case seen[g.ID]:
			return row.Bad("id", "there already; give each game an id of its own")
		case len(out.Games) == MaxGames:
			return row.Bad("id", "more games than a season may hold; split the file")
		}
		seen[g.ID], out.Games = true, append(out.Games, g)
		return nil
	})
	if err != nil {
		return Schedule{}, err
	}
	return out, nil
}

// gameOf reads a row; what the row leaves out stays as in a document.
func gameOf(r form.Row) (g Game, err error) {
	cell := func(column string, read func(string) error) {
		if err != nil || r.Text(column) == "" {
			return
		}
		if e := read(r.Text(column)); e != nil {
			err = r.Wrong(column, e.Error())
		}
	}
	text := func(to *string) func(string) error {
		return func(s string) (err error) { *to, err = form.Line(s); return err }
	}
	g.Periods = Periods
	for _, must := range []string{"id", "date", "start", "home", "away"} {
		if r.Text(must) == "" {
			return g, r.Bad(must, "blank; every game needs id, date, start, home and away")
		}
	}
	cell("id", text(&g.ID))
	cell("series", text(&g.Series))
	cell("marks", func(s string) error { s, err := form.Line(s); g.Marks = strings.Fields(s); return err })
	cell("home", text(&g.Home))
	cell("away", text(&g.Away))
	cell("date", func(s string) (err error) { g.Start, err = parseDay(s); return err })
	cell("start", func(s string) error { at, err := parseTime(s); g.Start = g.Start.Add(at); return err })
	cell("home-attacks", func(s string) (err error) { g.Ends, err = parseEnds(s); return err })
	cell("periods", func(s string) (err error) { g.Periods, err = parsePeriods(s); return err })
	cell("off", func(s string) (err error) { g.Off, err = form.YesNo(s); return err })
	for _, name := range stageNames() {
		cell(name, func(s string) error {
			at, err := parseTime(s)
			if err == nil {
				g.stage(name, at)
				err = g.inOrder()
			}
			return err
		})
	}
	return g, err
}

// schedule reads the schedule that the document names.
func (rd *reader) schedule(n form.Node, open Files) error {
	path := form.Optional(n, form.Line)
	if path == "" || !n.OK() {
		return nil
	}
	return opened(n, open, func(in io.Reader) error {
		s, err := ReadSchedule(path, in)
		rd.Games, rd.Passed = s.Games, s.Passed
		return err
	})
}
