package night

import (
	"errors"
	"net/http"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/form"
)

// edit is what a form does to the document: the parts that it changes, the change, a line
// for the list of versions, and the page to go on to.
type edit struct {
	touches []string
	make    func(*form.Document) (*form.Document, error)
	what    string
	then    string
}

// verbs are what forms ask for.
var verbs = map[string]func(nightPage, *http.Request) (edit, error){
	"game": addGame, "day": moveGame, "off": callOff, "marks": markGame, "revoke": revoke,
	"give": giveSeat, "free": freeSeat,
	"person": addPerson, "request": addRequest, "withdraw": withdraw, "missed": missed,
	"close": closeHole, "reopen": reopenHole,
	"holes": giveHoles, "reserve": reserve, "unreserve": unreserve, "change-person": changePerson,
}

// change answers POST /arena/{slug}/games/change: one edit of the season's document.
func (d area) change(w http.ResponseWriter, r *http.Request) error {
	page, err := d.openSeason(r, "games")
	if err != nil {
		return err
	}
	verb := verbs[r.PostFormValue("do")]
	if verb == nil {
		return shell.ErrIncomplete
	}
	e, err := verb(page, r)
	if err != nil {
		return err
	}
	return d.save(w, r, page, e)
}

// save makes an edit on top of the version that its form was made from.
func (d area) save(w http.ResponseWriter, r *http.Request, page nightPage, e edit) error {
	base, err := strconv.Atoi(r.PostFormValue("base"))
	if err != nil || base < 1 {
		return shell.ErrIncomplete
	}
	_, err = d.Shelf.ChangeGames(r.Context(), page.games, base, shelf.GamesChange{Touches: e.touches, Make: e.make, Who: door.Who(r.Context()), What: e.what})
	var late *shelf.Late
	var at *form.Problem
	switch {
	case errors.As(err, &late):
		return d.showBoth(w, r, page, late)
	case errors.As(err, &at): // of a text that the visitor did not see: say what, not where
		return shell.Because(http.StatusUnprocessableEntity, "This was not saved.", err)
	case err != nil:
		return err
	}
	return d.Goto(w, r, e.then)
}

// one reads a field of a form as a line, "" where it is left out.
func one(r *http.Request, name string) string { return strings.TrimSpace(r.PostFormValue(name)) }

// fieldsOf writes fields of a form as those of the document, in the order given, those
// that are blank left out.
func fieldsOf(r *http.Request, names ...string) (out []form.Field) {
	for _, name := range names {
		if v := one(r, name); v != "" {
			out = append(out, form.Field{Name: name, Value: form.Text(v)})
		}
	}
	return out
}

// listOf writes the values of a field of a form as a list of the document.
func listOf(r *http.Request, name string) (out []form.Field) {
	var items []form.Entry
	for _, v := range r.PostForm[name] {
		for _, word := range strings.FieldsFunc(v, func(c rune) bool { return c == ',' || c == ' ' }) {
			items = append(items, form.Text(word))
		}
	}
	if len(items) == 0 {
		return nil
	}
	return []form.Field{{Name: name, Value: form.Items(items...)}}
}

// itemWhere returns the path of the first item of a list that holds these values.
func itemWhere(doc *form.Document, list string, values ...string) (path string, ok bool) {
	paths := itemsWhere(doc, list, values...)
	if len(paths) == 0 {
		return "", false
	}
	return paths[0], true
}

// itemsWhere returns the paths of a list's items that hold these values, given as name and
// value in turn.
func itemsWhere(doc *form.Document, list string, values ...string) (out []string) {
	for _, path := range doc.Items(list) {
		is := true
		for i := 0; i+1 < len(values); i += 2 {
			is = is && doc.Value(path+"."+values[i]) == values[i+1]
		}
		if is {
			out = append(out, path)
		}
	}
	return out
}

// adds is an edit that adds an item to a list.
func adds(list, what, then string, fields ...form.Field) edit {
	return edit{what: what, then: then, make: func(doc *form.Document) (*form.Document, error) {
		return doc.Append(list, form.Fields(fields...))
	}}
}

// removes is an edit that takes items out of a list.
func removes(what, then string, paths ...string) edit {
	return edit{touches: paths, what: what, then: then, make: func(doc *form.Document) (*form.Document, error) {
		return without(doc, paths)
	}}
}

// without takes items out of a document, the last first: those before keep their numbers.
func without(doc *form.Document, paths []string) (_ *form.Document, err error) {
	for i := len(paths) - 1; i >= 0 && err == nil; i-- {
		doc, err = doc.Remove(paths[i])
	}
	return doc, err
}

// bothPage asks whose change shall count where two changed the same.
type bothPage struct {
	nightPage
	Late   *shelf.Late
	Saved  string // who was quicker
	Fields []shell.Fact
}

func (d area) showBoth(w http.ResponseWriter, r *http.Request, page nightPage, late *shelf.Late) error {
	both := bothPage{nightPage: page, Late: late, Saved: door.Named(late.Head.Who)}
	both.Fields = shell.Resent(r, late.Head.Number)
	return d.Page(w, r, http.StatusConflict, "night-both.tmpl", both)
}
