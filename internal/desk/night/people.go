package night

import (
	"net/http"
	"slices"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/tell/words"
)

// requestsPage is the people of a season, and who asks for what.
type requestsPage struct {
	nightPage
	Shown    string // whose requests are shown; "" for all
	Requests []requestRow
	Closed   []closedRow
	Reserved []reservedRow
	Keeps    []string // what the rule sets keep for cameras
	Holes    []shell.Choice
	Chosen   *game.Person // whose requests are shown
	Follows  []game.Follow
	Lenses   []string
	Series   []string
}

// requestRow is a request, with its place in the document.
type requestRow struct {
	game.Request
	N     int // in the document, from 1
	Games string
	Late  int // of the games that it picks, how many it was too late for
}

// closedRow is a hole that is not given, with its place in the document.
type closedRow struct {
	game.Closed
	N     int
	Games string
}

func (d area) requestsPage(w http.ResponseWriter, r *http.Request) error {
	base, err := d.openSeason(r, "requests")
	if err != nil {
		return err
	}
	s := base.Season
	page := requestsPage{nightPage: base, Shown: r.FormValue("who"), Follows: game.Follows(), Lenses: s.Kit.LensIDs()}
	for i, q := range s.Requests {
		if page.Shown == "" || page.Shown == q.Who {
			page.Requests = append(page.Requests, requestRow{q, i + 1, base.pickedWords(q.Games), lateFor(s, q)})
		}
	}
	for i, c := range s.Closed {
		page.Closed = append(page.Closed, closedRow{c, i + 1, base.pickedWords(c.Games)})
	}
	for i, kept := range s.Reservations {
		page.Reserved = append(page.Reserved, reservedRow{kept, i + 1, base.pickedWords(kept.Games)})
	}
	for _, k := range s.Keeps {
		page.Keeps = append(page.Keeps, words.Keep(k))
	}
	page.Holes = base.holeChoices()
	if p, there := s.Person(page.Shown); there {
		page.Chosen = &p
	}
	for _, g := range s.Games {
		if g.Series != "" && !slices.Contains(page.Series, g.Series) {
			page.Series = append(page.Series, g.Series)
		}
	}
	return d.Page(w, r, http.StatusOK, "requests.tmpl", page)
}

// lateFor counts the games that a request came too late for.
func lateFor(s game.Season, q game.Request) (n int) {
	for _, g := range s.Games {
		if q.Games.Has(g) && s.Late(q, g) {
			n++
		}
	}
	return n
}

// pickedWords says which games are meant.
func (p nightPage) pickedWords(of game.Games) string {
	if of.All {
		return "all games"
	}
	out := ""
	for i, name := range of.Names {
		if i > 0 {
			out += ", "
		}
		if g, ok := p.Season.Game(name); ok {
			name = g.Home + " – " + g.Away + ", " + g.Start.Format("2 Jan")
		}
		out += name
	}
	return out
}

// addPerson puts somebody who may ask for holes into the document.
func addPerson(p nightPage, r *http.Request) (edit, error) {
	name := one(r, "name")
	id := revision.IDFrom(name)
	for _, taken := p.Season.Person(id); taken; _, taken = p.Season.Person(id) {
		id += "-2"
	}
	fields := append([]form.Field{{Name: "id", Value: form.Text(id)}}, fieldsOf(r, "name", "outlet", "camera", "follows")...)
	fields = append(fields, listOf(r, "lenses")...)
	fields = append(fields, fieldsOf(r, "works", "eye")...)
	fields = append(fields, listOf(r, "cannot")...)
	return adds("people", "add "+name, p.To("/requests"), fields...), nil
}

// addRequest writes down that somebody asks for games.
func addRequest(p nightPage, r *http.Request) (edit, error) {
	fields := fieldsOf(r, "who")
	if games := one(r, "games"); games != "all" {
		fields = append(fields, listOf(r, "games")...)
	}
	fields = append(fields, listOf(r, "periods")...)
	fields = append(fields, fieldsOf(r, "follows", "firm")...)
	fields = append(fields, form.Field{Name: "asked", Value: form.Text(wall(p.now).Format("2006-01-02 15:04"))})
	then := p.To("/requests")
	if g, ok := p.Season.Game(one(r, "games")); ok {
		then = p.ToGame(g.ID)
	}
	return adds("requests", p.Who(one(r, "who"))+" asks for "+p.pickedWords(game.Games{All: one(r, "games") == "all", Names: []string{one(r, "games")}}), then, fields...), nil
}

// item returns the path of a numbered item of a list that a form names.
func item(p nightPage, r *http.Request, list string) (string, error) {
	at := list + "[#" + one(r, "n") + "]"
	if !p.games.Text.IsGroup(at) {
		return "", shell.Refuse(http.StatusConflict, "This is no longer there.", "Somebody changed the season meanwhile: look at the page again.")
	}
	return at, nil
}

// withdraw marks a request as taken back, or as standing again.
func withdraw(p nightPage, r *http.Request) (edit, error) {
	at, err := item(p, r, "requests")
	what := p.Who(p.games.Text.Value(at+".who")) + " no longer asks"
	if one(r, "withdrawn") == "no" {
		what = p.Who(p.games.Text.Value(at+".who")) + " asks again"
	}
	return edit{touches: []string{at}, what: what, then: p.To("/requests"), make: func(doc *form.Document) (*form.Document, error) {
		return setFields(doc, at, fieldsOf(r, "withdrawn"))
	}}, err
}

// missed writes down that somebody had a seat at a game and did not come: a request for
// that game alone, like the one that counted.
func missed(p nightPage, r *http.Request) (edit, error) {
	g, err := p.gameOf(r)
	if err != nil {
		return edit{}, err
	}
	asks := p.Season.Asks(g)
	k := slices.IndexFunc(asks, func(a game.Ask) bool { return a.ID == one(r, "who") })
	if k < 0 {
		return edit{}, shell.Refuse(http.StatusUnprocessableEntity, "They did not ask for this game.", "Look at the game again.")
	}
	a, came := asks[k], one(r, "came")
	put := func(name, value string) form.Field { return form.Field{Name: name, Value: form.Text(value)} }
	fields := []form.Field{put("who", a.ID), put("games", g.ID), put("follows", string(a.Request.Follows))}
	if a.Must {
		fields = append(fields, put("firm", "must"))
	}
	if !a.Asked.IsZero() {
		fields = append(fields, put("asked", a.Asked.Format("2006-01-02 15:04")))
	}
	what := a.Name + " did not come to " + g.Home + " – " + g.Away
	if came == "yes" {
		what = a.Name + " came to " + g.Home + " – " + g.Away
	}
	return adds("requests", what, p.ToGame(g.ID), append(fields, put("came", came))...), nil
}

// closeHole takes a hole out of those that are given.
func closeHole(p nightPage, r *http.Request) (edit, error) {
	fields := fieldsOf(r, "hole", "why")
	if one(r, "games") != "all" {
		fields = append(fields, listOf(r, "games")...)
	}
	return adds("closed", "close "+one(r, "hole")+": "+one(r, "why"), p.To("/requests"), fields...), nil
}

// reopenHole gives a hole again.
func reopenHole(p nightPage, r *http.Request) (edit, error) {
	at, err := item(p, r, "closed")
	return removes("give "+p.games.Text.Value(at+".hole")+" again", p.To("/requests"), at), err
}
