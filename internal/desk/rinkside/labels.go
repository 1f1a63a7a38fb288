package rinkside

import (
	"net/http"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/label"
)

// labelSheet answers GET /arena/{slug}/labels.pdf?paper=a4-24: a label for each cover,
// whose code opens the page at the glass at the address that the visitor came by.
func (d area) labelSheet(w http.ResponseWriter, r *http.Request) error {
	base, err := d.service(r, "covers")
	if err != nil {
		return err
	}
	paper, err := label.ParsePaper(r.FormValue("paper"))
	if err != nil {
		return shell.Because(http.StatusBadRequest, "There are no such labels.", err)
	}
	at := "http://" + r.Host
	if door.Secure(r) {
		at = "https://" + r.Host
	}
	var all []label.Label
	for _, c := range d.now(base.record).Covers {
		all = append(all, label.Label{Cover: c.ID, Hole: c.Hole, Arena: base.Name, Says: label.Address(at, base.Address.Slug, c.ID)})
	}
	if len(all) == 0 {
		return shell.Refuse(http.StatusNotFound, "No cover has a label yet.", "Give the holes their covers first, on the page of the covers.")
	}
	page, err := label.PDF(r.Context(), all, paper, d.Creator)
	if err != nil {
		return err
	}
	shell.Send(w, r, http.StatusOK, "application/pdf", page, nil)
	return nil
}

// Labels are the ways to sheets of labels.
func (p coversPage) Labels() (out []shell.Option) {
	for _, paper := range label.Papers() {
		out = append(out, shell.Option{Name: paper.Name, URL: p.Address.Beside("/labels.pdf", "paper", paper.Name)})
	}
	return out
}
