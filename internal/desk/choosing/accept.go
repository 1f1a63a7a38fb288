package choosing

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
)

// job returns the job that a request names, of the arena that it names.
func (d area) job(r *http.Request) (*choice, error) {
	j, ok := d.jobs.Job(r.PathValue("job"))
	if !ok || j.About.Arena != r.PathValue("slug") {
		return nil, shell.ErrNowhere
	}
	return j, nil
}

// accept answers POST /arena/{slug}/choose/{job}/accept: the ticked holes, as
// they were proved, become planned holes of a new version, and those left out are
// turned off when that was asked for.
func (d area) accept(w http.ResponseWriter, r *http.Request) error {
	j, err := d.job(r)
	if err != nil || !j.Ended() {
		return shell.ErrNowhere
	}
	c, err := j.Outcome()
	if err != nil {
		return shell.ErrNowhere
	}
	shown, err := strconv.Atoi(r.PostFormValue("set"))
	if err != nil || shown < 0 || shown > len(c.Alternatives) {
		return shell.Refuse(http.StatusBadRequest, "There is no such set.", "Go back and pick one of those shown.")
	}
	edits := c.Accept(shown, r.PostForm["take"], r.PostFormValue("rest") == "off")
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
	what := fmt.Sprintf("chosen on the desk: %d edits", len(edits))
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
