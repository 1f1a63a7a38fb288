package night

import (
	"cmp"
	"net/http"
	"slices"
	"strconv"
	"time"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/form"
)

// addGame puts another game into the document.
func addGame(p nightPage, r *http.Request) (edit, error) {
	fields := append([]form.Field{{Name: "id", Value: form.Text(freeID(p.Season.Games, r))}}, fieldsOf(r, "series", "date", "start", "home", "away", "home-attacks")...)
	fields = append(fields, listOf(r, "marks")...)
	return adds("games", "add the game "+one(r, "home")+" – "+one(r, "away"), p.To("/games"), fields...), nil
}

// freeID makes an id for a game out of its day; a second game of the day gets a number.
func freeID(games []game.Game, r *http.Request) string {
	taken := func(id string) bool { return slices.ContainsFunc(games, func(g game.Game) bool { return g.ID == id }) }
	id := one(r, "date")
	for n := 2; taken(id); n++ {
		id = one(r, "date") + "-" + strconv.Itoa(n)
	}
	return id
}

// moveGame changes the day of a game, or when it starts; the game keeps its id.
func moveGame(p nightPage, r *http.Request) (edit, error) {
	return setGame(p, r, "move the game to "+one(r, "date")+", "+one(r, "start"), "date", "start", "home-attacks")
}

// markGame says what rules may ask of a game: that it is televised.
func markGame(p nightPage, r *http.Request) (edit, error) {
	e, err := setGame(p, r, "mark the game as "+cmp.Or(one(r, "marks"), "nothing"))
	if err != nil {
		return e, err
	}
	e.make = func(doc *form.Document) (*form.Document, error) {
		return anew(doc, e.touches[0]+".", listOf(r, "marks"), "marks")
	}
	return e, nil
}

// callOff calls a game off, or on again.
func callOff(p nightPage, r *http.Request) (edit, error) {
	what := "call the game off"
	if one(r, "off") == "no" {
		what = "the game is played after all"
	}
	return setGame(p, r, what, "off")
}

// setGame writes fields of a form into a game.
func setGame(p nightPage, r *http.Request, what string, names ...string) (edit, error) {
	g, err := p.gameOf(r)
	if err != nil {
		return edit{}, err
	}
	at, ok := itemWhere(p.games.Text, "games", "id", g.ID)
	if !ok {
		return edit{}, shell.Refuse(http.StatusUnprocessableEntity, "This game stands in a schedule of its own.", "Change it there and bring the file again.")
	}
	fields := fieldsOf(r, names...)
	return edit{touches: []string{at}, what: what + ": " + g.Home + " – " + g.Away, then: p.ToGame(g.ID), make: func(doc *form.Document) (*form.Document, error) {
		return setFields(doc, at, fields)
	}}, nil
}

// setFields writes fields of an item.
func setFields(doc *form.Document, at string, fields []form.Field) (*form.Document, error) {
	return anew(doc, at+".", fields)
}

// anew writes fields below a path and takes out those of the names that are not among them.
func anew(doc *form.Document, below string, fields []form.Field, names ...string) (_ *form.Document, err error) {
	for _, f := range fields {
		if doc, err = doc.Set(below+f.Name, f.Value); err != nil {
			return nil, err
		}
	}
	for _, name := range names {
		left := slices.ContainsFunc(fields, func(f form.Field) bool { return f.Name == name })
		if left || !doc.Has(below+name) {
			continue
		}
		if doc, err = doc.Remove(below + name); err != nil {
			return nil, err
		}
	}
	return doc, nil
}

// withSchedule writes the games of a schedule into a document: new ones as they are, those
// whose id is there with the schedule's date and teams. Times in universal time become
// those of a place.
func withSchedule(doc *form.Document, games []game.Game, in *time.Location) (_ *form.Document, err error) {
	for _, g := range games {
		fields := scheduled(g, in)
		if at, there := itemWhere(doc, "games", "id", g.ID); there {
			doc, err = setFields(doc, at, fields)
		} else {
			doc, err = doc.Append("games", form.Fields(append([]form.Field{{Name: "id", Value: form.Text(g.ID)}}, fields...)...))
		}
		if err != nil {
			return nil, err
		}
	}
	return doc, nil
}

// scheduled is what a schedule says of a game, as fields of a document.
func scheduled(g game.Game, in *time.Location) (out []form.Field) {
	put := func(name, value string) {
		if value != "" {
			out = append(out, form.Field{Name: name, Value: form.Text(value)})
		}
	}
	start := g.Start
	if g.Universal {
		start = start.In(in)
	}
	put("series", g.Series)
	var marks []form.Entry
	for _, m := range g.Marks {
		marks = append(marks, form.Text(m))
	}
	if len(marks) > 0 {
		out = append(out, form.Field{Name: "marks", Value: form.Items(marks...)})
	}
	put("date", start.Format(time.DateOnly))
	put("start", start.Format(timeWords))
	put("home", g.Home)
	put("away", g.Away)
	put("home-attacks", endsOf(g))
	if g.Periods != game.Periods {
		put("periods", strconv.Itoa(g.Periods))
	}
	if len(g.Day) > 0 {
		var times []form.Field
		for _, s := range g.Day {
			times = append(times, form.Field{Name: s.Name, Value: form.Text(s.At.Format(timeWords))})
		}
		out = append(out, form.Field{Name: "times", Value: form.Fields(times...)})
	}
	if g.Off {
		put("off", "yes")
	}
	return out
}

// endsOf writes the ends of a game as a document does, "" where nobody said.
func endsOf(g game.Game) string {
	if g.Ends[0] == 0 {
		return ""
	}
	return Toward(g, 0)
}
