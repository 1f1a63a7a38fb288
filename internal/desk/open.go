package desk

import (
	"errors"
	"net/http"
	"net/url"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
)

// opened is one version of an arena with its plan, ready to be shown.
type opened struct {
	shelf.Book
	at   address
	plan plan.Plan
}

// open takes the arena of an address off the shelf and plans it. When it cannot,
// it answers with a page that says why, and ok is false.
func (d *Desk) open(w http.ResponseWriter, r *http.Request, slug string, q url.Values) (opened, bool) {
	at, err := readAddress(slug, q)
	if err != nil {
		d.fail(w, r, http.StatusBadRequest, "This address leads nowhere.", sentenceOf(err))
		return opened{}, false
	}
	b, ok := d.book(w, r, slug, at.version)
	if !ok {
		return opened{}, false
	}
	p, err := d.shelf.Plan(b)
	if err != nil {
		d.log.Warn("desk", "arena", b.Document.ID, "error", err)
		d.fail(w, r, http.StatusUnprocessableEntity, "This arena cannot be planned.", err.Error())
		return opened{}, false
	}
	return opened{Book: b, at: at, plan: p}, true
}

// book takes a version of an arena off the shelf, or answers why not.
func (d *Desk) book(w http.ResponseWriter, r *http.Request, slug string, version int) (shelf.Book, bool) {
	b, err := d.shelf.Open(r.Context(), slug, version)
	switch {
	case errors.Is(err, revision.ErrNone) && version > 0:
		d.fail(w, r, http.StatusNotFound, "There is no such version of this arena.", "Look at the list of versions.")
	case errors.Is(err, revision.ErrNone):
		d.fail(w, r, http.StatusNotFound, "No arena has this address.", "Go back to the list of arenas and pick one.")
	case err != nil:
		d.broken(w, r, err)
	default:
		return b, true
	}
	return shelf.Book{}, false
}
