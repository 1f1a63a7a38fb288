package choosing

import (
	"cmp"
	"fmt"
	"net/http"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/letter"
	"example.org/rinkpane/internal/draw/sheet"
)

// asked returns the step that a letter asks for what is looked at; ok is false of a
// next best set, for which no step was proved.
func (s shown) asked() (step choose.Step, ok bool) {
	if s.step == nil && s.n == 0 {
		best, err := letter.Asked(s.of, true)
		return best, err == nil
	}
	if s.step == nil || len(s.step.Cut()) == 0 {
		return choose.Step{}, false
	}
	return *s.step, true
}

// lettered are the arena's own words on the page for the manager.
func lettered(s shown) []string {
	out := []string{s.of.Arena.Name, s.of.Arena.Place}
	for _, h := range s.of.Arena.Working() {
		out = append(out, h.ID)
	}
	return out
}

// letter answers GET /arena/{slug}/choose/{job}/letter?set=NAME: the page for the
// rink's manager that asks for what is looked at, as a PDF.
func (d area) letter(w http.ResponseWriter, r *http.Request) error {
	j, c, err := d.finished(r)
	if err != nil {
		return err
	}
	look, ok := pick(c, cmp.Or(r.FormValue("set"), "0"))
	step, is := look.asked()
	if !ok || !is {
		return shell.Refuse(http.StatusBadRequest, "There is no letter about this set.", "Go back and pick a step that cuts new holes.")
	}
	b, err := d.Shelf.Open(r.Context(), j.About.Arena, j.About.Version)
	if err != nil {
		return err
	}
	sys := shell.SharedOf(j.About.Arena, r.URL.Query()).Units(c.Arena.Units)
	paper, err := sheet.ParsePaper(sheet.UsualPaper(sys))
	if err != nil {
		return err
	}
	content, err := letter.Gather(r.Context(), c, step, b.Maker.Kit, letter.Options{Units: sys, Paper: paper, Mark: b.Mark, Creator: d.creator})
	if err != nil {
		return err
	}
	print, err := content.PDF(r.Context())
	if err != nil {
		return shell.Because(http.StatusUnprocessableEntity, "The letter cannot be set.", err)
	}
	w.Header().Set("Content-Disposition", fmt.Sprintf("attachment; filename=%q", fmt.Sprintf("%s-v%d-%s-letter.pdf", b.Document.ID, b.Version.Number, b.Mark)))
	shell.Send(w, r, http.StatusOK, "application/pdf", print.Data, nil)
	return nil
}
