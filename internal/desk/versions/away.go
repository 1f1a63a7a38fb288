package versions

import (
	"net/http"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
)

// awayPage asks whether an arena shall be put away.
type awayPage struct {
	shell.Frame
	Way      string // which of the arena's pages this is
	Address  shell.Address
	Document revision.Document
}

func (d area) awayPage(w http.ResponseWriter, r *http.Request) error {
	b, at, err := d.Newest(r)
	if err != nil {
		return err
	}
	return d.Page(w, r, http.StatusOK, "away.tmpl", awayPage{d.Frame(r, "Put "+b.Document.Name+" away"), "versions", at.Shared(), b.Document})
}
