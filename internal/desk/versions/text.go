package versions

import (
	"net/http"
	"strings"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/survey/edit"
)

// textPage is an arena's document as text, to be edited by hand.
type textPage struct {
	shell.Frame
	Way     string // which of the arena's pages this is
	Address shell.Address
	ID      string
	Base    int // the version it was made from
	Text    string
	What    string
	Problem *shell.Problem
}

func (d area) textPage(w http.ResponseWriter, r *http.Request) error {
	b, at, err := d.Newest(r)
	if err != nil {
		return err
	}
	return d.Page(w, r, http.StatusOK, "text.tmpl", textPage{
		Frame: d.Frame(r, b.Document.Name+": text"), Way: "versions", Address: at.Shared(), ID: b.Document.ID, Base: b.Version.Number, Text: b.Version.Text,
	})
}

func (d area) saveText(w http.ResponseWriter, r *http.Request) error {
	text, err := shell.SentDocument(r)
	if err != nil {
		return err
	}
	from, err := d.Base(r)
	if err != nil {
		return err
	}
	if strings.Contains(from.Version.Text, "\r\n") && !strings.Contains(text, "\r\n") {
		text = strings.ReplaceAll(text, "\n", "\r\n") // a browser's text has lost the document's line ends
	}
	what, id := r.PostFormValue("what"), from.Document.ID
	made, err := d.Edit(r, from, what, edit.Edit{Do: edit.Text, Text: text})
	if err != nil {
		return d.Again(r, err, text, func(p *shell.Problem) error {
			return d.Page(w, r, p.Status, "text.tmpl", textPage{d.Frame(r, id+": text"), "versions", shell.SharedOf(id, r.URL.Query()), id, from.Version.Number, text, what, p})
		})
	}
	return d.BackTo(w, r, made.Document)
}
