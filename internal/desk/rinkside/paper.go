package rinkside

import (
	"net/http"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/sheet"
)

// drawn is a hole of the newest version as its drawing has it.
type drawn struct {
	servicePage
	order cut.ShopOrder
	job   cut.Job
}

// drawnHole gathers the drawing of a hole that a request names.
func (d area) drawnHole(r *http.Request, tab, hole string) (drawn, error) {
	base, err := d.service(r, tab)
	if err != nil {
		return drawn{}, err
	}
	a, err := base.book.Arena.Check()
	if err != nil {
		return drawn{}, err
	}
	out := drawn{servicePage: base, order: cut.NewShopOrder(a, []byte(base.book.Version.Text), nil)}
	out.job, err = out.order.JobOf(hole, cut.DefaultOptions())
	if err != nil {
		err = shell.Because(http.StatusUnprocessableEntity, "This hole has no drawing.", err)
	}
	return out, err
}

// paper is what this arena's pages are printed on.
func (d drawn) paper() string { return sheet.UsualPaper(d.order.Arena.Units) }

// certificate answers GET /arena/{slug}/certificate.pdf?hole=B1: the last inspection
// that measured the hole.
func (d area) certificate(w http.ResponseWriter, r *http.Request) error {
	hole := r.FormValue("hole")
	h, err := d.drawnHole(r, "inspections", hole)
	if err != nil {
		return err
	}
	last, f, is := lastInspection(h.record.History, hole)
	if !is {
		return shell.Refuse(http.StatusNotFound, "This hole was never inspected.", "Inspect it first: the certificate follows.")
	}
	found := custody.Inspect(hole, h.job.Acceptance(), custody.Readings(f.Measured), f.Seen)
	page, err := h.order.Certificate(r.Context(), h.job, found, last.Who, last.When.In(time.Local), h.paper(), d.Creator)
	if err != nil {
		return err
	}
	shell.Send(w, r, http.StatusOK, "application/pdf", page, nil)
	return nil
}

// replacement answers GET /arena/{slug}/replacement.pdf?hole=B1: the drawing by which
// a new pane for the hole is made.
func (d area) replacement(w http.ResponseWriter, r *http.Request) error {
	hole := r.FormValue("hole")
	h, err := d.drawnHole(r, "incidents", hole)
	if err != nil {
		return err
	}
	made, err := h.order.Folder(r.Context(), cut.Request{Holes: []string{hole}, Paper: h.paper(), Options: cut.DefaultOptions(), Creator: d.Creator})
	if err != nil {
		return shell.Because(http.StatusUnprocessableEntity, "This hole has no drawing.", err)
	}
	for _, f := range made.Files {
		if f.Kind == cut.DrawingPDF {
			shell.Send(w, r, http.StatusOK, "application/pdf", f.Data, nil)
			return nil
		}
	}
	return shell.Refuse(http.StatusUnprocessableEntity, "This hole has no drawing.", "The book and the cut folder say why.")
}
