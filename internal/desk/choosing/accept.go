package choosing

import (
	"errors"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/edit"
)

// job returns the job that a request names, of the arena that it names.
func (d area) job(r *http.Request) (*choice, error) {
	j, ok := d.jobs.Job(r.PathValue("job"))
	if !ok || j.About.Arena != r.PathValue("slug") {
		return nil, shell.ErrNowhere
	}
	return j, nil
}

// finished returns a choice that has ended, and its answer.
func (d area) finished(r *http.Request) (*choice, choose.Answer, error) {
	j, err := d.job(r)
	if err != nil || !j.Ended() {
		return nil, choose.Answer{}, shell.ErrNowhere
	}
	c, err := j.Outcome()
	if err != nil {
		return nil, choose.Answer{}, shell.ErrNowhere
	}
	return j, c, nil
}

// accept answers POST /arena/{slug}/choose/{job}/accept: the ticked holes, as
// they were proved, become planned holes of a new version, and those left out are
// turned off when that was asked for.
func (d area) accept(w http.ResponseWriter, r *http.Request) error {
	j, c, err := d.finished(r)
	if err != nil {
		return err
	}
	look, ok := pick(c, r.PostFormValue("set"))
	if !ok {
		return shell.Refuse(http.StatusBadRequest, "There is no such set.", "Go back and pick one of those shown.")
	}
	edits := look.edits(r.PostForm["take"], r.PostFormValue("rest") == "off")
	if len(edits) == 0 {
		return shell.Refuse(http.StatusBadRequest, "Nothing is ticked.", "Go back and tick the holes to take over.")
	}
	b, err := d.Shelf.Open(r.Context(), j.About.Arena, j.About.Version)
	if err != nil {
		return err
	}
	doc, _, err := d.Shelf.Edited(b, edits)
	if err != nil {
		return shell.Because(http.StatusUnprocessableEntity, "The set cannot be taken over.", err)
	}
	what := "chosen on the desk: " + look.what
	_, err = d.Shelf.Save(r.Context(), j.About.Arena, j.About.Version, doc, door.Who(r.Context()), what)
	var stale *revision.Stale
	switch {
	case errors.As(err, &stale):
		return shell.Refuse(http.StatusConflict, "Somebody saved this arena since the choice was made.", "Nothing was changed. Open the arena and choose again.")
	case err != nil:
		return err
	}
	return d.Goto(w, r, shell.SharedOf(j.About.Arena, r.URL.Query()).URL())
}

// toBeReplaced is noted on a hole that is cut and left out.
const toBeReplaced = "given up: its pane is to be replaced by a whole one"

// edits makes what is looked at part of the document. With rest, what it leaves
// out is turned off, and of a hole that is cut it is noted that its pane is to be
// replaced.
func (s shown) edits(take []string, rest bool) []edit.Edit {
	out := s.of.Accept(s.n, take, rest)
	if !rest {
		return out
	}
	for _, l := range s.left() {
		if l.IsCut() && !strings.Contains(l.Note, toBeReplaced) {
			note := strings.TrimPrefix(l.Note+"; "+toBeReplaced, "; ")
			out = append(out, edit.Edit{Do: edit.Set, Path: "holes[" + l.ID + "].note", Value: edit.One(note)})
		}
	}
	return out
}
