package desk

import (
	"encoding/json"
	"errors"
	"io/fs"
	"net/http"

	"example.org/rinkpane/internal/keep/revision"
)

// errorPage is what a visitor reads when there is no page to show.
type errorPage struct {
	frame
	Status  int
	Message string
	Cure    string
	Arena   string // id of the arena that the address is about, to go back to; ""
}

// nowhere answers an address that leads to no page.
func (d *Desk) nowhere(w http.ResponseWriter, r *http.Request) {
	d.fail(w, r, http.StatusNotFound, "There is no page here.", "Go back to the list of arenas and pick one.")
}

// fail shows an error page. Message and cure are ours; of the request nothing is
// repeated but an arena's id.
func (d *Desk) fail(w http.ResponseWriter, r *http.Request, status int, message, cure string) {
	page := errorPage{frame: d.frame(r, message), Status: status, Message: message, Cure: cure}
	if slug := r.PathValue("slug"); status != http.StatusNotFound && revision.CheckID(slug) == nil {
		page.Arena = slug
	}
	d.show(w, r, status, "error.tmpl", page)
}

// broken answers when the fault is the program's own: the log has the reason,
// the visitor does not. A full disk is the owner's to mend, and said.
func (d *Desk) broken(w http.ResponseWriter, r *http.Request, err error) {
	d.log.Error("desk", "path", r.URL.Path, "error", err)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		d.nowhere(w, r)
		return
	case errors.Is(err, revision.ErrFull):
		d.fail(w, r, http.StatusInsufficientStorage, "The disk is full.", "Nothing was saved. Free some room, go back and try again.")
		return
	case errors.Is(err, revision.ErrDown):
		w.Header().Set("Retry-After", "5")
		d.fail(w, r, http.StatusServiceUnavailable, "The database does not answer.", "Wait a moment, look whether your last change is there, and try again.")
		return
	}
	d.fail(w, r, http.StatusInternalServerError, "This page broke.", "The terminal that runs the desk shows why. The arena file is untouched.")
}

// problem answers a program in JSON (RFC 9457).
func (d *Desk) problem(w http.ResponseWriter, r *http.Request, status int, detail string) {
	text, err := json.Marshal(map[string]any{"status": status, "title": http.StatusText(status), "detail": detail})
	if err != nil {
		d.broken(w, r, err)
		return
	}
	w.Header().Set("Cache-Control", "no-store")
	send(w, r, status, "application/problem+json", text, nil)
}
