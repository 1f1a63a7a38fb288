package desk

import (
	"errors"
	"net/http"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/edit"
)

// textPage is an arena's document as text, to be edited by hand.
type textPage struct {
	frame
	ID      string
	Base    int // the version it was made from
	Text    string
	What    string
	Problem *problemView
}

// conflictPage is shown to the second of two who saved: what the first changed,
// and both joined, to be saved or thrown away.
type conflictPage struct {
	frame
	ID      string
	Head    revision.Version
	What    string
	Diff    []diffLine
	Merged  string
	Clashes []revision.Clash
	Problem *problemView // why the merge is no sound arena yet
}

func (d *Desk) textPage(w http.ResponseWriter, r *http.Request) {
	b, ok := d.bookOf(w, r)
	if !ok {
		return
	}
	d.show(w, r, http.StatusOK, "text.tmpl", textPage{
		frame: d.frame(r, b.Document.Name+": text"), ID: b.Document.ID, Base: b.Version.Number, Text: b.Version.Text,
	})
}

// bookOf opens the newest version of the arena in the address; it answers
// itself when there is none.
func (d *Desk) bookOf(w http.ResponseWriter, r *http.Request) (shelf.Book, bool) {
	b, err := d.shelf.Open(r.Context(), r.PathValue("slug"), 0)
	switch {
	case errors.Is(err, revision.ErrNone):
		d.fail(w, r, http.StatusNotFound, "No arena has this address.", "Go back to the list of arenas and pick one.")
	case err != nil:
		d.broken(w, r, err)
	}
	return b, err == nil
}

func (d *Desk) saveText(w http.ResponseWriter, r *http.Request) {
	text, err := sentDocument(r)
	if err != nil {
		d.badForm(w, r, err)
		return
	}
	id := r.PathValue("slug")
	base, err := strconv.Atoi(r.PostFormValue("base"))
	if err != nil || base < 1 {
		d.fail(w, r, http.StatusBadRequest, "The form lacks the version it was made from.", "Open the page anew.")
		return
	}
	from, ok := d.book(w, r, id, base)
	if !ok {
		return
	}
	if strings.Contains(from.Version.Text, "\r\n") && !strings.Contains(text, "\r\n") {
		text = strings.ReplaceAll(text, "\n", "\r\n") // a browser's text has lost the document's line ends
	}
	what := r.PostFormValue("what")
	page := textPage{frame: d.frame(r, id+": text"), ID: id, Base: base, Text: text, What: what}
	d.saveOver(w, r, from, text, what, func(p *problemView, status int) {
		page.Problem = p
		d.show(w, r, status, "text.tmpl", page)
	})
}

// saveOver saves a text on top of a version. When it is no sound arena, or
// cannot be saved now, again shows it to its writer; when somebody saved since,
// the conflict page does.
func (d *Desk) saveOver(w http.ResponseWriter, r *http.Request, from shelf.Book, text, what string, again func(p *problemView, status int)) {
	id := from.Document.ID
	doc, told, err := d.shelf.Edited(from, []edit.Edit{{Do: edit.Text, Text: text}})
	if err == nil {
		if what == "" {
			what = told
		}
		_, err = d.shelf.Save(r.Context(), id, from.Version.Number, doc, door.Who(r.Context()), what)
	}
	var stale *revision.Stale
	switch {
	case err == nil:
		http.Redirect(w, r, "/arena/"+id+suffix(backTo(r, doc)), http.StatusSeeOther)
	case errors.As(err, &stale):
		d.conflict(w, r, from, text, what, stale)
	default:
		d.keepTyped(w, r, err, text, again)
	}
}

// keepTyped shows a form again with what was typed and what is wrong with it.
func (d *Desk) keepTyped(w http.ResponseWriter, r *http.Request, err error, text string, again func(p *problemView, status int)) {
	var fault *edit.Fault
	p, ok := problemOf(err, text)
	switch {
	case ok:
		again(p, http.StatusUnprocessableEntity)
	case errors.As(err, &fault):
		again(&problemView{Text: sentenceOf(fault.Err)}, http.StatusUnprocessableEntity)
	case errors.Is(err, revision.ErrFull):
		again(&problemView{Text: sentenceOf(revision.ErrFull)}, http.StatusInsufficientStorage)
	case errors.Is(err, revision.ErrTaken):
		again(&problemView{Text: "An arena of this name is there already: choose another name in the document."}, http.StatusConflict)
	default:
		d.log.Error("desk", "path", r.URL.Path, "error", err)
		again(&problemView{Text: "This could not be saved now; the terminal that runs the desk shows why. What you typed stands here still."},
			http.StatusInternalServerError)
	}
}

func (d *Desk) conflict(w http.ResponseWriter, r *http.Request, from shelf.Book, mine, what string, stale *revision.Stale) {
	page := conflictPage{frame: d.frame(r, "Somebody saved before you"), ID: from.Document.ID, Head: stale.Head, What: what}
	diff, err := revision.Diff(from.Version.Text, stale.Head.Text, "", "")
	if err != nil {
		d.broken(w, r, err)
		return
	}
	page.Diff = diffLines(diff)
	page.Merged, page.Clashes = revision.Merge(from.Version.Text, mine, stale.Head.Text)
	if _, err := d.shelf.Read(from.Document.ID, page.Merged); err != nil {
		page.Problem, _ = problemOf(err, page.Merged)
	}
	d.show(w, r, http.StatusConflict, "conflict.tmpl", page)
}
