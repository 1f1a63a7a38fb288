package learn

import (
	"fmt"
	"net/http"

	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/say"
)

// takeOver answers POST /arena/{slug}/frame/take: the hole stands from now on where its
// frames say, in a new version of the arena. The marks are solved anew with the version
// that the page was made from: what a form claims of a place is not believed.
func (d area) takeOver(w http.ResponseWriter, r *http.Request) error {
	b, err := d.Base(r)
	if err != nil {
		return err
	}
	at, err := shell.ReadAddress(r.PathValue("slug"), r.URL.Query())
	if err != nil {
		return err
	}
	page, err := d.frameOf(r, b, at, r.PostFormValue("hole"))
	if err != nil {
		return err
	}
	if page.Sent, err = readSent(r); err != nil {
		return err
	}
	page.solve(r)
	if s := page.Solved; s.Problem == "" && s.Meant != r.PostFormValue("meant") && s.Meant != "" {
		s.Ask = true
	}
	if page.Solved.Problem != "" || page.Solved.Ask {
		return d.Page(w, r, http.StatusUnprocessableEntity, "frame.tmpl", page)
	}
	change := resect.TakeOver(page.Solved.answer)
	if _, err = d.Edit(r, b, page.Solved.what(page), change); err != nil {
		return d.Again(r, err, "", func(p *shell.Problem) error {
			page.Solved.Problem = "The place cannot be taken over. " + p.Say()
			return d.Page(w, r, p.Status, "frame.tmpl", page)
		})
	}
	return d.Goto(w, r, at.Shared().Pick(change.Hole).URL())
}

// what says what the version did, and by how much.
func (s *solved) what(p framePage) string {
	marks, frames := 0, len(s.answer.Frames)
	for _, f := range s.answer.Frames {
		marks += len(f.Marks)
	}
	by := fmt.Sprintf("by %s in %s", say.Count(marks, "mark"), say.Count(frames, "frame"))
	h, ok := s.answer.Near.Get()
	if !ok {
		return "a hole where frames were taken, " + by
	}
	return fmt.Sprintf("hole %s moved to where frames say, %s, %s", h.ID, moved(s.answer, p.units), by)
}
