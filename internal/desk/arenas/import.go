package arenas

import (
	"net/http"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
)

// importPage takes a document, and keeps what was typed when it is wrong.
type importPage struct {
	shell.Frame
	Text    string
	Problem *shell.Problem
}

func (d area) importPage(w http.ResponseWriter, r *http.Request) error {
	return d.Page(w, r, http.StatusOK, "import.tmpl", importPage{Frame: d.Frame(r, "Import")})
}

func (d area) importArena(w http.ResponseWriter, r *http.Request) error {
	text, err := shell.SentDocument(r)
	if err != nil {
		return err
	}
	doc, err := d.Shelf.Read("arena", text)
	if err == nil {
		added, addErr := d.Shelf.Add(r.Context(), "", doc, door.Who(r.Context()), "import")
		if addErr == nil {
			return d.Goto(w, r, "/arena/"+added.Document)
		}
		err = addErr
	}
	return d.Again(r, err, text, func(p *shell.Problem) error {
		return d.Page(w, r, p.Status, "import.tmpl", importPage{d.Frame(r, "Import"), text, p})
	})
}
