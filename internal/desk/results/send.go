package results

import (
	"errors"
	"net/http"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
)

// upload answers POST /arena/{slug}/frames: the readings of a card.
func (d area) upload(w http.ResponseWriter, r *http.Request) error {
	p, err := d.open(r)
	if err != nil {
		return err
	}
	text, err := shell.SentDocument(r)
	if err != nil {
		return err
	}
	if !shell.IsText(text) { // a reader of CSV would find a strange line
		err = shell.Refuse(http.StatusUnprocessableEntity, "This is no file of readings.", "Choose the .csv that rinkpane recap wrote with --readings; pictures stay on the card.")
	} else {
		err = d.Shelf.KeepFrames(r.Context(), p.games, p.Game, text, r.PostFormValue("instead") == "yes", door.Who(r.Context()))
	}
	if err == nil {
		return d.Goto(w, r, p.To(""))
	}
	return d.Again(r, shell.Rows(err), text, func(problem *shell.Problem) error {
		if p, err = d.asked(r); err != nil {
			return err
		}
		p.Problem = problem
		return d.show(w, r, problem.Status, p)
	})
}

// clock answers POST /arena/{slug}/frames/clock: a frame that shows the scoreboard.
func (d area) clock(w http.ResponseWriter, r *http.Request) error {
	p, err := d.open(r)
	if err != nil {
		return err
	}
	frame, shows := strings.TrimSpace(r.PostFormValue("frame")), strings.TrimSpace(r.PostFormValue("shows"))
	shown, err := game.ParseShown(shows)
	if err == nil { // what tells nothing is refused before it is written down
		q := recap.About(p.Season, p.Game)
		_, err = q.Evening.Clocks(p.Frames.Frames, append(q.Marks, recap.ClockMark{File: frame, Shown: shown}))
	}
	if err != nil {
		return shell.Because(http.StatusUnprocessableEntity, "This frame tells no clock.", err)
	}
	fields := form.Fields(form.Field{Name: "game", Value: form.Text(p.Game.ID)}, form.Field{Name: "frame", Value: form.Text(frame)}, form.Field{Name: "shows", Value: form.Text(shown.String())})
	return d.change(w, r, p, "the scoreboard shows "+shown.String()+" in "+frame, nil, func(doc *form.Document) (*form.Document, error) {
		return doc.Append("clocks", fields)
	})
}

// unclock answers POST /arena/{slug}/frames/unclock: such a frame no longer counts.
func (d area) unclock(w http.ResponseWriter, r *http.Request) error {
	p, err := d.open(r)
	if err != nil {
		return err
	}
	frame := r.PostFormValue("frame")
	at := itemWhere(p.games.Text, "clocks", "game", p.Game.ID, "frame", frame)
	if at == "" {
		return shell.Refuse(http.StatusConflict, "This frame is no longer there.", "Look at the page again.")
	}
	return d.change(w, r, p, "the clock of "+frame+" no longer counts", []string{at}, func(doc *form.Document) (*form.Document, error) {
		return doc.Remove(at)
	})
}

// body answers POST /arena/{slug}/frames/body: whose a body is, or which hole it stays in.
func (d area) body(w http.ResponseWriter, r *http.Request) error {
	p, err := d.open(r)
	if err != nil {
		return err
	}
	body, whose := r.PostFormValue("body"), r.PostFormValue("whose")
	kind, value, said := strings.Cut(whose, ":")
	if body == "" || said && kind != "who" && kind != "hole" || !said && whose != "" {
		return shell.ErrIncomplete
	}
	at, what := itemWhere(p.games.Text, "bodies", "body", body), "nobody says whose body "+body+" is"
	var touches []string
	if at != "" {
		touches = append(touches, at)
	}
	if said {
		what = "body " + body + " is " + value + "'s"
		if kind == "hole" {
			what = "body " + body + " stays in " + value
		}
	}
	return d.change(w, r, p, what, touches, func(doc *form.Document) (_ *form.Document, err error) {
		if at != "" {
			if doc, err = doc.Remove(at); err != nil {
				return nil, err
			}
		}
		if !said {
			return doc, nil
		}
		return doc.Append("bodies", form.Fields(form.Field{Name: "body", Value: form.Text(body)}, form.Field{Name: kind, Value: form.Text(value)}))
	})
}

// itemWhere returns the path of a list's first item that holds these values, given as name
// and value in turn; "" for none.
func itemWhere(doc *form.Document, list string, values ...string) string {
	for _, path := range doc.Items(list) {
		is := true
		for i := 0; i+1 < len(values); i += 2 {
			is = is && doc.Value(path+"."+values[i]) == values[i+1]
		}
		if is {
			return path
		}
	}
	return ""
}

// change saves a change of the season's document on top of the version that its form was
// made from.
func (d area) change(w http.ResponseWriter, r *http.Request, p framesPage, what string, touches []string, made func(*form.Document) (*form.Document, error)) error {
	base, err := strconv.Atoi(r.PostFormValue("base"))
	if err != nil || base < 1 {
		return shell.ErrIncomplete
	}
	_, err = d.Shelf.ChangeGames(r.Context(), p.games, base, shelf.GamesChange{Touches: touches, Make: made, Who: door.Who(r.Context()), What: what})
	var late *shelf.Late
	var at *form.Problem
	switch {
	case errors.As(err, &late):
		return shell.Refuse(http.StatusConflict, door.Named(late.Head.Who)+" changed the same meanwhile.", "Nothing of yours was saved. Open the page again and look.")
	case errors.As(err, &at): // of a text that the visitor did not see: say what, not where
		return shell.Because(http.StatusUnprocessableEntity, "This was not saved.", err)
	case err != nil:
		return err
	}
	return d.Goto(w, r, p.To(""))
}

// light answers POST /arena/{slug}/frames/light: the light by exposures becomes readings of
// the survey.
func (d area) light(w http.ResponseWriter, r *http.Request) error {
	p, err := d.askedFor(r)
	if err != nil {
		return err
	}
	edits := p.Recap.Readings
	if len(edits) == 0 {
		return shell.Refuse(http.StatusUnprocessableEntity, "Too few frames tell the light.", "A zone or an end needs twenty of them.")
	}
	what := say.Count(len(edits), "light reading") + " by the frames of " + p.Game.Teams() + ", " + p.Day()
	joined, err := d.Edit(r, p.games.Arena, what, edits...)
	if err != nil {
		return err
	}
	return d.Goto(w, r, p.To("", "noted", strconv.Itoa(joined.Version.Number)))
}
